import type { StudyFile } from "../../../model/study.ts";
import { Choice } from "../../parts/given.tsx";
import { Stated, type Values } from "../../parts/stated.tsx";
import { book, changeStudy, useBook } from "../../state/book.ts";
import { said } from "../../wording/figures.ts";
import { typedPercent, typedPrice } from "../../wording/given.ts";
import { itemWords } from "../../wording/givens.ts";
import { Plain, Quantity, Tick, useQuantityPart, useReading } from "./fields.tsx";

/** What is rarely asked of the mast. */
export const FurtherWishes = () => {
  const { wishes } = useReading().study;
  const turn = (value: number | undefined, words: string) =>
    value === undefined ? `any ${words}` : `${words} ${value}° at most`;
  return (
    <>
      <Plain
        path={["wishes", "swayLimit"]}
        label="Greatest turn of any antenna from plumb"
        shown={turn(wishes.swayLimit, "sway")}
        unit="°"
        none="any sway"
      />
      <Plain
        path={["wishes", "twistLimit"]}
        label="Greatest twist of any antenna about the mast"
        shown={turn(wishes.twistLimit, "twist")}
        unit="°"
        none="any twist"
      />
      <Plain
        path={["wishes", "serviceWind"]}
        label="Wind for sway and twist, percent of the design pressure"
        shown={`in ${+(100 * wishes.serviceWind).toFixed(1)} % of the wind’s pressure`}
        start={`${+(100 * wishes.serviceWind).toFixed(1)} %`}
        read={(text) => typedPercent(text, 100)}
      />
      <Tick path={["wishes", "lossOfOneGuy"]} label="Stands with any one guy lost" />
      <Tick path={["wishes", "insulatedBase"]} label="Insulated from the ground: the mast is the aerial" />
      <Quantity
        path={["wishes", "heightLimit"]}
        dimension="length"
        label="Greatest height of mast and antennas"
        prefix="nothing above "
        none="no limit of height"
      />
      <Quantity
        path={["wishes", "digCap"]}
        dimension="volume"
        label="Most that may be dug"
        prefix="dig "
        suffix=" at most"
        none="dig any amount"
      />
    </>
  );
};

export const NextAim = () => {
  const { study } = useReading();
  const aims = ["cost", "concrete", "digging", "margin", "height", "area"].filter((aim) => aim !== study.aim);
  const words = (aim: string) =>
    `then ${["cost", "concrete", "digging"].includes(aim) ? "least" : "most"} ${aim === "area" ? "antenna" : aim}`;
  return (
    <Choice
      label="Among those equally good"
      value={study.nextAim ?? ""}
      options={[
        { value: "", name: "among equals as usual" },
        ...aims.map((value) => ({ value, name: words(value) })),
      ]}
      write={(value) => changeStudy(["nextAim"], value || undefined, value ? words(value) : "no further aim")}
    />
  );
};

/** Every set of antennas and where each hangs; any of the sets is good enough. */
export const Antennas = () => {
  const { study, catalog } = useReading();
  const system = useBook((state) => state.system);
  const sets = study.wishes.packages;
  return (
    <>
      {sets.map((set, p) => {
        const path = ["wishes", "packages", p] as const;
        return (
          <div key={set.id} className="set">
            {sets.length > 1 && <p className="quiet">{set.name}</p>}
            {set.items.map((item, i) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: two antennas of one kind may hang at one place
              <p key={i}>
                <Antenna
                  path={[...path, "items", i]}
                  shown={itemWords(item, catalog, system)}
                  item={item}
                  only={set.items.length === 1}
                />
              </p>
            ))}
            <p>
              <Antenna path={[...path, "items", set.items.length]} shown="another antenna" />
            </p>
            <Choice
              label="Pipe above the mast top"
              value={set.pipe}
              options={catalog.pipes.map((row) => ({ value: row.id, name: row.name }))}
              write={(value) => changeStudy([...path, "pipe"], value, "another pipe")}
            />
            <Quantity
              path={[...path, "cableWidth"]}
              dimension="size"
              label="Width of all cables"
              prefix="cables "
              suffix=" wide"
            />
            <Quantity
              path={[...path, "ladder"]}
              dimension="size"
              label="Solid width of a ladder"
              prefix="ladder "
              suffix=" wide"
            />
            <Quantity
              path={[...path, "runWeight"]}
              dimension="lineForce"
              label="Weight of cables and ladder along the mast"
              prefix="both weigh "
            />
          </div>
        );
      })}
      <p>
        <button type="button" className="link" onClick={addSet}>
          Another set that would do as well
        </button>
        {sets.length > 1 && (
          <button
            type="button"
            className="link"
            onClick={() =>
              changeStudy(
                ["wishes", "packages"],
                book.get().history.present.study.wishes.packages.slice(0, -1),
                "one set of antennas less",
              )
            }
          >
            Take the last set out
          </button>
        )}
      </p>
    </>
  );
};

/** A copy of the first set, to be changed. */
const addSet = () => {
  const sets = book.get().history.present.study.wishes.packages;
  const ids = new Set(sets.map(({ id }) => id));
  let n = sets.length + 1;
  while (ids.has(`set-${n}`)) n++;
  return changeStudy(
    ["wishes", "packages"],
    [...sets, { ...sets[0], id: `set-${n}`, name: `Set ${n}` }],
    "another set of antennas",
  );
};

type Item = StudyFile["wishes"]["packages"][number]["items"][number];
type ReadItem = ReturnType<typeof useReading>["study"]["wishes"]["packages"][number]["items"][number];
interface AntennaProps {
  readonly path: readonly (string | number)[];
  readonly shown: string;
  readonly item?: ReadItem;
  readonly only?: boolean;
}

const AREA = "an-area";
const kinds: Readonly<Record<string, string>> = {
  flat: "flat, projected",
  round: "round, projected",
  effective: "effective, drag in it",
};

const Antenna = ({ path, shown, item, only = false }: AntennaProps) => {
  const { catalog } = useReading();
  const where = item?.at !== undefined ? "at" : item?.below !== undefined ? "below" : "above";
  const part = useQuantityPart(path);
  const area = item && "area" in item ? item : undefined;
  return (
    <Stated
      label={item ? "Antenna" : "Another antenna"}
      shown={shown}
      parts={[
        {
          key: "antenna",
          label: "Antenna",
          start: area ? AREA : item && "antenna" in item ? item.antenna : "",
          options: [
            ...catalog.antennas.map((row) => ({ value: row.id, name: row.name })),
            { value: AREA, name: "not chosen yet: an area" },
          ],
        },
        {
          key: "where",
          label: "It hangs",
          start: where,
          options: [
            { value: "above", name: "on the pipe, above the mast top by" },
            { value: "at", name: "beside the mast, over its base by" },
            { value: "below", name: "beside the mast, under its top by" },
          ],
        },
        part("distance", "This far", "length", "2 ft", { at: where }),
        part("offset", "Off the mast’s axis", "length", "0 ft", { otherwise: 0 }),
        part("area", "Area, if it is only an area", "area", "9 ft²", { optional: true }),
        {
          key: "areaKind",
          label: "Kind of that area",
          start: area?.areaKind ?? "",
          options: Object.entries(kinds).map(([value, name]) => ({ value, name })),
        },
        part("weight", "Its weight", "force", "40 lbf", { optional: true }),
      ]}
      remove={item && !only ? "Take it out" : undefined}
      write={(values) => writeItem(path, values)}
    />
  );
};

const writeItem = (path: readonly (string | number)[], values: Values | undefined) => {
  const [list, index] = [path.slice(0, -1), path.at(-1) as number];
  const items = (path
    .slice(0, -1)
    .reduce<unknown>(
      (part, key) => (part as Record<string | number, unknown>)[key],
      book.get().history.present.study,
    ) ?? []) as readonly Item[];
  if (!values)
    return changeStudy(
      list,
      items.filter((_, i) => i !== index),
      "an antenna out",
    );
  const place = { [values.where]: values.distance, offset: values.offset };
  const item =
    values.antenna === AREA
      ? { area: values.area, areaKind: values.areaKind, weight: values.weight, ...place }
      : { antenna: values.antenna, ...place };
  const next = [...items.slice(0, index), item, ...items.slice(index + 1)];
  return changeStudy(list, next, index < items.length ? "an antenna changed" : "another antenna");
};

/** Insulators, turnbuckles and links in each guy. */
export const GuyHardware = () => {
  const { study, catalog } = useReading();
  const system = useBook((state) => state.system);
  const hardware = study.parts.guyHardware;
  const part = useQuantityPart(["parts", "guyHardware"]);
  return (
    <Stated
      label="Hardware in every guy"
      shown={
        hardware
          ? `hardware in every guy: ${said(hardware.weight, "force", system, 1)}, ${said(hardware.length, "length", system)}`
          : "no hardware in the guys but their end fittings"
      }
      parts={[
        part("weight", "Weight of it all in one guy", "force", "6 lbf"),
        part("length", "Of the guy that it takes the place of", "length", "2 ft"),
        {
          key: "price",
          label: `Price in one guy, ${catalog.prices.currency}`,
          start: hardware ? `${hardware.price}` : "",
          example: "30",
          read: (text) => typedPrice(text, "each"),
          as: "number",
        },
        part("breakingStrength", "Breaks at", "force", "4000 lbf", { optional: true }),
      ]}
      remove={hardware && "State none"}
      write={(values) =>
        changeStudy(
          ["parts", "guyHardware"],
          values,
          values ? "hardware in every guy" : "no hardware in the guys",
        )
      }
    />
  );
};

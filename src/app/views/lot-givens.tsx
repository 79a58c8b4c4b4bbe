import "../css/every.css";
import { LINE_CLEARANCE } from "../../model/lot.ts";
import { upperFirst } from "../../report/names.ts";
import { Choice } from "../parts/given.tsx";
import { type Part, Stated } from "../parts/stated.tsx";
import { book, changeStudy, type Reading, useBook } from "../state/book.ts";
import { figure, type System, said } from "../wording/figures.ts";
import { typedNumber, typedPercent, typedQuantity } from "../wording/given.ts";
import { inWords } from "../wording/parts.ts";
import { Quantity } from "./givens/fields.tsx";

type Spot = readonly [number, number];

/** What the lot lets the anchors do: its slope, and whether they may stand at unlike distances. */
export const LotGivens = ({ reading }: { reading: Reading }) => {
  const system = useBook((state) => state.system);
  const { slope } = reading.study.lot;
  const { drawnIn } = reading.study.parts;
  return (
    <div className="lot-givens">
      <Stated
        label="Slope of the lot"
        shown={
          slope
            ? `The ground falls ${+(100 * slope.fall).toFixed(1)} % toward ${slope.toward}°`
            : "The ground is level"
        }
        parts={[
          {
            key: "fall",
            label: "It falls, percent",
            start: slope ? `${+(100 * slope.fall).toFixed(2)}` : "",
            example: "10 %",
            read: (text) => typedPercent(text, 50),
            as: "number",
          },
          {
            key: "toward",
            label: "Toward, degrees from north",
            start: slope ? `${slope.toward}°` : "",
            example: "90°",
            read: (text) => typedNumber(text, { unit: "°", min: 0, max: 360 }),
            as: "number",
          },
        ]}
        remove={slope && "It is level"}
        write={(values) =>
          changeStudy(["lot", "slope"], values, values ? "the lot falls" : "the lot is level")
        }
      />
      {reading.study.lot.powerLines.length > 0 && (
        <Quantity
          path={["lot", "lineClearance"]}
          dimension="length"
          label="Clearance from power lines"
          prefix="guys and mast keep "
          suffix=" from power lines"
          none={`guys and mast keep ${said(LINE_CLEARANCE, "length", system)} from power lines, as nothing is stated`}
        />
      )}
      {reading.study.lot.powerLines.length > 0 && (
        <Choice
          label="Power lines and a falling mast"
          value={reading.study.lot.linesWithinFall ? "said" : "kept"}
          options={[
            { value: "kept", name: "no power line within reach of a falling mast" },
            { value: "said", name: "power lines within reach of a falling mast are only said" },
          ]}
          write={(value) =>
            changeStudy(
              ["lot", "linesWithinFall"],
              value === "said" ? true : undefined,
              value === "said"
                ? "power lines may stand within reach of a falling mast"
                : "power lines stand beyond the reach of a falling mast",
            )
          }
        />
      )}
      <Choice
        label="Distances of the anchors"
        value={drawnIn ? "in" : "alike"}
        options={[
          { value: "alike", name: "anchors all equally far out" },
          { value: "in", name: "anchors drawn in where the lot is short" },
        ]}
        write={(value) =>
          changeStudy(
            ["parts", "drawnIn"],
            value === "in",
            value === "in" ? "anchors drawn in where the lot is short" : "anchors equally far out",
          )
        }
      />
    </div>
  );
};

const spotWords = ([east, north]: Spot, system: System): string =>
  `${figure(east, "length", system)} east, ${said(north, "length", system)} north`;

const spotParts = (spot: Spot | undefined, system: System): readonly Part[] =>
  (["east", "north"] as const).map((key, i) => ({
    key,
    label: key === "east" ? "East" : "North",
    start: spot
      ? said(spot[i], "length", system)
          .replace(/[,\u2009]/g, "")
          .replace("−", "-")
      : "",
    example: "46 ft",
    read: (text) => typedQuantity(text, "length", system),
  }));

/** Mast, corners, power lines and plots by their figures: what is dragged on the plan, typed. */
export const Places = ({ reading }: { reading: Reading }) => {
  const system = useBook((state) => state.system);
  const { corners, mast, powerLines, keepOut = [] } = reading.study.lot;
  const file = () => book.get().history.present.study.lot;
  const put = (corner: number, next: readonly unknown[]) =>
    changeStudy(["lot", "corners"], next, `corner ${corner + 1}`);
  return (
    <details className="sec places">
      <summary className="link">Mast, corners, power lines and plots by figures</summary>
      <div className="topics">
        <section aria-label="Mast and corners">
          <Stated
            label="Mast"
            shown={`mast ${spotWords(mast, system)}`}
            parts={spotParts(mast, system)}
            write={(values) =>
              values ? changeStudy(["lot", "mast"], [values.east, values.north], "the mast moved") : []
            }
          />
          {corners.map((corner, i) => (
            <Stated
              // biome-ignore lint/suspicious/noArrayIndexKey: a corner has no other name than its number
              key={i}
              label={`Corner ${i + 1}`}
              shown={`corner ${i + 1}: ${spotWords(corner, system)}`}
              parts={spotParts(corner, system)}
              remove={corners.length > 3 ? "Take it out" : undefined}
              write={(values) => {
                const now = file().corners;
                const next = values ? [[values.east, values.north]] : [];
                return put(i, [...now.slice(0, i), ...next, ...now.slice(i + 1)]);
              }}
            />
          ))}
          <Stated
            label="Another corner"
            shown={`another corner, after corner ${corners.length}`}
            parts={spotParts(undefined, system)}
            write={(values) =>
              values ? put(corners.length, [...file().corners, [values.east, values.north]]) : []
            }
          />
        </section>
        <section aria-label="Power lines">
          {powerLines.map(({ name, points }, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: two lines may bear one name
            <Outline key={i} of={POWER} index={i} known={{ name, spots: points }} />
          ))}
          <Outline of={POWER} index={powerLines.length} />
        </section>
        <section aria-label="Plots without anchors">
          {keepOut.map(({ name, corners: spots }, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: two plots may bear one name
            <Outline key={i} of={KEPT} index={i} known={{ name, spots }} />
          ))}
          <Outline of={KEPT} index={keepOut.length} />
        </section>
      </div>
    </details>
  );
};

interface Drawn {
  readonly field: "powerLines" | "keepOut";
  readonly at: "points" | "corners";
  readonly least: number;
  readonly one: string;
  readonly none: string;
  readonly name: string;
  readonly points: string;
}
const POWER: Drawn = {
  field: "powerLines",
  at: "points",
  least: 2,
  one: "power line",
  none: "There is no such line",
  name: "Line along the lane",
  points: "134 ft, -40 ft; 134 ft, 165 ft",
};
const KEPT: Drawn = {
  field: "keepOut",
  at: "corners",
  least: 3,
  one: "plot without anchors",
  none: "Anchors may stand there",
  name: "Drive",
  points: "0 ft, 0 ft; 12 ft, 0 ft; 12 ft, 90 ft; 0 ft, 90 ft",
};

interface OutlineProps {
  readonly of: Drawn;
  readonly index: number;
  readonly known?: { readonly name: string; readonly spots: readonly Spot[] };
}
/** A named run of points, east and north: a power line, or the corners of a plot. */
const Outline = ({ of, index, known }: OutlineProps) => {
  const system = useBook((state) => state.system);
  const point = (spot: Spot) =>
    spotWords(spot, system)
      .replaceAll("−", "-")
      .replace(/ (east|north)/g, "");
  return (
    <Stated
      label={known ? upperFirst(of.one) : `Another ${of.one}`}
      shown={known ? `${known.name}, ${known.spots.length} ${of.at}` : `another ${of.one}`}
      parts={[
        { key: "name", label: "Its name", start: known?.name ?? "", example: of.name },
        {
          key: of.at,
          label: `${upperFirst(of.at)}, east and north`,
          start: known?.spots.map(point).join("; ") ?? "",
          example: of.points,
          read: (text) => {
            const points = pointsOf(text, system);
            const wrong = points.flat().find((one) => !one.ok);
            if (points.length < of.least || points.some((pair) => pair.length !== 2))
              return {
                ok: false,
                message: `A ${of.one} has ${inWords(of.least)} ${of.at} or more, each east, north; write “${of.points}”.`,
              };
            return wrong ?? { ok: true, text, si: 0 };
          },
        },
      ]}
      remove={known && of.none}
      write={(values) => {
        const all: readonly unknown[] = book.get().history.present.study.lot[of.field] ?? [];
        const points = values
          ? pointsOf(`${values[of.at]}`, system).map((pair) => pair.map((one) => (one.ok ? one.text : "")))
          : [];
        const next = values ? [{ name: values.name, [of.at]: points }] : [];
        const left = [...all.slice(0, index), ...next, ...all.slice(index + 1)];
        return changeStudy(
          ["lot", of.field],
          left.length > 0 ? left : undefined,
          values ? `${of.one} ${values.name}` : `a ${of.one} taken out`,
        );
      }}
    />
  );
};

/** A bare number takes the unit that its neighbour has, or the one that is shown. */
const pointsOf = (text: string, system: System) =>
  text
    .split(";")
    .filter((pair) => pair.trim())
    .map((pair) => {
      const unit = /[a-z]+\s*$/i.exec(pair)?.[0] ?? "";
      return pair
        .split(",")
        .map((part) => (/[a-z]\s*$/i.test(part) ? part : `${part} ${unit}`))
        .map((part) => typedQuantity(part, "length", system));
    });

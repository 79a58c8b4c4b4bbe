import { Given } from "../../parts/given.tsx";
import { changeStudy, useBook } from "../../state/book.ts";
import { answerOf, judgedOf } from "../../state/shown.ts";
import { sectionName, strandName } from "../../wording/parts.ts";
import { AxisField, Kinds, Tick, useReading } from "./fields.tsx";
import { GuyHardware } from "./wishes.tsx";

const numbers = (values: readonly number[], words: (n: number) => string) =>
  values.map((value) => ({ value, name: words(value) }));

/** What the search may choose from, each variable free among several values or held to one. */
export const MastChoices = () => {
  const { catalog } = useReading();
  const system = useBook((state) => state.system);
  const named = (rows: readonly { id: string; name: string }[]) =>
    rows.map((row) => ({ value: row.id, name: row.name }));
  return (
    <>
      <Kinds
        path={["parts", "supports"]}
        label="Standing"
        rows={[
          { value: "guyed", name: "guyed" },
          { value: "freestanding", name: "free-standing" },
        ]}
      />
      <Kinds
        path={["parts", "sections"]}
        label="Sections"
        rows={catalog.sections.map((row) => ({ value: row.id, name: sectionName(row, system) }))}
        all
      />
      <Tick path={["parts", "mixedStacks"]} label="Two conditions of a family in one mast" />
      <Kinds path={["parts", "footings"]} label="Footings" rows={named(catalog.footings)} all />
      <Kinds path={["parts", "insulators"]} label="Base insulators" rows={named(catalog.insulators)} all />
    </>
  );
};

export const GuyChoices = () => {
  const { study, catalog } = useReading();
  const system = useBook((state) => state.system);
  const finding = useBook((state) => state.finding);
  const guys = judgedOf(answerOf({ finding, former: null }))?.design.guys;
  const { tensions } = study.parts;
  const shares = tensions.map((share) => `${+(100 * share).toFixed(2)}`).join(", ");
  return (
    <>
      <Kinds
        path={["parts", "guysPerLevel"]}
        label="Guys a level"
        rows={numbers([3, 4], (n) => `${n} guys a level`)}
      />
      <Kinds
        path={["parts", "levelCounts"]}
        label="Guy levels"
        rows={numbers([1, 2, 3, 4, 5], (n) => (n === 1 ? "1 level" : `${n} levels`))}
      />
      <AxisField path={["parts", "levelHeights"]} label="Guys at" dimension="length" />
      <Kinds
        path={["parts", "strands"]}
        label="Strand"
        rows={catalog.strand.map((row) => ({ value: row.id, name: strandName(row, system) }))}
        all
      />
      <p>
        <Given
          label="Initial tension, percent of breaking strength"
          shown={`drawn to ${shares} % of breaking strength`}
          start={shares}
          read={(text) => {
            const values = text.replace("%", "").split(",").map(Number);
            return values.length > 0 && values.every((value) => value > 0)
              ? { ok: true, text, si: 0 }
              : { ok: false, message: `“${text}” isn’t a list of percents; write it as “8, 10, 12”.` };
          }}
          write={({ text }, gesture) =>
            changeStudy(
              ["parts", "tensions"],
              text
                .replace("%", "")
                .split(",")
                .map((part) => Number(part) / 100),
              `initial tension ${text} %`,
              gesture,
            )
          }
        />
      </p>
      <Tick path={["parts", "tensionEachLevel"]} label="Each level a tension of its own" />
      <AxisField path={["parts", "radius"]} label="Anchors out" dimension="length" answer={guys?.radius} />
      <AxisField path={["parts", "rotation"]} label="Star turned" answer={guys?.rotation} />
      <Tick path={["parts", "drawnIn"]} label="Anchors drawn in where the lot is short" />
      <Kinds
        path={["parts", "anchors"]}
        label="Anchors"
        rows={catalog.anchors.map((row) => ({ value: row.id, name: row.name }))}
        all
      />
      <Kinds
        path={["parts", "torqueArms"]}
        label="Torque arms"
        rows={catalog.torqueArms.map((row) => ({ value: row.id, name: row.name }))}
        none
      />
      <p>
        <GuyHardware />
      </p>
    </>
  );
};

/** What the bill and the search pay whole, as the catalog says that it is sold; the rest by length, volume and mass. */
export const Sold = () => {
  const { catalog } = useReading();
  const { concreteSupply, barStock } = catalog.prices;
  return (
    <>
      {catalog.strand.some(({ reels }) => reels) && (
        <Tick path={["parts", "wholeReels"]} label="Strand by whole reels" />
      )}
      {concreteSupply && <Tick path={["parts", "concreteAsSold"]} label="Concrete by bags and loads" />}
      {barStock && <Tick path={["parts", "barsAsSold"]} label="Bars of the base by whole lengths" />}
      <p className="quiet">
        The search then prices each design by what must be bought for it; what is not ticked is paid by
        length, volume and mass.
      </p>
    </>
  );
};

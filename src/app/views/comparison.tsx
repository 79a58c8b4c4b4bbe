import { useEffect, useMemo } from "react";
import type { Design } from "../../model/design.ts";
import { type ChoiceRow, type Comparison, compare, type FigureName } from "../../report/comparison.ts";
import { lowerFirst, percent } from "../../report/names.ts";
import type { Marked } from "../plots/stairs.ts";
import { type Reading, useBook } from "../state/book.ts";
import type { KeptDesign } from "../state/cupboard.ts";
import { judge } from "../state/judging.ts";
import { keep, layOutKept, letGo, readingOf, shelf } from "../state/kept.ts";
import { plots, type Taken } from "../state/plots.ts";
import { useStore } from "../state/store.ts";
import { placeWords } from "../wording/check.ts";
import { anchorWords, footingWords, guyWords, stackWords } from "../wording/design-sentence.ts";
import { figure, money, type System, unitOf, used } from "../wording/figures.ts";

/** One column: a design under its study, which may be another than the one that is open. */
interface Column {
  readonly letter: string;
  readonly name: string;
  readonly design: Design;
  readonly reading: Reading | null;
  readonly at: Taken["at"];
  readonly kept: KeptDesign | null;
}

/** Marked designs of this study and kept ones of others, each judged here, difference by difference against the first. */
export const ComparisonView = ({ marked, reading }: { marked: readonly Marked[]; reading: Reading }) => {
  useEffect(() => void layOutKept(), []);
  const { kept, trouble } = useStore(shelf, (state) => state);
  const taken = useStore(plots, (state) => state.taken);
  const columns = useMemo(() => columnsOf(marked, taken, kept, reading), [marked, taken, kept, reading]);
  const judged = columns.flatMap((column) => {
    const verdict = column.reading && judge(column.reading, column.design, column.at);
    return column.reading && verdict ? [{ ...column, reading: column.reading, verdict }] : [];
  });
  if (columns.length === 0) return null;
  const unread = columns.filter((column) => !judged.some(({ letter }) => letter === column.letter));
  return (
    <section className="beside" aria-label="Side by side">
      <h2>
        Side by side<small>keep a design, open another study, and set them beside each other here</small>
      </h2>
      {judged.length > 0 && <Table columns={judged} compared={compare(judged)} />}
      {unread.map(({ letter, name, kept: one }) => (
        <p key={letter} className="quiet">
          ✕ {letter}, {name}: it can’t be judged as it was kept, so no figure of it is shown.{" "}
          {one && <LetGo one={one} />}
        </p>
      ))}
      {trouble && <p className="quiet">{trouble}</p>}
      <p className="quiet">
        Each is judged under its own study. Work and hardening are guesses of the price book, yours to better;
        they are no part of any price or check.
      </p>
    </section>
  );
};

const columnsOf = (
  marked: readonly Marked[],
  taken: Taken | null,
  kept: readonly KeptDesign[],
  reading: Reading,
): readonly Column[] => [
  ...marked.map(({ letter, name, point }) => ({
    letter,
    name,
    design: point.design,
    reading,
    at: null,
    kept: null,
  })),
  ...(taken
    ? [
        {
          letter: "E",
          name: `yours, ${taken.from}`,
          design: taken.design,
          reading,
          at: taken.at,
          kept: null,
        },
      ]
    : []),
  ...kept.map((one, i) => ({
    letter: String.fromCharCode("F".charCodeAt(0) + i),
    name: one.name,
    design: one.design,
    reading: readingOf(one),
    at: null,
    kept: one,
  })),
];

const LetGo = ({ one }: { one: KeptDesign }) => (
  <button type="button" className="link letter" onClick={() => void letGo(one)}>
    let it go
  </button>
);

type Judged = Column & { readonly reading: Reading; readonly verdict: NonNullable<ReturnType<typeof judge>> };

const figures: Readonly<Record<FigureName, string>> = {
  cost: "Cost",
  margin: "Smallest margin",
  concrete: "Concrete",
  digging: "Digging",
  work: "Work, one pair of hands",
  curing: "Concrete hardens",
  steel: "Of the cost, sections",
  height: "Height",
  radius: "Anchors out",
  levels: "Guy levels",
};

/** A figure as said, without a sign. */
const figureWords = (what: FigureName, value: number, system: System, currency: string): string => {
  const measured = (measure: "volume" | "work" | "length", digits?: number) =>
    `${figure(value, measure, system, digits)} ${unitOf(measure, system)}`;
  switch (what) {
    case "cost":
    case "steel":
      return money(value, currency, system);
    case "margin":
      return `${percent(value)} %`;
    case "concrete":
    case "digging":
      return measured("volume");
    case "work":
    case "curing":
      return measured("work", 0);
    case "height":
    case "radius":
      return measured("length");
    case "levels":
      return `${value}`;
  }
};

const differenceWords = (
  what: FigureName,
  values: readonly [number | null, number | null],
  difference: number | null,
  system: System,
  currency: string,
): string => {
  if (difference === null || difference === 0) return "";
  const sign = difference > 0 ? "+" : "−";
  // whole percents of margins, each rounded down, are what is taken from each other
  if (what === "margin") {
    const points = Math.abs(Number(asNumber(values[1])) - Number(asNumber(values[0])));
    return points === 0 ? "" : `${sign}${points}`;
  }
  const words = figureWords(what, Math.abs(difference), system, currency);
  // less than the digits that are shown
  return /[1-9]/.test(words.replace(/\D*$/, "")) ? `${sign}${words}` : "";
};
const asNumber = (margin: number | null) => percent(margin ?? 0).replace("−", "-");

const choices: Readonly<Record<ChoiceRow["what"], string>> = {
  package: "Antennas",
  stack: "Sections",
  guys: "Guys",
  anchor: "Anchors",
  footing: "Base",
};

/** Of breaking strength, bottom up where they differ. */
const tensions = ({ tension, levels }: NonNullable<Design["guys"]>): string => {
  const own = [...new Set(levels.map((level) => Math.round(1000 * (level.tension ?? tension)) / 10))];
  return `${own.join(", ")} %`;
};

const choiceWords = (
  what: ChoiceRow["what"],
  design: Design,
  { study, catalog }: Reading,
  system: System,
): string => {
  switch (what) {
    case "package":
      return study.wishes.packages.find(({ id }) => id === design.package)?.name ?? design.package;
    case "stack":
      return stackWords(design, catalog, system);
    case "guys":
      return design.guys
        ? `${guyWords(design, catalog, system)}, drawn to ${tensions(design.guys)}`
        : guyWords(design, catalog, system);
    case "anchor":
      return anchorWords(design, system) ?? "none";
    case "footing":
      return footingWords(design, system);
  }
};

const Table = ({ columns, compared }: { columns: readonly Judged[]; compared: Comparison }) => {
  const system = useBook((state) => state.system);
  const currency = (i: number) => columns[i].reading.catalog.prices.currency;
  return (
    <div className="scroll-x">
      <table className="cat compared" aria-label="Designs side by side">
        <thead>
          <tr>
            <th>
              <span className="vh">What is compared</span>
            </th>
            {columns.map((column) => (
              <th key={column.letter} scope="col">
                <span className="marker">{column.letter}</span>
                {column.name}
                <span className="under quiet">
                  {column.kept ? <LetGo one={column.kept} /> : <Keep column={column} />}
                </span>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {compared.figures.map(({ what, values, differences }) => (
            <tr key={what}>
              <th scope="row">{figures[what]}</th>
              {columns.map(({ letter, verdict }, i) => {
                const value = values[i];
                const fails = what === "margin" && !verdict.passes;
                return (
                  <td key={letter}>
                    {fails ? (
                      <b>✕ not safe: don’t build this</b>
                    ) : value === null ? (
                      <span className="quiet">none</span>
                    ) : (
                      figureWords(what, value, system, currency(i))
                    )}
                    <span className="under quiet">
                      {differenceWords(what, [values[0], value], differences[i], system, currency(i))}
                    </span>
                  </td>
                );
              })}
            </tr>
          ))}
          <tr>
            <th scope="row">Governs</th>
            {columns.map(({ letter, design, verdict }, i) => {
              const check = compared.governs[i];
              return (
                <td key={letter} className="wrap">
                  {check && (
                    <>
                      <span className="gov">
                        {check.title} {verdict.passes ? "governs" : "fails"}, {used(check.utilisation)}
                      </span>
                      <span className="under quiet">{lowerFirst(placeWords(check, design, system))}</span>
                    </>
                  )}
                </td>
              );
            })}
          </tr>
          {compared.choices.map(({ what, differs }) => (
            <tr key={what}>
              <th scope="row">{choices[what]}</th>
              {columns.map(({ letter, design, reading }, i) => (
                <td key={letter} className="wrap">
                  {i > 0 && !differs[i] ? (
                    <span className="quiet">as {columns[0].letter}</span>
                  ) : (
                    choiceWords(what, design, reading, system)
                  )}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
};

/** A cell of the map is judged under givens that no paper holds: it can't be kept. */
const Keep = ({ column: { at, name, design, reading } }: { column: Judged }) => {
  const kept = useStore(shelf, (state) => state.kept);
  if (at) return null;
  if (kept.some((one) => one.design === design && one.paper === reading.paper)) return "kept";
  return (
    <button
      type="button"
      className="link letter"
      onClick={() => void keep({ name: `${reading.study.name}, ${name}`, paper: reading.paper, design })}
    >
      keep
    </button>
  );
};

import { useEffect, useMemo } from "react";
import { governing } from "../../checks/governing.ts";
import type { Section } from "../../model/catalog.ts";
import type { Design } from "../../model/design.ts";
import { lowerFirst } from "../../report/names.ts";
import type { Outcome } from "../../search/types.ts";
import { Opened } from "../parts/opened.tsx";
import { type Paper, type Reading, useBook } from "../state/book.ts";
import { askAll, PATIENT, pricing } from "../state/pricing.ts";
import { foundIn, highestTried, stockLength, tallestPaper, widestOf, widestPaper } from "../state/reach.ts";
import { questionKey } from "../state/steps.ts";
import { useStore } from "../state/store.ts";
import { type System, said } from "../wording/figures.ts";
import { sectionName } from "../wording/parts.ts";
import { asNew, sectionFigures, steelOf, whyNotCovered } from "../wording/section-figures.ts";

/** How far each section that the study may use can go: asked of the exact search, one question after the other. */
export const SectionReach = ({ reading }: { reading: Reading }) => (
  <Opened words="How far each section goes">{() => <ReachTable reading={reading} />}</Opened>
);

const ReachTable = ({ reading }: { reading: Reading }) => {
  const system = useBook((state) => state.system);
  const answers = useStore(pricing, (state) => state.answers);
  const rows = useMemo(() => rowsOf(reading), [reading]);
  useEffect(
    () =>
      askAll(
        rows.flatMap(({ tallest, widest }) => (tallest ? [tallest, widest] : [widest])),
        PATIENT,
      ),
    [rows],
  );
  const outcomeOf = (paper: Paper | null) => paper && answers.get(questionKey(paper));
  return (
    <>
      <table className="cat" aria-label="How far each section goes">
        <thead>
          <tr>
            <th>Section</th>
            <th className="num">Bears, of new</th>
            <th className="num">Stock reaches</th>
            <th className="num">Highest safe</th>
            <th className="num">Most antenna</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ section, bears, tallest, widest }) => (
            <tr key={section.id}>
              <td>{sectionName(section, system)}</td>
              <td className="num">{bears}</td>
              <td className="num quiet">{reachWords(section, system)}</td>
              <td className="num">
                {tallest ? (
                  <Found
                    outcome={outcomeOf(tallest)}
                    words={({ height }) =>
                      `${said(height, "length", system)}${height > highestTried(reading, section) - 1e-6 ? " or more" : ""}`
                    }
                  />
                ) : (
                  <span className="quiet">several heights wished</span>
                )}
              </td>
              <td className="num">
                <Found
                  outcome={outcomeOf(widest)}
                  words={(design) => {
                    const { area, last } = widestOf(reading, design.package);
                    return `${said(area, "area", system)}${last ? " or more" : ""}`;
                  }}
                />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="quiet slim">
        At any cost, on this study’s grid and lot, by whole pieces: the highest safe mast with the antennas
        wished, and the most antenna safe at the height wished, area and weight grown alike in steps. Under
        each stands what governs there.
      </p>
    </>
  );
};

const rowsOf = (reading: Reading) => {
  const steel = steelOf(reading);
  const { sections } = reading.study.parts;
  return reading.catalog.sections
    .filter((row) => sections === "all" || sections.includes(row.id))
    .filter((row) => whyNotCovered(row, steel) === undefined)
    .map((section) => {
      const [now, fresh] = [sectionFigures(section, steel), sectionFigures(asNew(section), steel)];
      return {
        section,
        bears: now && fresh ? `${Math.round((100 * now.moment) / fresh.moment)} %` : "",
        tallest: tallestPaper(reading, section),
        widest: widestPaper(reading, section),
      };
    });
};

const reachWords = (section: Section, system: System): string => {
  const reach = stockLength(section);
  return Number.isFinite(reach) ? said(reach, "length", system) : "any";
};

interface FoundProps {
  readonly outcome: Outcome | null | undefined;
  readonly words: (design: Design) => string;
}
/** A proven figure and what governs there, or why there is none. */
const Found = ({ outcome, words }: FoundProps) => {
  if (!outcome) return <span className="quiet">…</span>;
  const found = foundIn(outcome);
  if (!found)
    return <span className="quiet">{outcome.status === "none-safe" ? "nothing safe" : "not proven"}</span>;
  const governs = governing(found.verdict.checks);
  return (
    <>
      <b>{words(found.design)}</b>
      {governs && <span className="under quiet">{lowerFirst(governs.title)}</span>}
    </>
  );
};

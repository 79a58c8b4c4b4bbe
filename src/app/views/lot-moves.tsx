import { useEffect, useMemo } from "react";
import type { StudyFile } from "../../model/study.ts";
import type { Outcome } from "../../search/types.ts";
import { Opened } from "../parts/opened.tsx";
import { type Paper, type Reading, readPaper, useBook } from "../state/book.ts";
import { withValue } from "../state/path.ts";
import { askAll, PATIENT, pricing } from "../state/pricing.ts";
import { costOf, questionKey } from "../state/steps.ts";
import { useStore } from "../state/store.ts";
import { money, type System, said } from "../wording/figures.ts";

interface Props {
  readonly reading: Reading;
  /** What the answer costs where the mast stands. */
  readonly cost: number;
}

/** What it would cost to stand a step to each side: an exact search of its own for each. */
export const LotMoves = ({ reading, cost }: Props) => (
  <Opened words="What moving the mast costs">{() => <Moves reading={reading} cost={cost} />}</Opened>
);

const SIDES = [
  { name: "North", east: 0, north: 1 },
  { name: "East", east: 1, north: 0 },
  { name: "South", east: 0, north: -1 },
  { name: "West", east: -1, north: 0 },
] as const;
/** Two paces: less seldom changes a mast. */
const stepOf = (system: System): number => (system === "us" ? 5 * 0.3048 : 1.5);

const Moves = ({ reading, cost }: Props) => {
  const system = useBook((state) => state.system);
  const answers = useStore(pricing, (state) => state.answers);
  const moves = useMemo(() => movesOf(reading, system), [reading, system]);
  useEffect(
    () =>
      askAll(
        moves.flatMap(({ paper }) => paper ?? []),
        PATIENT,
      ),
    [moves],
  );
  const { currency } = reading.catalog.prices;
  return (
    <table aria-label="What moving the mast costs">
      <thead>
        <tr>
          <th>By {said(stepOf(system), "length", system)} to the</th>
          <th className="num">Costs</th>
          <th>Then</th>
        </tr>
      </thead>
      <tbody>
        {moves.map(({ name, paper }) => {
          const outcome = paper ? answers.get(questionKey(paper)) : undefined;
          return (
            <tr key={name}>
              <td>{name}</td>
              <td className="num">
                <b>{paper ? costWords(outcome, cost, currency, system) : ""}</b>
              </td>
              <td className="quiet">{paper ? thenWords(outcome, system) : "no place for a mast"}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
};

/** The study with its mast a step aside; null where that is no place for a mast. */
const movesOf = ({ paper, study }: Reading, system: System) => {
  const by = stepOf(system);
  return SIDES.map(({ name, east, north }): { readonly name: string; readonly paper: Paper | null } => {
    const mast = [study.lot.mast[0] + east * by, study.lot.mast[1] + north * by];
    const moved = { ...paper, study: withValue(paper.study, ["lot", "mast"], mast) as StudyFile };
    return { name, paper: "study" in readPaper(moved) ? moved : null };
  });
};

const costWords = (outcome: Outcome | undefined, cost: number, currency: string, system: System): string => {
  if (!outcome) return "…";
  const moved = costOf(outcome);
  if (moved === null) return "";
  const more = moved - cost;
  if (Math.abs(more) < 0.5) return "nothing";
  return more < 0 ? `saves ${money(-more, currency, system)}` : money(more, currency, system);
};

const thenWords = (outcome: Outcome | undefined, system: System): string => {
  if (!outcome) return "";
  if (outcome.status === "none-safe") return "nothing is safe there";
  if (outcome.status === "stopped") return "not proven in the time given to it";
  const { design, verdict } = outcome.best;
  const near = verdict.checks.find(({ kind, demand, capacity }) => kind === "warning" && demand > capacity);
  const guys = design.guys
    ? `anchors ${said(design.guys.radius, "length", system)} out, star turned to ${Math.round(design.guys.rotation)}°`
    : "no guys";
  return near ? `▲ within reach of ${near.where}; ${guys}` : guys;
};

import { useEffect, useMemo } from "react";
import { governing } from "../../checks/governing.ts";
import { lowerFirst } from "../../report/names.ts";
import { fewest, type Word } from "../../search/relax.ts";
import type { Outcome } from "../../search/types.ts";
import { change, type Paper, useBook } from "../state/book.ts";
import { askAll, pricing } from "../state/pricing.ts";
import type { Answer } from "../state/shown.ts";
import { givenIn, questionKey, type WayOut, waysOut } from "../state/steps.ts";
import { useStore } from "../state/store.ts";
import { money, type System, used } from "../wording/figures.ts";
import { proofClaim } from "../wording/proof.ts";

/** So many may have to give way together; more are not asked about. */
const MOST = 3;
const HEADS = ["Give way on one of these", "Give way on two of these together", "Give way on three together"];
const LOOKING = [
  "Looking for the smallest way out.",
  "No single step is enough. Looking at two together.",
  "No two steps are enough. Looking at three together.",
];

/** Nothing passes: the nearest miss, then the smallest ways out, each really searched. */
const NoneSafe = ({ answer }: { answer: Extract<Answer, { kind: "none-safe" }> }) => {
  const system = useBook((state) => state.system);
  const { reading } = answer;
  const ways = useMemo(() => waysOut(reading, system), [reading, system]);
  const papers = useMemo(() => {
    const known = new Map<string, Paper>();
    return (set: readonly WayOut[]): Paper => {
      const key = set.map(({ id }) => id).join(" ");
      const paper = known.get(key) ?? givenIn(reading.paper, set);
      known.set(key, paper);
      return paper;
    };
  }, [reading]);
  const answers = useStore(pricing, (state) => state.answers);
  const { size, enough, open, silent } = useMemo(
    () => fewest(ways, MOST, (set) => wordOf(answers.get(questionKey(papers(set))))),
    [ways, papers, answers],
  );
  // a size at a time: the next one only where this one has nothing
  useEffect(() => askAll(open.map(papers)), [open, papers]);
  const miss = answer.nearest && governing(answer.nearest.verdict.checks);
  return (
    <>
      <p className="none">Nothing on this grid is safe</p>
      <p className="reason claim">
        {proofClaim("none-safe", answer.proof, system)}
        {miss && (
          <>
            {" "}
            The nearest of those analysed fails{" "}
            <span className="gov letter">
              {lowerFirst(miss.title)}, {used(miss.utilisation)}
            </span>
            .
          </>
        )}
      </p>
      <table aria-label="Ways out">
        <thead>
          <tr>
            <th>{HEADS[size - 1]}</th>
            <th className="num">By</th>
            <th className="num">Then it costs</th>
            <th>
              <span className="vh">Choose</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {enough.map((set) => {
            const words = set.map(({ label }) => label.split("|"));
            const what = words.map(([one], i) => (i === 0 ? one : lowerFirst(one))).join(", and ");
            const paper = papers(set);
            return (
              <tr key={set.map(({ id }) => id).join(" ")}>
                <td>{what}</td>
                <td className="num">{words.map(([, by]) => by).join(", ")}</td>
                <td className="num">
                  <b>{costWords(answers.get(questionKey(paper)), reading.catalog.prices.currency, system)}</b>
                </td>
                <td className="num">
                  <button type="button" className="link" onClick={() => change(paper, lowerFirst(what))}>
                    take
                  </button>
                </td>
              </tr>
            );
          })}
          {enough.length === 0 && (
            <tr>
              <td colSpan={4} className="quiet">
                {open.length > 0
                  ? LOOKING[size - 1]
                  : "No three of the small steps tried are enough together."}
              </td>
            </tr>
          )}
          {silent > 0 && (
            <tr>
              <td colSpan={4} className="quiet">
                {silent === 1 ? "One smaller way" : `${silent} smaller ways`} took too long to search: fewer
                steps may be enough.
              </td>
            </tr>
          )}
        </tbody>
      </table>
    </>
  );
};

/** A search that ran out of time may still have found something safe: then the cost is not proven least. */
const wordOf = (outcome: Outcome | undefined): Word | undefined => {
  if (!outcome) return undefined;
  if (outcome.status === "none-safe") return "none-safe";
  return outcome.best?.verdict.passes ? "safe" : "no word";
};

const costWords = (outcome: Outcome | undefined, currency: string, system: System): string => {
  if (!outcome || outcome.status === "none-safe" || !outcome.best) return "";
  const cost = money(outcome.best.verdict.bill.total, currency, system);
  return outcome.status === "proven" ? cost : `at most ${cost}`;
};
export default NoneSafe;

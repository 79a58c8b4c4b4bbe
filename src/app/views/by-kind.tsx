import { useEffect, useMemo } from "react";
import { governing } from "../../checks/governing.ts";
import type { AnchorRow, FootingRow } from "../../model/catalog.ts";
import type { StudyFile } from "../../model/study.ts";
import { percent } from "../../report/names.ts";
import { anchorKind, footingKind } from "../../report/part-names.ts";
import type { Outcome } from "../../search/types.ts";
import { Opened } from "../parts/opened.tsx";
import { type Paper, type Reading, useBook } from "../state/book.ts";
import { askAll, PATIENT, pricing } from "../state/pricing.ts";
import { questionKey } from "../state/steps.ts";
import { useStore } from "../state/store.ts";
import { figure, grouped, type System, unitOf } from "../wording/figures.ts";

/** Each kind of anchor with each kind of base, the best of it under the study's aim. */
export const ByKind = ({ reading }: { reading: Reading }) => (
  <Opened words="By kind of anchor and base">{() => <KindTable reading={reading} />}</Opened>
);

interface Kinds {
  readonly anchor: AnchorRow["kind"] | null;
  readonly footing: FootingRow["kind"];
  readonly paper: Paper;
}

const KindTable = ({ reading }: { reading: Reading }) => {
  const system = useBook((state) => state.system);
  const answers = useStore(pricing, (state) => state.answers);
  const rows = useMemo(() => kindsOf(reading), [reading]);
  useEffect(
    () =>
      askAll(
        rows.map(({ paper }) => paper),
        PATIENT,
      ),
    [rows],
  );
  const asked = rows.map((row) => ({ ...row, outcome: answers.get(questionKey(row.paper)) }));
  const best = asked.reduce<number>(
    (least, { outcome }) => Math.min(least, aimed(reading, outcome)),
    Number.POSITIVE_INFINITY,
  );
  return (
    <>
      <div className="scroll-x">
        <table className="cat" aria-label="By kind of anchor and base">
          <thead>
            <tr>
              <th>Anchors</th>
              <th>Base</th>
              <th className="num">Cost, {reading.catalog.prices.currency}</th>
              <th className="num">Concrete, {unitOf("volume", system)}</th>
              <th className="num">Dug, {unitOf("volume", system)}</th>
              <th className="num">Margin, %</th>
              <th>Governs</th>
            </tr>
          </thead>
          <tbody>
            {[...asked].sort(bestFirst(reading)).map((row) => (
              <Row
                key={`${row.anchor} ${row.footing}`}
                {...row}
                system={system}
                least={Number.isFinite(best) && aimed(reading, row.outcome) <= best + 1e-9}
              />
            ))}
          </tbody>
        </table>
      </div>
      <p className="quiet slim">
        Each row is a search of its own, proven; the best under the study’s aim is bold.
      </p>
    </>
  );
};

interface RowProps extends Kinds {
  readonly outcome: Outcome | undefined;
  readonly system: System;
  readonly least: boolean;
}
const Row = ({ anchor, footing, outcome, system, least }: RowProps) => {
  const best = outcome?.status === "proven" && outcome.best.verdict.passes ? outcome.best.verdict : null;
  const unfound = !outcome ? "…" : outcome.status === "none-safe" ? "nothing safe" : "not proven";
  return (
    <tr className={least ? "sel" : undefined}>
      <td>{anchor ? anchorKind(anchor, 2) : "none, free-standing"}</td>
      <td>{footingKind(footing)}</td>
      {best ? (
        <>
          <td className="num">
            <b>{grouped(best.bill.total, 0, system)}</b>
          </td>
          <td className="num">{figure(best.concreteVolume, "volume", system, 2)}</td>
          <td className="num">{figure(best.dugVolume, "volume", system, 2)}</td>
          <td className="num">{percent(best.smallestMargin)}</td>
          <td>{governing(best.checks)?.title.toLowerCase()}</td>
        </>
      ) : (
        <td colSpan={5} className="quiet">
          {unfound}
        </td>
      )}
    </tr>
  );
};

/** What is found, best first, then what is asked still, then what could not be found. */
const bestFirst =
  (reading: Reading) =>
  ({ outcome: a }: { outcome?: Outcome }, { outcome: b }: { outcome?: Outcome }): number => {
    const rank = (outcome?: Outcome) =>
      !outcome ? 1 : outcome.status === "proven" ? 0 : outcome.status === "stopped" ? 2 : 3;
    if (rank(a) !== rank(b)) return rank(a) - rank(b);
    return rank(a) === 0 ? aimed(reading, a) - aimed(reading, b) : 0;
  };

/** What the aim makes least, of a row. */
const aimed = ({ study }: Reading, outcome: Outcome | undefined): number => {
  if (outcome?.status !== "proven" || !outcome.best.verdict.passes) return Number.POSITIVE_INFINITY;
  const { bill, concreteVolume, dugVolume } = outcome.best.verdict;
  if (study.aim === "concrete") return concreteVolume;
  return study.aim === "digging" ? dugVolume : bill.total;
};

/** Every pair of kinds that the study allows. */
const kindsOf = ({ paper, study, catalog }: Reading): Kinds[] => {
  const allowed = <R extends { readonly id: string; readonly kind: string }>(
    rows: readonly R[],
    ids: "all" | readonly string[],
  ) => {
    const kinds = new Map<R["kind"], R[]>();
    for (const row of rows)
      if (ids === "all" || ids.includes(row.id)) kinds.set(row.kind, [...(kinds.get(row.kind) ?? []), row]);
    return kinds;
  };
  const anchors = allowed(catalog.anchors, study.parts.anchors);
  const footings = allowed(catalog.footings, study.parts.footings);
  const ids = (rows: readonly { id: string }[]) => rows.map(({ id }) => id);
  const asking = (parts: object): Paper => ({
    ...paper,
    study: { ...paper.study, parts: { ...paper.study.parts, ...parts } } as StudyFile,
  });
  const { supports } = study.parts;
  return [...footings].flatMap(([footing, bases]) => [
    ...(supports.includes("guyed")
      ? [...anchors].map(([anchor, rows]) => ({
          anchor,
          footing,
          paper: asking({ supports: ["guyed"], anchors: ids(rows), footings: ids(bases) }),
        }))
      : []),
    ...(supports.includes("freestanding")
      ? [{ anchor: null, footing, paper: asking({ supports: ["freestanding"], footings: ids(bases) }) }]
      : []),
  ]);
};

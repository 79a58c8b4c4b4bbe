import { useEffect, useMemo } from "react";
import type { Section } from "../../model/catalog.ts";
import { type Column, tableColumns } from "../../model/csv-columns.ts";
import type { StudyFile } from "../../model/study.ts";
import { wallOf } from "../../physics/steel/member.ts";
import type { Outcome } from "../../search/types.ts";
import { type Paper, type Reading, useBook } from "../state/book.ts";
import { withValue } from "../state/path.ts";
import { askAll, pricing } from "../state/pricing.ts";
import { costOf, questionKey } from "../state/steps.ts";
import { useStore } from "../state/store.ts";
import { figure, grouped, type Measure, money, type System, unitOf } from "../wording/figures.ts";
import { axisWords, single } from "../wording/givens.ts";
import { bracingWords, sectionName } from "../wording/parts.ts";
import { asNew, sectionFigures, steelOf, wallLost, whyNotCovered } from "../wording/section-figures.ts";
import { useAnswer } from "./answer.tsx";
import { CatalogCell } from "./catalog-cell.tsx";

interface Props {
  readonly reading: Reading;
  readonly chosen: string;
  readonly choose: (id: string) => void;
}

/** The study with this row as its only section: what the whole mast would cost with it. */
const onlyWith = (paper: Paper, id: string): Paper => {
  const papers = kept.get(paper) ?? new Map<string, Paper>();
  kept.set(paper, papers);
  const known = papers.get(id);
  if (known) return known;
  const only = { ...paper, study: withValue(paper.study, ["parts", "sections"], [id]) as StudyFile };
  papers.set(id, only);
  return only;
};
const kept = new WeakMap<Paper, Map<string, Paper>>();

export const SectionsTable = ({ reading, chosen, choose }: Props) => {
  const system = useBook((state) => state.system);
  const finding = useBook((state) => state.finding);
  const answers = useStore(pricing, (state) => state.answers);
  const answer = useAnswer();
  const rows = reading.catalog.sections;
  const settled = finding.state === "ended" && finding.reading === reading;
  useEffect(() => {
    const steel = steelOf(reading);
    // a section that can't be computed has no whole mast to ask for
    const covered = rows.filter((row) => whyNotCovered(row, steel) === undefined);
    return settled ? askAll(covered.map((row) => onlyWith(reading.paper, row.id))) : undefined;
  }, [settled, rows, reading]);
  const best = answer.kind === "proven" ? answer.best : null;
  const inAnswer = new Set(best?.design.stack.map((part) => part.section));
  const columns = tableColumns("sections");
  const wall = columns.find((column) => column.name === "measuredWall");
  const height = axisWords(reading.study.wishes.height, system);
  // a column's head breaks before its unit, not in it
  const unit = (of: Measure) => unitOf(of, system).replaceAll(" ", "\u00a0");
  return (
    <table className="cat sections" aria-label="Sections">
      <thead>
        <tr className="grp">
          <th colSpan={4}>What it is</th>
          <th colSpan={4}>What it bears</th>
          <th colSpan={2}>For sale</th>
          <th colSpan={2}>What it does here</th>
        </tr>
        <tr>
          <th>Section</th>
          <th>Bracing</th>
          <th className="num">Wall, {unit("size")}</th>
          <th className="num">Lost</th>
          <th className="num">Moment, {unit("moment")}</th>
          <th className="num">as new</th>
          <th className="num">Leg, {unit("force")}</th>
          <th className="num">Weight, {unit("lineForce")}</th>
          <th className="num">Have</th>
          <th className="num">$ each</th>
          <th className="num">Whole mast, $&nbsp;at&nbsp;{height.replace(/ (\S+)$/, "\u00a0$1")}</th>
          <th>
            <span className="vh">Against the answer</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <SectionRow
            key={row.id}
            row={row}
            system={system}
            reading={reading}
            wall={wall}
            pieces={columns.find((column) => column.name === "pieces")}
            chosen={row.id === chosen}
            choose={choose}
            outcome={answers.get(questionKey(onlyWith(reading.paper, row.id)))}
            answerCost={best?.verdict.bill.total ?? null}
            isAnswer={inAnswer.has(row.id)}
          />
        ))}
      </tbody>
    </table>
  );
};

interface RowProps {
  readonly row: Section;
  readonly system: System;
  readonly reading: Reading;
  readonly wall: Column | undefined;
  readonly pieces: Column | undefined;
  readonly chosen: boolean;
  readonly choose: (id: string) => void;
  readonly outcome: Outcome | undefined;
  readonly answerCost: number | null;
  readonly isAnswer: boolean;
}
const SectionRow = (props: RowProps) => {
  const { row, system, reading, wall, pieces, chosen, choose, outcome, answerCost, isAnswer } = props;
  const steel = steelOf(reading);
  const figures = useMemo(() => sectionFigures(row, steel), [row, steel]);
  const fresh = useMemo(() => sectionFigures(asNew(row), steel), [row, steel]);
  const lost = wallLost(row);
  const name = sectionName(row, system);
  const longest = [...row.pieces].sort((a, b) => b.length - a.length)[0];
  const have = row.pieces.some((piece) => piece.have !== undefined)
    ? `${row.pieces.reduce((sum, piece) => sum + (piece.have ?? 0), 0)}`
    : "any";
  return (
    <tr className={chosen ? "sel" : undefined}>
      <td>
        <button type="button" className="pick" aria-pressed={chosen} onClick={() => choose(row.id)}>
          {chosen && <span aria-hidden="true">▸ </span>}
          {name}
        </button>
      </td>
      <td className="quiet">{bracingWords(row)}</td>
      <td className="num">
        {wallOf(row.leg) !== undefined && wall ? (
          <CatalogCell
            table="sections"
            id={row.id}
            column={wall}
            reading={reading}
            title={name}
            empty="new"
          />
        ) : (
          <span className="quiet">solid</span>
        )}
      </td>
      <td className="num quiet">{lost !== null && lost > 0 ? `${Math.round(lost * 100)} %` : ""}</td>
      <td className="num">
        {figures ? (
          <b title={figures.ratedBy && `as rated: ${figures.ratedBy}`}>
            {figure(figures.moment, "moment", system)}
            {figures.ratedBy && <span className="quiet"> rated</span>}
          </b>
        ) : (
          <b title={whyNotCovered(row, steel)}>not covered</b>
        )}
      </td>
      <td className="num quiet">{lost && fresh ? figure(fresh.moment, "moment", system) : ""}</td>
      <td className="num">{figures && figure(figures.leg, "force", system)}</td>
      <td className="num">{figures && figure(figures.weight, "lineForce", system, 1)}</td>
      <td className="num quiet">{have}</td>
      <td className="num">
        {pieces && (
          <CatalogCell
            table="sections"
            id={row.id}
            column={pieces}
            reading={reading}
            title={name}
            brief={grouped(longest.price, 0, system)}
          />
        )}
      </td>
      <td className="num">{figures && <WholeMast outcome={outcome} system={system} />}</td>
      <td>
        <Against {...{ row, reading, outcome, answerCost, isAnswer, system }} />
      </td>
    </tr>
  );
};

const WholeMast = ({ outcome, system }: { outcome: Outcome | undefined; system: System }) => {
  if (!outcome) return <span className="quiet">…</span>;
  const cost = costOf(outcome);
  if (cost !== null) return <b>{grouped(cost, 0, system)}</b>;
  return <span className="quiet">{outcome.status === "none-safe" ? "none" : "not proven"}</span>;
};

type Cells = "wall" | "pieces" | "chosen" | "choose";

/** Stock that can't be stacked to the height. */
const tooFew = (row: Section, needs: number): boolean =>
  row.pieces.every((piece) => piece.have !== undefined) &&
  row.pieces.reduce((sum, piece) => sum + piece.length * (piece.have ?? 0), 0) < needs - 1e-6;

const Against = ({ row, reading, outcome, answerCost, isAnswer, system }: Omit<RowProps, Cells>) => {
  if (isAnswer) return <b>in the answer</b>;
  if (!outcome) return null;
  if (outcome.status === "none-safe") {
    const worst = outcome.nearest?.verdict.checks.find((check) => !check.passes);
    if (worst) return <span className="quiet">{worst.title.toLowerCase()} fails</span>;
    const needs = single(reading.study.wishes.height);
    return <span className="quiet">{needs !== null && tooFew(row, needs) ? "too few" : "nothing safe"}</span>;
  }
  const cost = costOf(outcome);
  if (cost === null || answerCost === null) return null;
  const more = cost - answerCost;
  return <span className="quiet">{more >= 0.5 ? `+ ${money(more, "", system)}` : "as cheap"}</span>;
};

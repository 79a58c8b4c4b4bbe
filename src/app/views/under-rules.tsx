import { useEffect, useState } from "react";
import { type UnderRuleSet, underRuleSet } from "../../checks/under-rule-sets.ts";
import type { Design } from "../../model/design.ts";
import { percent } from "../../report/names.ts";
import { Opened } from "../parts/opened.tsx";
import { type Reading, useBook } from "../state/book.ts";
import { answerOf, judgedOf } from "../state/shown.ts";
import { grouped, type System, used } from "../wording/figures.ts";

/** The mast of the answer under every rule set, on demand: each judges it whole. */
export const UnderRules = ({ reading }: { reading: Reading }) => {
  const finding = useBook((state) => state.finding);
  const former = useBook((state) => state.former);
  const judged = judgedOf(answerOf({ finding, former }));
  return (
    <section aria-label="This mast under every rule set">
      <h2>
        The same mast under every rule set<small>same wind, other factors</small>
      </h2>
      {judged ? (
        <Opened words="side by side">{() => <Columns reading={reading} design={judged.design} />}</Opened>
      ) : (
        <p className="quiet">There is no mast yet to set side by side.</p>
      )}
    </section>
  );
};

/** One rule set at a time, with a breath between: a page must not stand still for all of them. */
const useColumns = (reading: Reading, design: Design): readonly UnderRuleSet[] => {
  const [columns, setColumns] = useState<readonly UnderRuleSet[]>([]);
  useEffect(() => {
    setColumns([]);
    const { study, catalog } = reading;
    let timer: ReturnType<typeof setTimeout> | undefined;
    const next = (index: number) => {
      if (index >= catalog.rules.length) return;
      timer = setTimeout(() => {
        const column = underRuleSet(study, catalog, design, catalog.rules[index]);
        setColumns((before) => [...before, column]);
        next(index + 1);
      }, 0);
    };
    next(0);
    return () => clearTimeout(timer);
  }, [reading, design]);
  return columns;
};

const Columns = ({ reading, design }: { reading: Reading; design: Design }) => {
  const system = useBook((state) => state.system);
  const columns = useColumns(reading, design);
  const rows = new Map<string, string>();
  for (const column of columns)
    if (column.status === "judged")
      for (const check of column.checks)
        if (check.kind === "strength") rows.set(check.id, `${check.title}${levelOf(check.id)}`);
  return (
    <div className="scroll-x">
      <table className="cat" aria-label="Checks under every rule set">
        <thead>
          <tr>
            <th>Check</th>
            {columns.map(({ id, own }) => (
              <th key={id} className="num">
                {id}
                {own && <span className="under quiet">judges this study</span>}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          <tr>
            <td>
              <b>Margin</b>
            </td>
            {columns.map((column) => (
              <td key={column.id} className="num">
                <b>{marginWords(column)}</b>
              </td>
            ))}
          </tr>
          {[...rows].map(([id, title]) => (
            <tr key={id}>
              <td>{title}</td>
              {columns.map((column) => (
                <td key={column.id} className="num">
                  <UseAndFactor column={column} id={id} system={system} />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      {columns.map(
        (column) =>
          column.status === "refused" && (
            <p key={column.id} className="reason">
              ✕ {column.id}: {column.reason}.
            </p>
          ),
      )}
      <p className="quiet">
        Share used of what each allows, and the factor it asks; only the study’s own rule set says whether
        this mast is safe.
      </p>
    </div>
  );
};

const marginWords = (column: UnderRuleSet): string => {
  if (column.status === "refused") return "✕ not judged";
  return column.passes ? `${percent(column.smallestMargin)} %` : "✕ fails";
};

const UseAndFactor = ({ column, id, system }: { column: UnderRuleSet; id: string; system: System }) => {
  const check = column.status === "judged" ? column.checks.find((one) => one.id === id) : undefined;
  if (!check) return <span className="quiet">–</span>;
  return (
    <span title={check.source}>
      {check.passes ? "" : "✕ "}
      {used(check.utilisation)}
      <span className="under quiet">× {grouped(check.required, 2, system)}</span>
    </span>
  );
};

/** "guy-strength/2" is of level 2. */
const levelOf = (id: string): string => {
  const [, level] = id.split("/");
  return level ? `, level ${level}` : "";
};

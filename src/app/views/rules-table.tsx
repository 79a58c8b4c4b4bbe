import { Fragment } from "react";
import type { RuleSet } from "../../model/catalog.ts";
import { Given } from "../parts/given.tsx";
import { type Reading, useBook } from "../state/book.ts";
import { valueAt } from "../state/path.ts";
import { editRow, writtenRow } from "../state/shelf.ts";
import { grouped, type System, said } from "../wording/figures.ts";
import { type Typed, typedPercent, typedQuantity } from "../wording/given.ts";
import { type RuleLine, ruleGroups } from "../wording/rule-words.ts";

interface Props {
  readonly reading: Reading;
  readonly chosen: string;
  readonly choose: (id: string) => void;
}

/** Rule sets side by side: a column each, a factor a row; every number is edited where it stands. */
export const RulesTable = ({ reading, chosen, choose }: Props) => {
  const system = useBook((state) => state.system);
  const { rules } = reading.catalog;
  const own = reading.study.rules.set;
  return (
    <table className="cat rules" aria-label="Rule sets">
      <thead>
        <tr>
          <th>Factor</th>
          {rules.map((rule) => (
            <th key={rule.id} className="num">
              <button
                type="button"
                className={`row${rule.id === chosen ? " here" : ""}`}
                aria-pressed={rule.id === chosen}
                onClick={() => choose(rule.id)}
              >
                {rule.id}
              </button>
              {rule.id === own && <span className="under quiet">judges this study</span>}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {ruleGroups(rules).map(({ title, lines }) => (
          <Fragment key={title}>
            <tr className="grp">
              <th colSpan={rules.length + 1}>{title}</th>
            </tr>
            {lines.map((line) => (
              <tr key={line.path.join(".")}>
                <td>
                  {line.name} <span className="quiet">{line.gloss}</span>
                </td>
                {rules.map((rule) => (
                  <td key={rule.id} className="num">
                    <RuleCell rule={rule} line={line} reading={reading} system={system} />
                  </td>
                ))}
              </tr>
            ))}
          </Fragment>
        ))}
      </tbody>
    </table>
  );
};

interface CellProps {
  readonly rule: RuleSet;
  readonly line: RuleLine;
  readonly reading: Reading;
  readonly system: System;
}
const RuleCell = ({ rule, line, reading, system }: CellProps) => {
  const value = valueAt(rule, line.path);
  if (value === undefined) return <span className="quiet">–</span>;
  const raw = valueAt(writtenRow(reading.paper, "rules", rule.id), line.path);
  const shown = ruleWords(value, line.unit, system);
  return (
    <Given
      label={`${line.name}, ${rule.name}`}
      shown={shown}
      start={typeof raw === "string" ? raw : shown}
      read={(text) => typedRule(text, line.unit, system)}
      write={(typed) =>
        editRow(
          "rules",
          rule.id,
          line.path,
          line.unit === "list" ? listOf(typed.text) : quantity(line.unit) ? typed.text : typed.si,
          `${rule.id}: ${line.name.toLowerCase()} ${typed.text}`,
        )
      }
      width={90}
    />
  );
};

const quantity = (unit: RuleLine["unit"]): unit is "stress" | "unitWeight" =>
  unit === "stress" || unit === "unitWeight";

export const ruleWords = (value: unknown, unit: RuleLine["unit"], system: System): string => {
  if (Array.isArray(value)) return value.join(", ");
  if (typeof value !== "number") return String(value);
  if (quantity(unit)) return said(value, unit, system);
  if (unit === "share") return `${Math.round(value * 1000) / 10} %`;
  if (unit === "degrees") return `${value}°`;
  return grouped(value, 2, system);
};

const listOf = (text: string): number[] => text.split(",").map((one) => Number(one.trim()));

/** A factor as typed; what it may be is for the schema to say. */
const typedRule = (text: string, unit: RuleLine["unit"], system: System): Typed => {
  if (quantity(unit)) return typedQuantity(text, unit, system, { min: 0 });
  if (unit === "share") return typedPercent(text, 100);
  const plain = text.replace("°", "").trim();
  const numbers = unit === "list" ? listOf(plain) : [Number(plain)];
  if (plain === "" || !numbers.every(Number.isFinite))
    return {
      ok: false,
      message: `“${text}” isn’t ${unit === "list" ? "a list of numbers, as “1.2, 0.9”" : "a number"}.`,
    };
  return { ok: true, text: plain, si: numbers[0] };
};

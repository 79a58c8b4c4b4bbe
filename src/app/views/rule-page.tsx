import type { RuleSet } from "../../model/catalog.ts";
import { Given } from "../parts/given.tsx";
import { changeStudy, type Reading, useBook } from "../state/book.ts";
import { valueAt } from "../state/path.ts";
import { editRow } from "../state/shelf.ts";
import { ruleGroups } from "../wording/rule-words.ts";
import { ruleWords } from "./rules-table.tsx";

/** One rule set: its name, whether it judges the study, and who says each of its numbers. */
export const RulePage = ({ rule, reading }: { rule: RuleSet; reading: Reading }) => {
  const system = useBook((state) => state.system);
  const own = rule.id === reading.study.rules.set;
  const text = (path: readonly string[], label: string, value: string) => (
    <Given
      label={label}
      shown={value || "no source"}
      start={value}
      read={(typed) => ({ ok: true, text: typed, si: 0 })}
      write={(typed) => editRow("rules", rule.id, path, typed.text, `${rule.id}: ${label.toLowerCase()}`)}
      width={260}
    />
  );
  return (
    <>
      <h2>
        {text(["name"], "Name of the rule set", rule.name)}
        <small>{own ? "judges this study" : "beside the study’s own"}</small>
      </h2>
      {!own && (
        <p>
          <button
            type="button"
            className="link"
            onClick={() => changeStudy(["rules", "set"], rule.id, `judged by ${rule.id}`)}
          >
            Judge this study by it
          </button>
        </p>
      )}
      <table className="rowpage" aria-label={`Sources of ${rule.name}`}>
        <tbody>
          {ruleGroups([rule]).flatMap(({ lines }) =>
            lines.map((line) => (
              <tr key={line.path.join(".")}>
                <td>
                  {line.name} <b>{ruleWords(valueAt(rule, line.path), line.unit, system)}</b>
                  <span className="under quiet">
                    {text(
                      line.source,
                      `Source of ${line.name.toLowerCase()}`,
                      String(valueAt(rule, line.source) ?? ""),
                    )}
                  </span>
                </td>
              </tr>
            )),
          )}
        </tbody>
      </table>
    </>
  );
};

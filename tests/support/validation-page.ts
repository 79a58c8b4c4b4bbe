import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { type CheckValue, ROWS_FOLDER } from "./check-value-row.ts";

const PAGE = "docs/validation.md";

const rowsFile = (test: string) =>
  `${ROWS_FOLDER}/${test.replace(/^tests\//, "").replaceAll("/", "__")}.json`;

/** Six significant digits, so that the page does not change with the machine. */
const number = (value: number) => (value === 0 ? "0" : String(Number(value.toPrecision(6))));
const small = (value: number) => (value < 1e-9 ? "< 1e-9" : String(Number(value.toPrecision(2))));

function line({ subject, source, tag, expected, computed, tolerance, absolute, unit }: CheckValue): string {
  const gap = Math.abs(computed - expected);
  const difference = absolute ? gap : gap / Math.abs(expected);
  const kind = absolute ? " (absolute)" : "";
  const what = subject.slice(subject.indexOf(": ") + 2);
  return `| ${what} | ${source}; ${tag} | ${number(expected)} | ${number(computed)} | ${unit} | ${small(difference)}${kind} | ${small(tolerance)} |`;
}

/** The page, or undefined where some test file has not left its rows: half a page would pass for a whole one. */
function page(): string | undefined {
  const tests = readdirSync("tests", { recursive: true, encoding: "utf8" })
    .map((path) => `tests/${path.replaceAll("\\", "/")}`)
    .filter((path) => /\.test\.tsx?$/.test(path))
    .filter((path) => readFileSync(path, "utf8").includes("support/check-values"));
  if (!tests.every((test) => existsSync(rowsFile(test)))) return undefined;
  const rows = tests.flatMap((test) => JSON.parse(readFileSync(rowsFile(test), "utf8")) as CheckValue[]);
  const lines = new Map<string, string[]>();
  for (const row of rows) {
    const group = row.subject.slice(0, row.subject.indexOf(":"));
    lines.set(group, [...(lines.get(group) ?? []), line(row)]);
  }
  const groups = [...lines.keys()]
    .sort()
    .flatMap((group) => [
      `## ${group[0].toUpperCase()}${group.slice(1)}`,
      "",
      "| what | source | expected | computed | unit | difference | tolerance |",
      "|---|---|---|---|---|---|---|",
      ...[...new Set(lines.get(group))].sort(),
      "",
    ]);
  return [
    "# Validation",
    "",
    `Made by the tests; do not edit. ${rows.length} values from outside, each with its source and how far that source is known: *published*, *from memory*, *arithmetic* on a named formula (it checks the sum, and lends the formula no authority), *common practice, no source*, or *side by side* with another program. Differences are relative where not marked.`,
    "",
    ...groups,
  ].join("\n");
}

/** Vitest global setup: what it returns runs once, after the last test file. */
export default function setup(): () => void {
  return () => {
    const made = page();
    if (made !== undefined) writeFileSync(PAGE, made);
  };
}

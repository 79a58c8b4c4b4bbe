import { verify } from "../checks/verify.ts";
import type { Check } from "../model/verdict.ts";
import { compile } from "../problem/compile.ts";
import { formatQuantity } from "../quantity/format.ts";
import { type Compared, type Comparison, compare, type FigureName } from "../report/comparison.ts";
import { NO_HOLD } from "../report/names.ts";
import { type Arguments, UsageError } from "./arguments.ts";
import { type Said, searched } from "./commands.ts";
import { type Book, choiceText } from "./design-text.ts";
import { type OpenStudy, openDesign, openStudy, readText } from "./files.ts";
import { cautionText } from "./text.ts";

/** A study says its version; anything else is a design of the study before it. */
const isStudy = (path: string): boolean => {
  try {
    return "mastwright" in JSON.parse(readText(path, "a study or a design file"));
  } catch (error) {
    if (error instanceof UsageError) throw error;
    // what is broken is said by the parser of designs
    return false;
  }
};

/** Studies and the designs that follow each; exit 1 where one of them fails its study, or has no safe answer. */
export async function compareCommand(args: Arguments): Promise<Said> {
  const groups: { path: string; designs: string[] }[] = [];
  for (const path of args.files) {
    if (isStudy(path)) groups.push({ path, designs: [] });
    else {
      const group = groups.at(-1);
      if (!group)
        throw new UsageError(`${path}: found a design, expected the study that it belongs to first`);
      group.designs.push(path);
    }
  }
  if (groups.length === 0) throw new UsageError("compare: found no file, expected studies and their designs");
  const columns: Column[] = [];
  for (const { path, designs } of groups) columns.push(...(await columnsOf(path, designs, args)));
  const comparison = compare(columns);
  return {
    text: `${comparisonText(
      comparison,
      columns.map(({ book }) => book),
    )}\n\n${cautionText}`,
    data: comparison,
    exit: comparison.columns.every(({ passes }) => passes) ? 0 : 1,
  };
}

interface Column extends Compared {
  readonly book: Book;
}

async function columnsOf(path: string, designs: readonly string[], args: Arguments): Promise<Column[]> {
  const open = openStudy(path);
  const { name } = open.study;
  if (designs.length === 0) return [await answered(path, open, args)];
  const problem = compile(open.study, open.catalog);
  return designs.map((file) => {
    const design = openDesign(file, open);
    return { name: `${name}: ${file}`, design, verdict: verify(problem, design), book: open };
  });
}

async function answered(path: string, open: OpenStudy, args: Arguments): Promise<Column> {
  const outcome = await searched(open, args);
  if (outcome.status === "none-safe" || !outcome.best)
    throw new UsageError(
      `${path}: found ${outcome.status === "stopped" ? "nothing safe before it was stopped" : "nothing safe on its grid"}, expected an answer to compare; name a design of it instead`,
    );
  return { name: open.study.name, ...outcome.best, book: open };
}

const quantity = (dimension: Parameters<typeof formatQuantity>[1], digits: number) => (value: number) => {
  const { value: shown, unit } = formatQuantity(value, dimension, "us", digits);
  return `${shown} ${unit}`;
};
const dollars = (value: number) => `$${value.toFixed(2)}`;
const count = (value: number) => `${value}`;

const figures: Readonly<
  Record<FigureName, { readonly title: string; readonly text: (value: number) => string }>
> = {
  cost: { title: "cost", text: dollars },
  margin: { title: "smallest margin", text: (value) => `${(100 * value).toFixed(1)} %` },
  concrete: { title: "concrete", text: quantity("volume", 2) },
  digging: { title: "digging", text: quantity("volume", 2) },
  work: { title: "work, one pair of hands", text: quantity("work", 0) },
  curing: { title: "concrete hardens", text: quantity("work", 0) },
  steel: { title: "of the cost, sections", text: dollars },
  height: { title: "height", text: quantity("length", 1) },
  radius: { title: "anchors out", text: quantity("length", 1) },
  levels: { title: "guy levels", text: count },
};

const choices = { package: "antennas", stack: "sections", guys: "guys", anchor: "anchors", footing: "base" };

const governsText = (check: Check | null): string => {
  if (!check) return "nothing";
  const used = Number.isFinite(check.utilisation) ? check.utilisation.toFixed(2) : NO_HOLD;
  return `${check.title}, ${check.where}: ${check.passes ? "governs" : "FAILS"}, ${used}`;
};

function comparisonText(
  { columns, figures: rows, choices: picks, governs, uses }: Comparison,
  books: readonly Book[],
): string {
  const letter = (i: number) => String.fromCharCode(65 + (i % 26));
  const wide = 22;
  const line = (title: string, cells: readonly string[]) =>
    `  ${title.padEnd(42)}${cells.map((cell) => cell.padEnd(wide)).join("")}`.trimEnd();
  const signed = (text: (value: number) => string, difference: number | null) =>
    difference === null || difference === 0
      ? ""
      : ` (${difference > 0 ? "+" : "-"}${text(Math.abs(difference))})`;
  return [
    "Side by side, each judged under its own study; in brackets by how much it differs from A.",
    ...columns.map(
      ({ name, passes }, i) => `  ${letter(i)}  ${name}${passes ? "" : "  NOT SAFE: don't build this"}`,
    ),
    "",
    line(
      "",
      columns.map((_, i) => letter(i)),
    ),
    ...rows.map(({ what, values, differences }) => {
      const { title, text } = figures[what];
      return line(
        title,
        values.map((value, i) => (value === null ? "-" : `${text(value)}${signed(text, differences[i])}`)),
      );
    }),
    ...governs.map((check, i) => `  ${letter(i)}: ${governsText(check)}`),
    "",
    ...picks.flatMap(({ what, designs, differs }) =>
      designs.flatMap((design, i) =>
        i === 0 || differs[i]
          ? [
              `  ${i === 0 ? choices[what].padEnd(10) : "".padEnd(10)}${letter(i)}  ${choiceText(what, design, books[i])}`,
            ]
          : [],
      ),
    ),
    "",
    line(
      "used",
      columns.map((_, i) => letter(i)),
    ),
    ...uses.map(({ title, where, values }) =>
      line(
        `${title}, ${where}`.slice(0, 41),
        values.map((value) => (value === null ? "-" : Number.isFinite(value) ? value.toFixed(2) : NO_HOLD)),
      ),
    ),
    "Work and hardening are the price book's hours, invented and yours to better; no part of any price or check.",
  ].join("\n");
}

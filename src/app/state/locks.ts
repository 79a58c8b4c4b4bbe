import { type Axis, axisValues } from "../../model/axis.ts";
import { book, type Paper, readPaper } from "./book.ts";
import { valueAt } from "./path.ts";

type Path = readonly (string | number)[];

/** May the search choose, as the file has it? What is left out has a default of several values. */
const isOpen = (raw: unknown): boolean =>
  raw === undefined ||
  (Array.isArray(raw) ? raw.length > 1 : typeof raw === "object" && raw !== null) ||
  raw === "all";

/** The last paper of this study on which the search could still choose here; else the one on the desk. */
const openPaper = (path: Path): Paper => {
  const { past, present } = book.get().history;
  const papers = [present, ...past.map((step) => step.was).reverse()];
  const same = papers.filter((paper) => paper.study.name === present.study.name);
  return same.find((paper) => isOpen(valueAt(paper.study, path))) ?? present;
};

/** As the file had it before it was held to one value; undefined where the program's own list is meant. */
export const rawBeforeLock = (path: Path): unknown => {
  const raw = valueAt(openPaper(path).study, path);
  return isOpen(raw) ? raw : undefined;
};

/** The values that a variable had before it was held to one: where a dragged anchor may come to stand. */
export const gridOf = (path: Path): readonly number[] => {
  const read = readPaper(openPaper(path));
  return "study" in read ? axisValues(valueAt(read.study, path) as Axis) : [];
};

/** The nearest; of none, the value itself. */
export const nearestOf = (values: readonly number[], wanted: number): number =>
  values.reduce(
    (best, value) => (Math.abs(value - wanted) < Math.abs(best - wanted) ? value : best),
    values[0] ?? wanted,
  );

/** The next of a list in a direction, or the value itself at its end. */
export const nextOf = (values: readonly number[], now: number, direction: 1 | -1): number => {
  const beyond = values.filter((value) => (value - now) * direction > 1e-6);
  return beyond.length ? nearestOf(beyond, now) : now;
};

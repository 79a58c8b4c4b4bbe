import type { BillItem, Check } from "../model/verdict.ts";

// what page, sheets and command line call things by

/** The least whole percent: a margin is never rounded up to what it is not. */
export const percent = (ratio: number): string =>
  Number.isFinite(ratio) ? `${Math.floor(ratio * 100 + 1e-9)}`.replace("-", "−") : "no end";

/** Levels of guys, bottom up. */
export const levelNames = (count: number): readonly string[] => {
  if (count === 1) return ["guys"];
  if (count === 2) return ["lower guys", "upper guys"];
  if (count === 3) return ["lower guys", "middle guys", "upper guys"];
  return Array.from({ length: count }, (_, i) => (i === count - 1 ? "upper guys" : `guys of level ${i + 1}`));
};

/** A line of the bill: "lower guys, anchor 1: strand 3/16 in EHS", "section 9 in three-leg, 10 ft". */
export const billWords = (
  { item, level, anchor, row, length }: BillItem,
  levelCount: number,
  say: { readonly row: (id: string) => string; readonly length: (si: number) => string },
): string => {
  const at = anchor === undefined ? "" : `, anchor ${anchor}`;
  const guys = level === undefined ? "" : `${levelNames(levelCount)[level - 1]}${at}: `;
  const named = row === undefined ? "" : ` ${say.row(row)}`;
  return `${guys}${item}${named}${length === undefined ? "" : `, ${say.length(length)}`}`;
};

/** "Extra-High-Strength" is EHS to everybody who buys it; one word stays a word. */
export const shortGrade = (grade: string): string => {
  const words = grade.split(/[-\s]+/);
  return words.length > 1 ? words.map((word) => word.charAt(0).toUpperCase()).join("") : grade;
};

export const lowerFirst = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);
export const upperFirst = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/**
 * In place of a figure where no load at all would be held: a mast that no equilibrium keeps up, an anchor out of its
 * method's range.
 */
export const NO_HOLD = "no hold";

/** How a check stands that is no strength check: its figure says nothing of a margin. */
export const limitWord = (check: Check): string => {
  if (check.kind === "warning") return check.demand <= check.capacity ? "clear" : "▲ reached";
  return check.passes ? "inside" : "outside";
};

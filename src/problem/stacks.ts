import type { BillLine } from "../model/verdict.ts";
import { line } from "../parts/price.ts";
import { buyLength, type Purchase } from "../purchase/stack.ts";
import type { SectionModel, StackModel } from "./types.ts";

/** Purchases of each section by length, 0.1 mm: an integer program each, and stacks share them. */
const kept = new WeakMap<SectionModel, Map<number, Purchase | null>>();

function buy(section: SectionModel, length: number): Purchase | null {
  let ofSection = kept.get(section);
  if (!ofSection) kept.set(section, (ofSection = new Map()));
  const key = Math.round(length * 1e4);
  let purchase = ofSection.get(key);
  if (purchase === undefined) ofSection.set(key, (purchase = buyLength(section.row, length)));
  return purchase;
}

/** Parts with what they cost; null where the stock, counted over all parts together, does not make them up. */
function bought(parts: StackModel["parts"], height: number): StackModel | null {
  const lines: BillLine[] = [];
  const taken = new Map<string, number>();
  for (const { section, length } of parts) {
    const purchase = buy(section, length);
    if (!purchase) return null;
    for (const { length: piece, count, price } of purchase.pieces) {
      const key = `${section.row.id} ${piece}`;
      const all = (taken.get(key) ?? 0) + count;
      taken.set(key, all);
      const have = section.row.pieces.find((on) => on.length === piece)?.have;
      if (have !== undefined && all > have) return null;
      const item = { item: "section", row: section.row.id, length: piece };
      lines.push(line("sections", item, 1, "each", price, count));
    }
  }
  return { parts, height, lines, cents: lines.reduce((sum, { amount }) => sum + amount, 0) };
}

/**
 * Every way to build a height from sections that fit together: one section throughout, or, where mixing is
 * allowed, one below another of its family with the joint at a whole number of the lower one's longest pieces.
 */
export function stacksOf(height: number, sections: readonly SectionModel[], mixed: boolean): StackModel[] {
  const stacks: StackModel[] = [];
  const add = (parts: StackModel["parts"]) => {
    const stack = bought(parts, height);
    if (stack) stacks.push(stack);
  };
  for (const section of sections) add([{ section, length: height }]);
  if (mixed)
    for (const lower of sections)
      for (const upper of sections) {
        if (lower === upper || lower.row.family !== upper.row.family) continue;
        const step = Math.max(...lower.row.pieces.map((piece) => piece.length));
        for (let k = 1; k * step < height - 1e-6; k++)
          add([
            { section: lower, length: k * step },
            { section: upper, length: height - k * step },
          ]);
      }
  return stacks;
}

/** The stack of a design; null where the stock does not make it up. */
export const stackOf = (parts: StackModel["parts"]): StackModel | null =>
  bought(
    parts,
    parts.reduce((sum, part) => sum + part.length, 0),
  );

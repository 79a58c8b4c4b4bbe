import type { BillLine } from "../model/verdict.ts";
import { line } from "../parts/price.ts";
import { buyLength, type Purchase } from "../purchase/stack.ts";
import type { SectionModel, StackModel } from "./types.ts";

/**
 * Every way to build a height from sections that fit together: one section throughout, or, where mixing is
 * allowed, one below another of its family with the joint at a whole number of the lower one's longest pieces.
 * Limited stock is respected by the purchase of each part.
 */
export function stacksOf(height: number, sections: readonly SectionModel[], mixed: boolean): StackModel[] {
  const bought = new Map<string, Purchase | null>();
  const buy = (section: SectionModel, length: number) => {
    const key = `${section.row.id} ${Math.round(length * 1e4)}`;
    if (!bought.has(key)) bought.set(key, buyLength(section.row, length));
    return bought.get(key) ?? null;
  };
  const stacks: StackModel[] = [];
  const add = (parts: StackModel["parts"]) => {
    const lines: BillLine[] = [];
    for (const part of parts) {
      const purchase = buy(part.section, part.length);
      if (!purchase) return;
      for (const piece of purchase.pieces)
        lines.push(
          line(
            "sections",
            `section ${part.section.row.id}, ${piece.length.toFixed(2)} m`,
            1,
            "each",
            piece.price,
            piece.count,
          ),
        );
    }
    stacks.push({ parts, height, lines, cents: lines.reduce((sum, { amount }) => sum + amount, 0) });
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
export function stackOf(parts: StackModel["parts"]): StackModel | null {
  const height = parts.reduce((sum, part) => sum + part.length, 0);
  const lines: BillLine[] = [];
  for (const part of parts) {
    const purchase = buyLength(part.section.row, part.length);
    if (!purchase) return null;
    for (const piece of purchase.pieces)
      lines.push(
        line(
          "sections",
          `section ${part.section.row.id}, ${piece.length.toFixed(2)} m`,
          1,
          "each",
          piece.price,
          piece.count,
        ),
      );
  }
  return { parts, height, lines, cents: lines.reduce((sum, { amount }) => sum + amount, 0) };
}

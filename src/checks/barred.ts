import type { Design } from "../model/design.ts";
import type { Check } from "../model/verdict.ts";
import {
  asksAnchor,
  asksFooting,
  type Barred,
  onSide,
  speaksOfAnchor,
  speaksOfFooting,
  speaksOfMast,
} from "../problem/barred.ts";
import { bearingsOf } from "../problem/star.ts";
import type { Problem } from "../problem/types.ts";

/** What a study bars, a check an entry: fails where a design has all that the entry names. */
export const barredChecks = ({ study }: Problem, design: Design): Check[] =>
  (study.parts.barred ?? []).map((entry, index) => {
    const found = broken(entry, design);
    return {
      id: `barred/${index + 1}`,
      limitState: "barred",
      title: "Barred by the study",
      kind: "limit",
      where: entry.name,
      loadCase: "",
      unit: "ratio",
      demand: found === null ? 0 : 1,
      capacity: 0,
      required: 1,
      utilisation: found === null ? 0 : Number.POSITIVE_INFINITY,
      passes: found === null,
      source: "barred by the study",
      note: found ?? undefined,
    };
  });

/** What of a design an entry bars, in words; null where it does not. */
function broken(entry: Barred, { stack, guys, footing }: Design): string | null {
  const sections = stack.map(({ section }) => section);
  const strands = guys?.levels.map(({ strand }) => strand) ?? [];
  if (!speaksOfMast(entry, { sections, strands }) || !speaksOfFooting(entry, footing)) return null;
  const named = (has: readonly string[], barred: readonly string[] | undefined) =>
    has.filter((id) => barred?.includes(id));
  const words = [...new Set([...named(sections, entry.sections), ...named(strands, entry.strands)])];
  if (asksAnchor(entry)) {
    if (!guys || !speaksOfAnchor(entry, guys.anchor)) return null;
    const { side } = entry;
    if (side) {
      const there = bearingsOf(guys).flatMap((bearing, i) => (onSide(side, bearing) ? [i + 1] : []));
      if (there.length === 0) return null;
      const which = there.length === 1 ? `anchor ${there[0]} is` : `anchors ${there.join(" and ")} are`;
      return `${guys.anchor.row}: ${which} between ${side.from} and ${side.to} degrees`;
    }
    words.push(guys.anchor.row);
  }
  if (asksFooting(entry)) words.push(footing.row);
  return words.join(" with ");
}

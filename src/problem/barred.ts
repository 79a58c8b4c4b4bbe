import type { AnchorChoice, FootingChoice } from "../model/design.ts";
import type { Study } from "../model/study.ts";

/** One entry of what a study bars. */
export type Barred = NonNullable<Study["parts"]["barred"]>[number];
export type Side = NonNullable<Barred["side"]>;

/** A millionth of a degree: an anchor at the end of a side is on it. */
const SAME = 1e-6;
const turned = (degrees: number): number => ((degrees % 360) + 360) % 360;

/** Is a bearing on a side? Degrees clockwise from north. */
export function onSide({ from, to }: Side, bearing: number): boolean {
  const width = to - from === 360 ? 360 : turned(to - from);
  const past = turned(bearing - from);
  return past <= width + SAME || past >= 360 - SAME;
}

const speaksOf = (
  rows: readonly string[] | undefined,
  kinds: readonly string[] | undefined,
  { row, kind }: { readonly row: string; readonly kind: string },
): boolean =>
  (rows === undefined && kinds === undefined) ||
  rows?.includes(row) === true ||
  kinds?.includes(kind) === true;

/** Does an entry need an anchor, or a footing, to be broken? */
export const asksAnchor = ({ anchors, anchorKinds, side }: Barred): boolean =>
  (anchors ?? anchorKinds ?? side) !== undefined;
export const asksFooting = ({ footings, footingKinds }: Barred): boolean =>
  (footings ?? footingKinds) !== undefined;

/** Is an anchor, or a footing, one of those that an entry lists? Also where it lists none. */
export const speaksOfAnchor = ({ anchors, anchorKinds }: Barred, choice: AnchorChoice): boolean =>
  speaksOf(anchors, anchorKinds, choice);
export const speaksOfFooting = ({ footings, footingKinds }: Barred, choice: FootingChoice): boolean =>
  speaksOf(footings, footingKinds, choice);

/** Has a mast one of the sections and one of the strands that an entry lists? By row ids. */
export const speaksOfMast = (
  { sections, strands }: Barred,
  has: { readonly sections: readonly string[]; readonly strands: readonly string[] },
): boolean =>
  (sections === undefined || has.sections.some((id) => sections.includes(id))) &&
  (strands === undefined || has.strands.some((id) => strands.includes(id)));

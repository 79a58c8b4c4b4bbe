import type { AnchorRow } from "../model/catalog.ts";
import type { AnchorChoice, FootingChoice } from "../model/design.ts";

// what anchors and footings are called on page, sheets and terminal, a line a kind

/** How lengths are said: each place has its units and roundings. */
export interface Lengths {
  /** "2.5 ft". */
  readonly length: (si: number) => string;
  /** "2.5 × 2.5 × 4 ft". */
  readonly sizes: (si: readonly number[]) => string;
}

const anchorKinds: Readonly<Record<AnchorRow["kind"], readonly [one: string, more: string]>> = {
  deadman: ["buried concrete anchor", "buried concrete anchors"],
  screw: ["earth screw", "earth screws"],
  "rock-rod": ["rock rod", "rock rods"],
  post: ["anchor post in concrete", "anchor posts in concrete"],
};
export const anchorKind = (kind: AnchorRow["kind"], count = 1): string =>
  anchorKinds[kind][count === 1 ? 0 : 1];

/** Nothing of one that has no sides of its own: its row says which it is. */
export const anchorSize = (anchor: AnchorChoice, { length, sizes }: Lengths): string => {
  if (anchor.kind === "deadman") return sizes([anchor.length, anchor.width, anchor.height]);
  if (anchor.kind === "post") return sizes([anchor.width, anchor.width, anchor.depth]);
  if (anchor.kind === "rock-rod") return `socket ${length(anchor.socket)}`;
  return "";
};

/** "buried concrete anchors 2.5 × 1 × 1.5 ft, underside 3.5 ft down". */
export const anchorName = (
  anchor: AnchorChoice,
  count: number,
  rows: readonly AnchorRow[],
  lengths: Lengths,
): string => {
  const size = anchorSize(anchor, lengths);
  if (size === "") return rows.find(({ id }) => id === anchor.row)?.name ?? anchor.row;
  const underside = anchor.kind === "deadman" ? `, underside ${lengths.length(anchor.depth)} down` : "";
  return `${anchorKind(anchor.kind, count)} ${size}${underside}`;
};

type FootingOf<Kind extends FootingChoice["kind"]> = Extract<FootingChoice, { kind: Kind }>;
interface FootingNames<Footing> {
  readonly kind: string;
  /** Beside a drawing. */
  readonly size: (footing: Footing, lengths: Lengths) => string;
  /** After its kind, in a sentence. */
  readonly sides: (footing: Footing, length: Lengths["length"]) => string;
}

const footings: { readonly [Kind in FootingChoice["kind"]]: FootingNames<FootingOf<Kind>> } = {
  block: {
    kind: "block",
    size: ({ width, depth }, { sizes }) => sizes([width, width, depth]),
    sides: ({ width, depth }, length) => `${length(width)} square, ${length(depth)} deep`,
  },
  pad: {
    kind: "reinforced pad",
    size: ({ width, thickness }, { sizes }) => sizes([width, width, thickness]),
    sides: ({ width, thickness, depth }, length) =>
      `${length(width)} square, ${length(thickness)} thick, ${length(depth)} deep`,
  },
  "rock-pad": {
    kind: "pad on rock",
    size: ({ width, depth }, { sizes }) => sizes([width, width, depth]),
    sides: ({ width, depth, dowels, socket }, length) =>
      `${length(width)} square, ${length(depth)} thick, ${dowels} dowels socketed ${length(socket)}`,
  },
  pier: {
    kind: "drilled pier",
    size: ({ diameter, depth }, { length }) => `${length(diameter)} round × ${length(depth)}`,
    sides: ({ diameter, depth }, length) => `${length(diameter)} across, ${length(depth)} deep`,
  },
};
const namesOf = (footing: FootingChoice) => footings[footing.kind] as unknown as FootingNames<FootingChoice>;

export const footingKind = (kind: FootingChoice["kind"]): string => footings[kind].kind;

export const footingSize = (footing: FootingChoice, lengths: Lengths): string =>
  namesOf(footing).size(footing, lengths);

/** "block 2 ft square, 2.5 ft deep". */
export const footingName = (footing: FootingChoice, length: Lengths["length"]): string =>
  `${footingKind(footing.kind)} ${namesOf(footing).sides(footing, length)}${footing.insulator === undefined ? "" : ", a base insulator on it"}`;

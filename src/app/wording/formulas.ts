import type { LimitStateId } from "../../checks/titles.ts";

/** What is drawn beside a formula; one sketch serves all checks of a kind. */
export type SketchKind =
  | "leg"
  | "bracing"
  | "buckling"
  | "guy"
  | "lean"
  | "turn"
  | "pipe"
  | "deadman"
  | "post"
  | "screw"
  | "rod"
  | "bearing"
  | "overturning"
  | "sliding"
  | "slab"
  | "pier"
  | "plate"
  | "depth"
  | "lot"
  | "fall";

/** What the load case found at this place, so that a formula's letters can be given their numbers. */
type Found = "mast" | "anchor" | "base";

export interface Formula {
  /** How the load comes about. */
  readonly asks: string;
  /** How the strength, or the limit, comes about. */
  readonly holds: string;
  /** Each letter and what it stands for. */
  readonly letters: readonly (readonly [string, string])[];
  readonly sketch: SketchKind;
  readonly found?: Found;
}

/** Limits of the site and of what may be spent; they are no limit states of a part. */
type SiteLimit =
  | "rigging"
  | "frost"
  | "dig"
  | "water"
  | "lot"
  | "line-clearance"
  | "anchor-spacing"
  | "height-limit"
  | "concrete-cap"
  | "dig-cap"
  | "budget"
  | "fall-zone";

const stated = (asks: string, sketch: SketchKind = "depth"): Formula => ({
  asks,
  holds: "what the study allows",
  letters: [],
  sketch,
});
const leg: Pick<Formula, "letters" | "sketch" | "found"> = {
  letters: [
    ["P", "thrust in the mast here"],
    ["M", "moment in the mast here"],
    ["n", "number of legs"],
    ["arm", "0.866 of the face for three legs, 1.414 for four"],
  ],
  sketch: "leg",
  found: "mast",
};
const cage: readonly (readonly [string, string])[] = [
  ["φ", "resistance factor of the code, inside the strength"],
  ["As fy", "bars times their yield"],
  ["d", "depth from the pressed face to the bars"],
];
const dowel = { asks: "T, the dowel that is pulled most", sketch: "slab", found: "base" } as const;
const reaction: readonly (readonly [string, string])[] = [
  ["U", "lift of all guys on this anchor"],
  ["H", "their pull sideways"],
];
const base: readonly (readonly [string, string])[] = [
  ["N", "all weight on the ground"],
  ["M", "moment at the mast’s foot"],
  ["V", "push at the mast’s foot"],
  ["D", "height of the footing"],
  ["B", "its width"],
];

/** Every check that a verdict can hold, as the theory pages have it; a missing one is an error of types. */
export const formulas: Readonly<Record<LimitStateId | SiteLimit, Formula>> = {
  "leg-compression": {
    ...leg,
    asks: "P/n + M/arm + w",
    holds: "Fcr A, one panel as a column, or the rating",
    letters: [
      ...leg.letters,
      ["w", "stands for the wind on the leg itself between panel points"],
      ["Fcr A", "buckling stress of the leg between panel points, times its steel"],
    ],
  },
  "leg-tension": {
    ...leg,
    asks: "M/arm − P/n",
    holds: "Fy A, or the rating of the splice",
    letters: [...leg.letters, ["Fy A", "yield of the leg times its steel"]],
  },
  "bracing-shear": {
    asks: "V, shear square to the bent mast, with torque as shear",
    holds: "what the diagonals of all faces hold",
    letters: [["V", "shear between two panel points, worst wind"]],
    sketch: "bracing",
  },
  stability: {
    asks: "1, the thrust as it is",
    holds: "λ, times the thrust at which the bent mast gives way",
    letters: [["λ", "found on the deformed mast, guys in play"]],
    sketch: "buckling",
  },
  "guy-strength": {
    asks: "T, at the tighter end of the tightest guy",
    holds: "breaking strength × efficiency of the end fitting",
    letters: [["T", "tension with wind, weight and temperature in it"]],
    sketch: "guy",
  },
  tilt: {
    asks: "θ, the steepest slope of the mast from plumb",
    holds: "the most that the rules allow",
    letters: [["θ", "slope of a chord, or turn at a node"]],
    sketch: "lean",
  },
  "twist-range": {
    asks: "φ, the greatest turn about the axis",
    holds: "5°, where the method ends",
    letters: [["φ", "turn from antennas that hang beside the axis"]],
    sketch: "turn",
  },
  sway: {
    asks: "θ of the antenna: turn of the mast there, and of its pipe",
    holds: "what the study allows",
    letters: [["θ", "from plumb, in the service wind"]],
    sketch: "lean",
  },
  twist: {
    asks: "φ of the antenna about the axis",
    holds: "what the study allows",
    letters: [["φ", "in the service wind"]],
    sketch: "turn",
  },
  "pair-range": {
    asks: "share of its pull that twist gives or takes a guy of a pair",
    holds: "the most share that the method can follow",
    letters: [],
    sketch: "turn",
  },
  "arm-pull": {
    asks: "T, the tightest guy on an arm, twist counted",
    holds: "rating of the arm",
    letters: [["T", "pull at the mast’s end"]],
    sketch: "guy",
  },
  "gust-factor": {
    asks: "gust factor that this mast’s own sway calls for",
    holds: "gust factor that is in the wind",
    letters: [],
    sketch: "lean",
  },
  "pipe-bending": {
    asks: "M = Σ q A z + q w h²/2",
    holds: "Fy Z",
    letters: [
      ["q A", "wind on each antenna"],
      ["z", "its height over the mast top"],
      ["w, h", "width and height of the bare pipe"],
      ["Z", "plastic modulus of the pipe"],
    ],
    sketch: "pipe",
  },
  "initial-tension": {
    asks: "initial tension over breaking strength",
    holds: "upper end of the window",
    letters: [],
    sketch: "guy",
  },
  rigging: {
    asks: "the tension wished for, in still air",
    holds: "a guy whose own weight lets it be drawn so tight",
    letters: [],
    sketch: "guy",
  },
  "anchor-uplift": {
    asks: "U, upright part of all guys here",
    holds: "weight of the concrete + weight of the soil that it lifts",
    letters: reaction,
    sketch: "deadman",
    found: "anchor",
  },
  "anchor-lateral": {
    asks: "H, level part of all guys here",
    holds: "passive pressure on the face × its area",
    letters: reaction,
    sketch: "deadman",
    found: "anchor",
  },
  "anchor-bending": {
    asks: "H L/8 sideways and U (1 + e) L/8 upward, × load factor, each of what the block bears",
    holds: "1, both shares added",
    letters: [...reaction, ["L, e", "length of the block; share of U that the soil beyond its ends holds"]],
    sketch: "deadman",
    found: "anchor",
  },
  "anchor-shear": {
    asks: "H/2 and U/2 × load factor, each of what the block bears, as the sides of a right angle",
    holds: "1, all of its concrete and ties",
    letters: reaction,
    sketch: "deadman",
    found: "anchor",
  },
  "anchor-rod": {
    asks: "√(U² + H²), the pull of all guys here",
    holds: "what breaks the rod or its plate",
    letters: reaction,
    sketch: "deadman",
    found: "anchor",
  },
  "anchor-post": {
    asks: "pull and bending of the post together",
    holds: "1, all of its steel",
    letters: reaction,
    sketch: "post",
    found: "anchor",
  },
  "anchor-post-shear": {
    asks: "H on the post",
    holds: "0.6 Fy on its web",
    letters: reaction,
    sketch: "post",
    found: "anchor",
  },
  "anchor-overturning": {
    asks: "H (h + d) + U B/2 about the toe",
    holds: "W B/2 + moment of the soil",
    letters: [
      ...reaction,
      ["h, d", "height of the guys, depth of the block"],
      ["W, B", "weight and width of the block"],
    ],
    sketch: "post",
    found: "anchor",
  },
  "screw-pull-out": {
    asks: "√(U² + H²), the greatest pull along the shaft",
    holds: "its rating in this ground",
    letters: reaction,
    sketch: "screw",
    found: "anchor",
  },
  "screw-sideways": {
    asks: "pull across the shaft",
    holds: "its rating across",
    letters: [["shaft", "lies along the greatest pull"]],
    sketch: "screw",
    found: "anchor",
  },
  "rod-pull-out": {
    asks: "√(U² + H²)",
    holds: "least of steel, grout bond and cone of rock, all rods of the anchor together",
    letters: reaction,
    sketch: "rod",
    found: "anchor",
  },
  "base-bearing": {
    asks: "greatest pressure under the footing, N over what bears",
    holds: "bearing value of the soil",
    letters: base,
    sketch: "bearing",
    found: "base",
  },
  overturning: {
    asks: "M + V D about the toe",
    holds: "N B/2 + moment of the soil beside it",
    letters: base,
    sketch: "overturning",
    found: "base",
  },
  sliding: {
    asks: "V",
    holds: "friction or cohesion below + soil in front",
    letters: base,
    sketch: "sliding",
    found: "base",
  },
  "pad-flexure": {
    asks: "moment of the soil pressure about the pedestal’s face: all of it × load factor, or the wind alone × that on 0.9 and 1.2 of the weight",
    holds: "φ As fy (d − a/2)",
    letters: [...cage, ["a", "depth of the pressed concrete"]],
    sketch: "slab",
    found: "base",
  },
  "pad-lift-flexure": {
    asks: "moment of the pad’s weight where it lifts: all of it × load factor, or the wind alone × that on 0.9 and 1.2 of the weight",
    holds: "φ As fy (d − a/2) of the upper bars",
    letters: [...cage, ["a", "depth of the pressed concrete"]],
    sketch: "slab",
    found: "base",
  },
  "pad-shear": {
    asks: "shear at d from the pedestal: all of it × load factor, or the wind alone × that on 0.9 and 1.2 of the weight",
    holds: "φ vc B d, without ties",
    letters: [
      ["vc", "shear stress that plain concrete bears"],
      ["B, d", "width of the pad, depth to its bars"],
    ],
    sketch: "slab",
    found: "base",
  },
  "pad-punching": {
    asks: "load factor × (N/(b0 d) + 0.4 M (c + d)/(√2 J))",
    holds: "φ vc round the pedestal",
    letters: [
      ["b0", "way round, at half of d from the pedestal"],
      ["c", "width of the pedestal"],
      ["J", "turning stiffness of that way round"],
    ],
    sketch: "slab",
    found: "base",
  },
  "pedestal-bending": {
    asks: "load factor × (M + V (D − t))",
    holds: "φ Mn of its cage",
    letters: [...base.slice(1, 4), ["t", "thickness of the pad"]],
    sketch: "slab",
    found: "base",
  },
  "dowel-steel": { ...dowel, holds: "yield of the bar", letters: [["T", "pull, with shear across it"]] },
  "dowel-bond": { ...dowel, holds: "grout bond round the socket", letters: [["T", "pull"]] },
  "dowel-cone": { ...dowel, holds: "weight of the rock that would lift", letters: [["T", "pull"]] },
  "pier-as-post": {
    asks: "V d + 1.09 M",
    holds: "S1 b d²/2.34",
    letters: [
      ...base.slice(1, 3),
      ["d, b", "depth and diameter of the pier"],
      ["S1", "allowable side pressure at a third of the depth"],
    ],
    sketch: "pier",
    found: "base",
  },
  "pier-in-sand": {
    asks: "M + V d about the tip",
    holds: "0.5 γ b d³ Kp",
    letters: [...base.slice(1, 3), ["γ", "weight of the soil"], ["Kp", "passive pressure share of sand"]],
    sketch: "pier",
    found: "base",
  },
  "pier-in-clay": {
    asks: "M + 1.5 b V, at 1.5 diameters down",
    holds: "9 c b on the clay below that, both ways",
    letters: [...base.slice(1, 3), ["b", "diameter of the pier"], ["c", "undrained strength of the clay"]],
    sketch: "pier",
    found: "base",
  },
  "pier-bending": {
    asks: "load factor × greatest moment in the pier, or the moment that would use its cage as its shear does",
    holds: "φ Mn of its cage",
    letters: cage.slice(0, 1),
    sketch: "pier",
    found: "base",
  },
  "base-compression": {
    asks: "thrust of the mast on its plate",
    holds: "0.85 f′c A1 √(A2/A1), at most 1.7 f′c A1",
    letters: [
      ["A1, A2", "area of the plate, and of the concrete round it"],
      ["f′c", "strength of the concrete"],
    ],
    sketch: "plate",
    found: "base",
  },
  "base-stiffness": {
    asks: "spring that the mast was worked out on",
    holds: "moment over turn of this footing",
    letters: [],
    sketch: "overturning",
  },
  "insulator-compression": {
    asks: "thrust of the mast",
    holds: "what breaks the insulator",
    letters: [],
    sketch: "plate",
    found: "base",
  },
  "insulator-shear": {
    asks: "push at the mast’s foot",
    holds: "what breaks the insulator sideways",
    letters: [],
    sketch: "plate",
    found: "base",
  },
  "insulator-turn": {
    asks: "turn of the mast’s foot",
    holds: "what its hinge follows",
    letters: [],
    sketch: "lean",
  },
  frost: { ...stated("depth that the frost goes to"), holds: "depth of the underside" },
  dig: stated("depth of the underside"),
  water: { ...stated("depth of the underside"), holds: "depth of the water table" },
  lot: { ...stated("setback", "lot"), holds: "distance of the nearest anchor from the lot line" },
  "line-clearance": {
    ...stated("clearance that is kept from power lines, seen from above", "lot"),
    holds: "distance of the nearest guy or anchor from a power line",
  },
  "anchor-spacing": {
    ...stated("twice the ground that one anchor lifts", "lot"),
    holds: "distance of the nearest two anchors",
  },
  "height-limit": stated("height of the mast", "fall"),
  "concrete-cap": stated("concrete of all footings"),
  "dig-cap": stated("ground dug in all"),
  budget: stated("cost all in"),
  "fall-zone": {
    ...stated("reach of a mast that falls, antennas with it + clearance from power lines", "fall"),
    holds: "distance of the power line from the mast",
  },
};

export const formulaOf = (limitState: string): Formula | undefined =>
  (formulas as Readonly<Record<string, Formula>>)[limitState];

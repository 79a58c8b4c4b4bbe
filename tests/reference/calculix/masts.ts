import type { GuyLevel, LoadCase, MastInput, Segment } from "../../../src/physics/mast/types.ts";
import { squareShear } from "../../../src/report/reference/calculix-deck.ts";

/** A mast that CalculiX and our own solver both answer. Every number is invented, of the size of the trade. */
export interface ComparedMast {
  readonly name: string;
  readonly input: MastInput;
  readonly load: LoadCase;
}

const ELEMENTS = 12;

const bar = (from: number, to: number, ei: number, ea: number, weight: number): Segment => ({
  from,
  to,
  ei,
  ea,
  ga: squareShear(ea),
  weight,
});

interface Strand {
  readonly ea: number;
  readonly weight: number;
  readonly breaking: number;
  /** Wind on a guy square to it, N/m. */
  readonly wind: number;
}
const thin: Strand = { ea: 2.244e6, weight: 1.07, breaking: 17_700, wind: 4.5 };
const middle: Strand = { ea: 3.7455e6, weight: 1.77, breaking: 29_600, wind: 6 };
const thick: Strand = { ea: 6.22e6, weight: 2.99, breaking: 49_800, wind: 7.5 };

const radians = (degrees: number) => (degrees * Math.PI) / 180;

const level = (
  z: number,
  strand: Strand,
  count: number,
  radius: number,
  share = 0.1,
  elevations: readonly number[] = [],
): GuyLevel => ({
  z,
  anchors: Array.from({ length: count }, (_, i) => {
    const azimuth = radians((360 * i) / count);
    return { x: radius * Math.cos(azimuth), y: radius * Math.sin(azimuth), z: elevations[i] ?? 0 };
  }),
  ea: strand.ea,
  weight: strand.weight,
  tension: share * strand.breaking,
});

const mast = (
  base: MastInput["base"],
  segments: readonly Segment[],
  levels: readonly GuyLevel[],
  topWeight: number,
): MastInput => ({
  base,
  segments,
  levels,
  pointWeights: [{ z: segments[segments.length - 1].to, weight: topWeight, arm: 0 }],
  elementsPerSpan: ELEMENTS,
});

/** Wind that grows from `low` at the ground by `more` at the top. */
const wind = (
  input: MastInput,
  azimuth: number,
  low: number,
  more: number,
  top: number,
  strands: readonly Strand[] = [],
  guyStretch = 1,
): LoadCase => {
  const height = input.segments[input.segments.length - 1].to;
  return {
    toward: [Math.cos(radians(azimuth)), Math.sin(radians(azimuth))],
    line: (z) => low + (more * z) / height,
    points: [{ z: height, force: top, moment: 0 }],
    guyWind: strands.map((strand) => strand.wind),
    planar: false,
    guyStretch: strands.map(() => guyStretch),
  };
};

const post = mast("fixed", [bar(0, 12, 9e5, 2.4e7, 60)], [], 900);
const steppedPost = mast("fixed", [bar(0, 9, 2.4e6, 4e7, 140), bar(9, 15, 9e5, 2.4e7, 70)], [], 600);
const one = mast("pinned", [bar(0, 12, 3e5, 2.3e7, 45)], [level(9.5, thin, 3, 7)], 120);
const oneOfFour = mast("pinned", [bar(0, 15, 5e5, 2e7, 60)], [level(13, middle, 4, 10)], 300);
const oneFixed = mast("fixed", [bar(0, 14, 6e5, 2e7, 70)], [level(12, thin, 3, 8, 0.08)], 200);
const two = mast(
  "pinned",
  [bar(0, 24, 6e5, 2.25e7, 75)],
  [level(11, thin, 3, 14), level(22, middle, 3, 14)],
  250,
);
const slope = mast(
  "pinned",
  [bar(0, 30, 9e5, 2.4e7, 90)],
  [level(14, middle, 4, 18, 0.1, [2.5, 0.5, -3, -0.5]), level(28, thick, 4, 24, 0.1, [3.3, 0.7, -4, -0.7])],
  200,
);
const three = mast(
  "fixed",
  [bar(0, 18, 1.4e6, 4.1e7, 110), bar(18, 36, 9e5, 2.7e7, 85)],
  [level(11, middle, 3, 22), level(22, middle, 3, 22), level(33, thick, 3, 22)],
  400,
);
const cold = mast(
  "pinned",
  [bar(0, 45, 1.8e6, 3.1e7, 120)],
  [level(14, middle, 3, 28), level(28, thick, 3, 28), level(42, thick, 3, 28, 0.12)],
  350,
);
const four = mast(
  "pinned",
  [bar(0, 40, 1.3e6, 3e7, 95)],
  [
    level(10, thin, 4, 16, 0.12),
    level(20, middle, 4, 16, 0.12),
    level(30, middle, 4, 28),
    level(40, thick, 4, 28),
  ],
  0,
);

const soft: MastInput = {
  ...mast(
    "fixed",
    [bar(0, 8, 3.2e6, 4.6e7, 160), bar(8, 14, 1.6e6, 3.1e7, 95), bar(14, 18, 8e5, 2.2e7, 60)],
    [],
    500,
  ),
  baseStiffness: 2.2e6,
};
const tapered = mast(
  "pinned",
  [bar(0, 15, 1.5e6, 3.6e7, 115), bar(15, 27, 1e6, 2.9e7, 90), bar(27, 33, 6e5, 2.2e7, 70)],
  [level(10, thin, 3, 20, 0.12), level(20, middle, 3, 20), level(30, thick, 3, 20, 0.08)],
  300,
);

/** Three anchors, two guys each to the tips of arms of this length, 60 degrees to either side. */
const armed = (of: GuyLevel, length: number): GuyLevel => ({
  ...of,
  anchors: of.anchors.flatMap((anchor, i) => {
    const out = Math.atan2(anchor.y, anchor.x);
    return [-1, 1].map((side) => {
      const to = out + (side * Math.PI) / 3;
      return { ...anchor, anchor: i, head: { x: length * Math.cos(to), y: length * Math.sin(to) } };
    });
  }),
});
const winged = mast(
  "pinned",
  [bar(0, 24, 6e5, 2.25e7, 75)],
  [level(11, thin, 3, 14), armed(level(22, thin, 3, 14), 0.7)],
  250,
);
const wingedOne = mast("fixed", [bar(0, 16, 6e5, 2.25e7, 75)], [armed(level(12, thin, 3, 9), 0.9)], 300);

/** The mast that the bench times: 24 m, two levels, wind that leaves one guy slack. */
export const benchMast: ComparedMast = {
  name: "24 m, two levels, wind toward a guy",
  input: two,
  load: wind(two, 0, 120, 45, 600, [thin, middle]),
};

export const comparedMasts: readonly ComparedMast[] = [
  { name: "12 m, free-standing", input: post, load: wind(post, 0, 30, 0, 100) },
  { name: "15 m, free-standing, stepped", input: steppedPost, load: wind(steppedPost, 35, 60, 40, 300) },
  { name: "12 m, one level, wind away from a guy", input: one, load: wind(one, 180, 95, 0, 350) },
  {
    name: "15 m, one level of four guys, wind between two",
    input: oneOfFour,
    load: wind(oneOfFour, 45, 110, 20, 500, [middle]),
  },
  {
    name: "14 m, one level, fixed base, slack guys, wind 20 degrees off a guy",
    input: oneFixed,
    load: wind(oneFixed, 200, 100, 30, 300, [thin]),
  },
  benchMast,
  {
    name: "24 m, two levels, wind across a guy",
    input: two,
    load: wind(two, 90, 120, 45, 600, [thin, middle]),
  },
  { name: "24 m, two levels, still air", input: two, load: wind(two, 0, 0, 0, 0) },
  { name: "30 m, two levels, sloping ground", input: slope, load: wind(slope, 45, 150, 40, 500) },
  {
    name: "36 m, three levels, fixed base, stepped",
    input: three,
    load: wind(three, 15, 130, 75, 900, [middle, middle, thick]),
  },
  {
    name: "45 m, three levels, guys colder by 35 K",
    input: cold,
    load: wind(cold, 60, 140, 80, 800, [middle, thick, thick], 1 - 35 * 1.2e-5),
  },
  {
    name: "40 m, four levels of four guys",
    input: four,
    load: wind(four, 0, 150, 80, 0, [thin, middle, middle, thick]),
  },
  {
    name: "18 m, free-standing, of three sections, on a base that turns",
    input: soft,
    load: wind(soft, 20, 35, 30, 180),
  },
  {
    name: "33 m, of three sections, mast and guys warmer by 20 K",
    input: tapered,
    load: {
      ...wind(tapered, 195, 70, 50, 300, [thin, middle, thick], 1 + 20 * 1.2e-5),
      mastStrain: 20 * 1.2e-5,
    },
  },
  {
    name: "24 m, torque arms at the upper of two levels, wind toward a guy",
    input: winged,
    load: wind(winged, 0, 120, 45, 600, [thin, thin]),
  },
  {
    name: "24 m, torque arms at the upper of two levels, wind 15 degrees off a guy",
    input: winged,
    load: wind(winged, 195, 120, 45, 600, [thin, thin]),
  },
  {
    name: "16 m, fixed base, one level on torque arms, wind away from a guy",
    input: wingedOne,
    load: wind(wingedOne, 180, 90, 30, 400, [thin]),
  },
];

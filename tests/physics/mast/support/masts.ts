import { Forces, recoverForces } from "../../../../src/physics/mast/recover.ts";
import { Mast } from "../../../../src/physics/mast/solver.ts";
import type {
  GuyLevel,
  LoadCase,
  MastInput,
  PointForce,
  Segment,
} from "../../../../src/physics/mast/types.ts";

export const segment = (from: number, to: number, more: Partial<Segment> = {}): Segment => ({
  from,
  to,
  ei: 4e5,
  ea: 1e10,
  ga: Number.POSITIVE_INFINITY,
  weight: 0,
  ...more,
});

/** Guys level with their anchors and all but rigid: a roller, free to go down. */
export const roller = (z: number): GuyLevel => ({
  z,
  anchors: [0, 90, 180, 270].map((azimuth) => {
    const angle = (azimuth * Math.PI) / 180;
    return { x: 10 * Math.cos(angle), y: 10 * Math.sin(angle), z };
  }),
  ea: 1e9,
  weight: 1e-3,
  tension: 1e4,
});

export const wind = (more: Partial<LoadCase> & { readonly at?: readonly PointForce[] } = {}): LoadCase => ({
  toward: [1, 0],
  line: () => 0,
  points: more.at ?? [],
  guyWind: [],
  planar: true,
  ...more,
});

export const star = (count: number, radius: number, turned = 0, elevations: readonly number[] = []) =>
  Array.from({ length: count }, (_, i) => {
    const angle = turned + (2 * Math.PI * i) / count;
    return { x: radius * Math.cos(angle), y: radius * Math.sin(angle), z: elevations[i] ?? 0 };
  });

export interface Solved {
  readonly mast: Mast;
  readonly forces: Forces;
}

/** Solves, and insists on a stable answer. */
export function solved(input: MastInput, load: LoadCase): Solved {
  const mast = new Mast(input);
  if (!mast.solve(load)) throw new Error("no equilibrium found");
  if (!mast.stable()) throw new Error("the equilibrium found is unstable");
  const forces = new Forces(mast.elements);
  recoverForces(mast, forces);
  return { mast, forces };
}

/** Displacement along the wind at a node, and turn of the section. */
export const along = ({ mast }: Solved, z: number): number => mast.d[mast.nodeAt(z) * mast.perNode + 1];
export const turn = ({ mast }: Solved, z: number): number => mast.d[mast.nodeAt(z) * mast.perNode + 2];

/** Moment along the wind just below a height. */
export function momentAt({ mast, forces }: Solved, z: number): number {
  const node = mast.nodeAt(z);
  return node === 0 ? forces.along[0] : forces.along[3 * (node - 1) + 2];
}

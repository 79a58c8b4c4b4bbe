import { factor, solveFactored } from "./blocks.ts";
import type { MastState } from "./state.ts";
import type { PointTorque } from "./types.ts";

/** Beyond this twist a guy's head has moved round a bow that the linear chain takes for its tangent, rad. */
export const GREATEST_TWIST = (5 * Math.PI) / 180;

/** What the lattice says of an element: torsional stiffness, N m2, and mean square distance of its legs from the axis, m2. */
export interface ShaftSection {
  readonly stiffness: number;
  readonly polar: number;
}

/**
 * Twist of a mast about its axis in a solved case: a shaft of one turn a node, held at the base, with the guys'
 * resistance at their levels. Twist leaves the solved sway as it is (docs/theory/mast.md says how nearly so).
 * Every result is the greatest for torques of either sense.
 */
export class Twist {
  /** Turn of each node, rad. */
  readonly turn: Float64Array;
  /** Torque in each element, N m. */
  readonly torque: Float64Array;
  /** Tension that the twist adds to each guy, N. */
  readonly guyTension: Float64Array;
  /** Torque on the base, N m. */
  baseTorque = 0;

  private readonly k: Float64Array;
  private readonly shaft: Float64Array;
  private readonly applied: Float64Array;
  private readonly resting: Float64Array;

  /**
   * @param sections one an element
   * @param heads where each guy meets its arm, from the axis, in the frame of the anchors: x, y a guy, m
   */
  constructor(
    private readonly mast: MastState,
    private readonly sections: readonly ShaftSection[],
    private readonly heads: Float64Array,
  ) {
    const { nodes, elements, guys } = mast;
    this.turn = new Float64Array(nodes);
    this.torque = new Float64Array(elements);
    this.guyTension = new Float64Array(guys.length);
    this.k = new Float64Array(nodes * 2);
    this.shaft = new Float64Array(elements);
    this.applied = new Float64Array(nodes);
    this.resting = new Float64Array(nodes);
  }

  /**
   * Twist of the case that the mast was just solved for.
   * @param toward of that case: unit vector of the wind
   * @returns false where compression twists the mast away: the shaft has no stiffness left
   */
  solve(toward: readonly [number, number], torques: readonly PointTorque[]): boolean {
    const { mast, k, shaft, applied, resting, heads } = this;
    const n = mast.nodes;
    const [cx, cy] = toward;
    k.fill(0);
    applied.fill(0);
    resting.fill(0);
    for (let e = 0; e < mast.elements; e++) {
      // legs that lean round the axis take the axial force along: Wagner
      const { stiffness, polar } = this.sections[e];
      shaft[e] = (stiffness + mast.tension[e] * polar) / mast.length[e];
      k[2 * e + 1] += shaft[e];
      k[2 * e + 3] += shaft[e];
      k[2 * e + 2] -= shaft[e];
    }
    for (let g = 0; g < mast.guys.length; g++) {
      const { node, state: s } = mast.guys[g];
      const x = cx * heads[2 * g] + cy * heads[2 * g + 1];
      const y = -cy * heads[2 * g] + cx * heads[2 * g + 1];
      const { up, down } = this.tilted(node, x, y);
      // a turn moves the head by (-y, x, up): what the guy resists that with, and its pull that the arm carries round
      k[2 * node + 1] +=
        y * y * s.k[0] -
        2 * x * y * s.k[1] +
        x * x * s.k[3] +
        up * (2 * (x * s.k[4] - y * s.k[2]) + up * s.k[5]) +
        (x * s.fx + y * s.fy - down * s.fz);
      resting[node] += x * s.fy - y * s.fx + up * s.fz;
    }
    // the base is held
    k[1] = 1;
    k[2] = 0;
    resting[0] = 0;
    if (factor(k, n, 1) > 0) return false;
    this.turn.fill(0);
    this.torque.fill(0);
    this.add(resting);
    // each may turn either way: one antenna hangs left of the mast, the next one right
    for (const { z, torque } of torques) {
      applied.fill(0);
      const node = mast.nodeAt(z);
      if (node === 0) continue;
      applied[node] = torque;
      this.add(applied);
    }
    this.baseTorque = this.torque[0];
    for (let g = 0; g < mast.guys.length; g++) {
      const { node, state: s } = mast.guys[g];
      const x = cx * heads[2 * g] + cy * heads[2 * g + 1];
      const y = -cy * heads[2 * g] + cx * heads[2 * g + 1];
      const pull = Math.hypot(s.fx, s.fy, s.fz);
      if (pull === 0) {
        this.guyTension[g] = 0;
        continue;
      }
      const { up } = this.tilted(node, x, y);
      const fx = s.k[0] * y - s.k[1] * x - s.k[2] * up;
      const fy = s.k[1] * y - s.k[3] * x - s.k[4] * up;
      const fz = s.k[2] * y - s.k[4] * x - s.k[5] * up;
      this.guyTension[g] = (Math.abs(fx * s.fx + fy * s.fy + fz * s.fz) / pull) * this.turn[node];
    }
    return true;
  }

  /** What these torques, a node each, turn and twist the mast by, added to what others do; they become turns. */
  private add(torques: Float64Array): void {
    const { mast, k, shaft } = this;
    solveFactored(k, mast.nodes, 1, torques);
    for (let i = 0; i < mast.nodes; i++) this.turn[i] += Math.abs(torques[i]);
    for (let e = 0; e < mast.elements; e++)
      this.torque[e] += shaft[e] * Math.abs(torques[e + 1] - torques[e]);
  }

  /** The mast turns about its own axis, which leans: how far a head goes up for a unit turn, and stands under the node. */
  private tilted(node: number, x: number, y: number): { readonly up: number; readonly down: number } {
    const { d, perNode: per } = this.mast;
    const theta = d[node * per + 2];
    const phi = per === 5 ? d[node * per + 4] : 0;
    return { up: theta * y - phi * x, down: theta * x + phi * y };
  }
}

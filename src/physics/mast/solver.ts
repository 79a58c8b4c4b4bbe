import { bucklingFactor, stable, standsAt } from "./buckling.ts";
import { shapeSlope } from "./element.ts";
import { swayFrequencies, swayFrequency, swaysFasterThan } from "./frequencies.ts";
import { LanczosRoom } from "./lanczos.ts";
import { rest, setLoads } from "./loads.ts";
import { newton } from "./newton.ts";
import { MastState } from "./state.ts";
import type { LoadCase } from "./types.ts";

const slopes = new Float64Array(4);

/**
 * A mast with its guys, in three dimensions or, where guys and wind share a mirror plane, in that plane: the same
 * code with fewer displacements per node. Build once a structure, or `rig` another in its place, then solve case after case; each case starts
 * from the rigged state, so that the answer never depends on the order of asking.
 */
export class Mast extends MastState {
  /** Known for the state last solved: it is asked for more than once. */
  private buckling: number | null = null;
  private readonly lanczos = new LanczosRoom();

  /** Finds equilibrium from the rigged state. False where none is found: it is unstable under this load. */
  solve(load: LoadCase): boolean {
    this.planes = load.planar ? 1 : 2;
    this.perNode = load.planar ? 3 : 5;
    setLoads(this, load);
    rest(this, load);
    this.iterations = 0;
    this.buckling = null;
    return newton(this);
  }

  /** Is the equilibrium that `solve` just left stable? To be asked before anything that assembles anew. */
  stable(): boolean {
    return stable(this);
  }

  /** Would the state just solved still be stable with its compression times this factor? */
  standsAt(compressionFactor: number): boolean {
    return standsAt(this, compressionFactor);
  }

  /** Factor on the mast's compression at which the state just solved buckles. */
  bucklingFactor(): number {
    this.buckling ??= bucklingFactor(this, this.lanczos);
    return this.buckling;
  }

  /** First sway frequency of the state just solved, Hz. */
  swayFrequency(): number {
    return swayFrequency(this, this.lanczos);
  }

  /** Does the state just solved sway faster than this, Hz? */
  swaysFasterThan(frequency: number): boolean {
    return swaysFasterThan(this, frequency);
  }

  /** The lowest sway frequencies of the state just solved, Hz, rising. */
  swayFrequencies(count: number): number[] {
    return swayFrequencies(this, this.lanczos, count);
  }

  /** Slope of the mast's axis at an end of an element, shear slope included. */
  slopeAt(e: number, xi: 0 | 1, plane: number): number {
    const n = slopes;
    shapeSlope(xi, this.length[e], this.shear[e], n, 0);
    const low = e * this.perNode + 1 + 2 * plane;
    const up = low + this.perNode;
    return n[0] * this.d[low] + n[1] * this.d[low + 1] + n[2] * this.d[up] + n[3] * this.d[up + 1];
  }
}

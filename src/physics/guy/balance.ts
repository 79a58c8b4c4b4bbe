import { catenaryState, riggedLength, solveCatenary } from "./catenary.ts";

/** Level distance and height from an anchor to the guy's head, m; what the guy is, N and N/m. */
export interface GuyPlace {
  readonly span: number;
  readonly rise: number;
  readonly ea: number;
  readonly weight: number;
}

const STEPS = 30;
/** Relative: a mast so rigged leans by less than a hair's breadth. */
const BALANCED = 1e-11;

const levelPull = ({ span, rise, ea, weight }: GuyPlace, tension: number): number => {
  const length = riggedLength(span, rise, tension, ea, weight);
  const state = catenaryState();
  solveCatenary(span, 0, rise, length, ea, 0, 0, -weight, state);
  return Math.hypot(state.ax, state.ay);
};

/**
 * Tensions at the anchor ends, N, of guys of one level that stand equally round the mast and pull it equally:
 * guys of unlike slope that leave it plumb must have one level pull. The steepest has `tension`, the others less.
 * @throws RangeError where a guy can't be rigged at its tension
 */
export function balancedTensions(places: readonly GuyPlace[], tension: number): number[] {
  const steepest = places.reduce((a, b) => (b.rise / b.span > a.rise / a.span ? b : a));
  const wanted = levelPull(steepest, tension);
  return places.map((place) => {
    if (place.span === steepest.span && place.rise === steepest.rise) return tension;
    // the level pull grows nearly in proportion to the tension: the secant through the origin
    let t = tension;
    for (let step = 0; step < STEPS; step++) {
      const ratio = wanted / levelPull(place, t);
      t *= ratio;
      if (Math.abs(ratio - 1) < BALANCED) return t;
    }
    throw new RangeError(
      `no tension lets a guy of span ${place.span} m and rise ${place.rise} m pull ${wanted} N level; expected a guy whose weight is small beside its pull`,
    );
  });
}

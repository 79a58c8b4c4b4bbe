/** A force across a pipe at a distance from its foot; SI. */
export interface PipeForce {
  readonly force: number;
  readonly at: number;
}

/**
 * Turn of a pipe fixed at its foot, at a distance from it, under forces across it, rad: F b2 / 2 EI beyond a force
 * at b, F a (2 b - a) / 2 EI nearer than it. Textbook cantilever.
 */
export function pipeSlope(forces: readonly PipeForce[], at: number, bendingStiffness: number): number {
  let sum = 0;
  for (const { force, at: b } of forces) sum += force * (at >= b ? b * b : at * (2 * b - at));
  return sum / (2 * bendingStiffness);
}

const STEPS = 40;

/**
 * The even pressure on a guy that pulls neither of its ends less than the true one, Pa: of the sums over its height
 * weighed toward the head and toward the foot the greater, each by Simpson's rule. docs/theory/wind.md.
 */
export function guyPressure(pressure: (z: number) => number, from: number, to: number): number {
  let head = 0;
  let foot = 0;
  for (let i = 0; i <= STEPS; i++) {
    const share = i / STEPS;
    const here = (i === 0 || i === STEPS ? 1 : i % 2 === 1 ? 4 : 2) * pressure(from + share * (to - from));
    head += share * here;
    foot += (1 - share) * here;
  }
  return (2 * Math.max(head, foot)) / (3 * STEPS);
}

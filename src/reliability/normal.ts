/** Density of the standard normal distribution. */
export const density = (x: number): number => Math.exp(-0.5 * x * x) / Math.sqrt(2 * Math.PI);

/** Beyond this the continued fraction converges sooner than the series. */
const FAR = 3;

/** `exp(x^2/2)` times the integral of `exp(-t^2/2)` from x up, x above 0: Abramowitz and Stegun 26.2.14. */
function millsRatio(x: number): number {
  let value = x;
  for (let k = 120; k >= 1; k--) value = x + k / value;
  return 1 / value;
}

/** Distribution function of the standard normal: Abramowitz and Stegun 26.2.11, and 26.2.14 in the tails. */
export function normalBelow(x: number): number {
  if (x > FAR) return 1 - density(x) * millsRatio(x);
  if (x < -FAR) return density(x) * millsRatio(-x);
  let term = x;
  let sum = x;
  for (let k = 3; Math.abs(term) > 1e-18 && k < 200; k += 2) sum += term *= (x * x) / k;
  return 0.5 + density(x) * sum;
}

/**
 * The x below which the standard normal lies with this probability, by Newton's rule on the logarithm.
 * @throws RangeError where the probability is not between 0 and 1
 */
export function normalAt(probability: number): number {
  if (!(probability > 0 && probability < 1))
    throw new RangeError(`normal: found probability ${probability}, expected one between 0 and 1`);
  if (probability > 0.5) return -normalAt(1 - probability);
  // log of the distribution is concave: from the left of the root the rule climbs without passing it
  let x = -Math.sqrt(-2 * Math.log(probability));
  for (let step = 0; step < 60; step++) {
    const below = normalBelow(x);
    const change = ((Math.log(probability) - Math.log(below)) * below) / density(x);
    x += change;
    if (Math.abs(change) <= 1e-14 * Math.max(1, Math.abs(x))) break;
  }
  return Math.min(x, 0);
}

/** Steps of Simpson's rule over the correlation. */
const STEPS = 200;

/**
 * Probability that two standard normals of correlation r both lie below a and b: the integral of their density over
 * the correlation from 0 to r (Sheppard 1900, as in Abramowitz and Stegun 26.3.3), r = sin(angle).
 */
export function bothBelow(a: number, b: number, r: number): number {
  if (r >= 1 - 1e-12) return normalBelow(Math.min(a, b));
  if (r <= -1 + 1e-12) return Math.max(0, normalBelow(a) + normalBelow(b) - 1);
  const most = Math.asin(r);
  let sum = 0;
  for (let i = 0; i <= STEPS; i++) {
    const angle = (most * i) / STEPS;
    const sine = Math.sin(angle);
    const weight = i === 0 || i === STEPS ? 1 : i % 2 === 1 ? 4 : 2;
    // at right angles the density is not bounded, but there both are one: the case above
    sum += weight * Math.exp(-(a * a - 2 * a * b * sine + b * b) / (2 * (1 - sine * sine)));
  }
  const integral = (sum * most) / (3 * STEPS);
  return normalBelow(a) * normalBelow(b) + integral / (2 * Math.PI);
}

/**
 * Elastic catenary under any uniform load: weight, ice and wind as one vector per unstressed length.
 *
 * Irvine, Cable Structures (1981), chapter 1, written in the frame of the load: with p the direction against the
 * load, the tension has a constant part H across p and a part sigma + q s along p. docs/theory/guys.md derives it.
 */

/** What one solution leaves behind: a start for the next, and the forces. Reused, never allocated in a loop. */
export interface CatenaryState {
  /** Tension across the load, N. */
  h: number;
  /** Tension along p at the anchor end, N. */
  sigma: number;
  /** Force of the guy on the mast, N. */
  fx: number;
  fy: number;
  fz: number;
  /** Force of the guy on its anchor, N. */
  ax: number;
  ay: number;
  az: number;
  tensionAnchor: number;
  tensionMast: number;
  /** Tangent stiffness at the mast end, N/m: symmetric, xx xy xz yy yz zz. */
  readonly k: Float64Array;
  /** Place of the mast end that this was solved for, across the load and along it, m. */
  x: number;
  y: number;
  /** Flexibility there, m/N, in the same frame; `fxx` is 0 where it does not belong to `h` and `sigma`. */
  fxx: number;
  fxy: number;
  fyy: number;
  /** False where no equilibrium was found. */
  converged: boolean;
  /** False where the last step was taken for the end before it was small: see `near`. */
  settled: boolean;
}

export const catenaryState = (): CatenaryState => ({
  h: 0,
  sigma: 0,
  fx: 0,
  fy: 0,
  fz: 0,
  ax: 0,
  ay: 0,
  az: 0,
  tensionAnchor: 0,
  tensionMast: 0,
  k: new Float64Array(6),
  x: 0,
  y: 0,
  fxx: 0,
  fxy: 0,
  fyy: 0,
  converged: false,
  settled: false,
});

/** No force and no stiffness: a guy that is gone. */
export function clearState(state: CatenaryState): void {
  state.h = 0;
  state.sigma = 0;
  state.fx = 0;
  state.fy = 0;
  state.fz = 0;
  state.ax = 0;
  state.ay = 0;
  state.az = 0;
  state.tensionAnchor = 0;
  state.tensionMast = 0;
  state.k.fill(0);
  state.converged = true;
  state.settled = true;
}

/** The guy that is another's mirror image in the plane y = 0. */
export function mirrorState(from: CatenaryState, to: CatenaryState): void {
  to.h = from.h;
  to.sigma = from.sigma;
  to.fx = from.fx;
  to.fy = -from.fy;
  to.fz = from.fz;
  to.ax = from.ax;
  to.ay = -from.ay;
  to.az = from.az;
  to.tensionAnchor = from.tensionAnchor;
  to.tensionMast = from.tensionMast;
  to.k.set(from.k);
  to.k[1] = -from.k[1];
  to.k[4] = -from.k[4];
  to.converged = from.converged;
  to.settled = from.settled;
}

const ITERATIONS = 60;
/** Relative to the unstressed length. A stiff strand turns 1e-12 into more force than the mast may be out of balance. */
const TOLERANCE = 1e-14;
/** A step below this share of the tension leaves the flexibility what it was. */
const SAME = 1e-10;

/**
 * Solves for the end forces of a guy from its anchor to a point at (dx, dy, dz) from it.
 * @param length unstressed length, m
 * @param ea axial stiffness, N
 * @param qx load per unstressed length, N/m; (qx, qy, qz) must not vanish
 * @param state holds the start (h > 0 used as it is, otherwise the cubic approximation) and takes the result
 * @param near end after a step below this share of H: inside a method that takes another step anyway
 */
export function solveCatenary(
  dx: number,
  dy: number,
  dz: number,
  length: number,
  ea: number,
  qx: number,
  qy: number,
  qz: number,
  state: CatenaryState,
  near = 0,
): void {
  // the frame of the load: p against it, e across it in the plane of the chord
  const q = Math.sqrt(qx * qx + qy * qy + qz * qz);
  const px = -qx / q;
  const py = -qy / q;
  const pz = -qz / q;
  const y = dx * px + dy * py + dz * pz;
  let ex = dx - y * px;
  let ey = dy - y * py;
  let ez = dz - y * pz;
  const x = Math.sqrt(ex * ex + ey * ey + ez * ez);
  ex /= x;
  ey /= x;
  ez /= x;

  let { h, sigma } = state;
  if (!(h > 0)) {
    h = cubicStart(x, y, length, q);
    sigma = startSigma(x, y, length, q, h);
  } else if (state.fxx > 0) {
    // the end has moved since: along the tangent, as the first step below would find
    const determinant = state.fxx * state.fyy - state.fxy * state.fxy;
    const moved = ((x - state.x) * state.fyy - (y - state.y) * state.fxy) / determinant;
    if (h + moved > 0) {
      h += moved;
      sigma += ((y - state.y) * state.fxx - (x - state.x) * state.fxy) / determinant;
    }
  }
  const flexible = length / ea;
  const limit = TOLERANCE * length;
  let restarted = false;
  let converged = false;
  let settled = true;
  let fxx = 0;
  let fxy = 0;
  let fyy = 0;
  let across = 0;
  const load = q * length;
  const perLoad = 1 / q;
  for (let iteration = 0; iteration < ITERATIONS; iteration++) {
    // a start from a state far off may wander: begin again as if there were none
    if (iteration === ITERATIONS / 2) {
      h = cubicStart(x, y, length, q);
      sigma = startSigma(x, y, length, q, h);
    }
    const top = sigma + load;
    const tA = Math.sqrt(h * h + sigma * sigma);
    const tB = Math.sqrt(h * h + top * top);
    const turned = turn(h, sigma, load, tA, tB);
    // tB - tA
    const gain = (load * (top + sigma)) / (tA + tB);
    across = inverseSinh(turned / (h * h)) * perLoad + flexible;
    const rx = x - h * across;
    const ry = y - (gain * perLoad + flexible * (sigma + 0.5 * load));
    const share = perLoad / (tA * tB);
    const cosines = turned * share;
    fxx = across - cosines;
    fxy = -h * gain * share;
    fyy = cosines + flexible;
    const miss = Math.abs(rx) + Math.abs(ry);
    if (miss < limit) {
      converged = true;
      break;
    }
    const perDeterminant = 1 / (fxx * fyy - fxy * fxy);
    const stepH = (rx * fyy - ry * fxy) * perDeterminant;
    const stepSigma = (ry * fxx - rx * fxy) * perDeterminant;
    if (h + stepH > 0 && Number.isFinite(stepH) && Number.isFinite(stepSigma)) {
      h += stepH;
      sigma += stepSigma;
      const moved = Math.abs(stepH) + Math.abs(stepSigma);
      // the flexibility hardly changes along a step so small: what it leaves is below the limit too
      const last = moved < SAME * h && 10 * miss * moved < limit * h;
      if (last || moved < near * h) {
        converged = true;
        settled = last;
        break;
      }
    } else if (!restarted) {
      restarted = true;
      h = cubicStart(x, y, length, q);
      sigma = startSigma(x, y, length, q, h);
    } else {
      // halve towards zero: H stays positive, the direction of the step is kept
      const share = (-0.5 * h) / stepH;
      h *= 0.5;
      sigma += Number.isFinite(share) ? share * stepSigma : 0;
    }
    // rounding floor: a step that no longer moves the tension
    if (Math.abs(stepH) + Math.abs(stepSigma) < 1e-14 * Math.max(tA, tB)) {
      converged = true;
      break;
    }
  }

  state.h = h;
  state.sigma = sigma;
  state.x = x;
  state.y = y;
  state.fxx = converged ? fxx : 0;
  state.fxy = fxy;
  state.fyy = fyy;
  state.converged = converged;
  state.settled = settled;
  const top = sigma + load;
  state.tensionAnchor = Math.sqrt(h * h + sigma * sigma);
  state.tensionMast = Math.sqrt(h * h + top * top);
  state.ax = h * ex + sigma * px;
  state.ay = h * ey + sigma * py;
  state.az = h * ez + sigma * pz;
  state.fx = -(h * ex + top * px);
  state.fy = -(h * ey + top * py);
  state.fz = -(h * ez + top * pz);

  // stiffness: the inverse of the flexibility in (e, p), and 1 / across out of their plane
  const perDeterminant = 1 / (fxx * fyy - fxy * fxy);
  const kee = fyy * perDeterminant;
  const kep = -fxy * perDeterminant;
  const kpp = fxx * perDeterminant;
  const koo = 1 / across;
  const ox = ey * pz - ez * py;
  const oy = ez * px - ex * pz;
  const oz = ex * py - ey * px;
  const k = state.k;
  k[0] = kee * ex * ex + 2 * kep * ex * px + kpp * px * px + koo * ox * ox;
  k[1] = kee * ex * ey + kep * (ex * py + px * ey) + kpp * px * py + koo * ox * oy;
  k[2] = kee * ex * ez + kep * (ex * pz + px * ez) + kpp * px * pz + koo * ox * oz;
  k[3] = kee * ey * ey + 2 * kep * ey * py + kpp * py * py + koo * oy * oy;
  k[4] = kee * ey * ez + kep * (ey * pz + py * ez) + kpp * py * pz + koo * oy * oz;
  k[5] = kee * ez * ez + 2 * kep * ez * pz + kpp * pz * pz + koo * oz * oz;
}

/**
 * top tA - sigma tB with top = sigma + load: H squared times the hyperbolic sine of asinh(top/H) - asinh(sigma/H).
 * A short taut guy hardly turns along its length: where both have one sign the difference is written out, so that
 * nothing cancels.
 */
function turn(h: number, sigma: number, load: number, tA: number, tB: number): number {
  const top = sigma + load;
  if (sigma * top <= 0) return top * tA - sigma * tB;
  return (h * h * load * (top + sigma)) / (top * tA + sigma * tB);
}

/** For x above 0. A taut guy's x is small: its series is exact to rounding there, and a fifth of the cost. */
function inverseSinh(x: number): number {
  if (x > 0.1) return Math.log(x + Math.sqrt(1 + x * x));
  const y = x * x;
  const tail = 35 / 1152 + y * (-63 / 2816 + (y * 231) / 13312);
  return x * (1 + y * (-1 / 6 + y * (3 / 40 + y * (-5 / 112 + y * tail))));
}

/** H of the inextensible catenary by its cubic approximation (Jayaraman and Knudson 1981). */
function cubicStart(x: number, y: number, length: number, q: number): number {
  const slack = (length * length - y * y) / (x * x) - 1;
  const lambda = slack > 0 ? Math.sqrt(3 * slack) : 0.2;
  return (q * x) / (2 * lambda);
}

function startSigma(x: number, y: number, length: number, q: number, h: number): number {
  const lambda = (q * x) / (2 * h);
  return 0.5 * q * (y / Math.tanh(lambda) - length);
}

/**
 * Unstressed length that gives a tension at the anchor end, the load being `q` straight down.
 * @param span horizontal distance, m, above 0
 * @param rise mast end above anchor, m
 * @param tension at the anchor end, N
 * @throws RangeError where no such guy exists (its own weight asks more)
 */
export function riggedLength(span: number, rise: number, tension: number, ea: number, q: number): number {
  // one unknown beside the length: the angle of the tension at the anchor; Newton on (length, angle)
  const chord = Math.hypot(span, rise);
  let length = chord * (1 - tension / ea);
  let sine = rise / chord - (q * chord * 0.5 * (span / chord) ** 2) / tension;
  for (let iteration = 0; iteration < 50; iteration++) {
    if (!(Math.abs(sine) < 1)) break;
    const h = tension * Math.sqrt(1 - sine * sine);
    const sigma = tension * sine;
    const load = q * length;
    const top = sigma + load;
    const tB = Math.sqrt(h * h + top * top);
    const turned = turn(h, sigma, load, tension, tB);
    const gain = (load * (top + sigma)) / (tension + tB);
    const angle = inverseSinh(turned / (h * h)) / q;
    const rx = span - h * (angle + length / ea);
    const ry = rise - (gain / q + (length / ea) * (sigma + 0.5 * q * length));
    if (Math.abs(rx) + Math.abs(ry) < 1e-13 * chord) return length;
    // derivatives by length and by sine (dh = -tension sine / cosine, dsigma = tension)
    const cosine = h / tension;
    const dh = (-tension * sine) / cosine;
    const byLengthX = h / tB + h / ea;
    const byLengthY = top / tB + top / ea;
    const cosines = turned / (tension * tB * q);
    const cross = (-h * gain) / (tension * tB * q);
    const bySineX = (angle + length / ea - cosines) * dh + cross * tension;
    const bySineY = cross * dh + (cosines + length / ea) * tension;
    const determinant = byLengthX * bySineY - bySineX * byLengthY;
    const stepLength = (rx * bySineY - ry * bySineX) / determinant;
    const stepSine = (byLengthX * ry - byLengthY * rx) / determinant;
    length += stepLength;
    sine += stepSine;
    if (Math.abs(stepLength) < 1e-15 * chord && Math.abs(stepSine) < 1e-15) return length;
  }
  throw new RangeError(
    `no guy of span ${span} m and rise ${rise} m has ${tension} N at its anchor with ${q} N/m of weight; expected a tension well above ${q * chord} N`,
  );
}

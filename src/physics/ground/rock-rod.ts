import { type GroundRules, type SoilGivens, submergedUnitWeight, weakestTo } from "./soil.ts";
import { upliftCone } from "./uplift-pyramid.ts";

/** A bar grouted into a drilled hole. m, Pa. */
export interface RockRodGeometry {
  readonly bar: number;
  readonly yield: number;
  /** Diameter of the hole. */
  readonly hole: number;
  readonly socket: number;
  /** In a row, this far apart, sharing the pull evenly; one where left out. */
  readonly rods?: number;
  readonly spacing?: number;
}

export interface RockRodCapacity {
  /** Pull along the bar, N: the smallest of the three. */
  readonly axial: number;
  readonly governs: "steel" | "bond" | "cone";
  readonly steel: number;
  readonly bond: number;
  readonly cone: number;
}

const RADIANS = Math.PI / 180;

/**
 * A cone about a slanting rod, cut off by the ground, holds with the part of its weight that lies along the rod: never
 * less than this share of the upright cone of the same length, whatever the slant at which it comes out at grade. From
 * 30 degrees half-angle up the upright one is the least of all. docs/theory/ground.md.
 */
export const coneShare = (angle: number): number =>
  angle >= 30 ? 1 : (16 / (3 * Math.sqrt(3))) * Math.sin(angle * RADIANS) * Math.cos(angle * RADIANS) ** 3;

/**
 * The same of the slice of a cone that lies within half a spacing of its rod, whatever the spacing: least for a thin
 * one, whose ratio `cos3(b) cos2(a)/(cos2(b) - sin2(a))` is least at `cos(b) = sqrt(3) sin(a)`.
 */
export const sliceShare = (angle: number): number =>
  angle >= 35.264 ? 1 : ((3 * Math.sqrt(3)) / 2) * Math.sin(angle * RADIANS) * Math.cos(angle * RADIANS) ** 2;

const STEPS = 400;

/** Volume of an upright cone within `half` of its axis on either side, m3: Simpson over its depth. */
export function coneSlice(depth: number, angle: number, half: number): number {
  const open = Math.tan(angle * RADIANS);
  let sum = 0;
  for (let i = 0; i <= STEPS; i++) {
    const r = ((depth * i) / STEPS) * open;
    const area =
      r <= half ? Math.PI * r * r : 2 * (half * Math.sqrt(r * r - half * half) + r * r * Math.asin(half / r));
    sum += (i === 0 || i === STEPS ? 1 : i % 2 === 1 ? 4 : 2) * area;
  }
  return (sum * depth) / (3 * STEPS);
}

/**
 * What a rock rod holds along its axis, nominal; a row of them, all together: cones that overlap
 * are counted once. A soil without a bond holds no rod: all capacity is 0.
 * @throws RangeError where the bar does not fit in its hole
 */
export function rockRodCapacity(rod: RockRodGeometry, soil: SoilGivens, rules: GroundRules): RockRodCapacity {
  if (!(rod.bar > 0 && rod.hole > rod.bar && rod.socket > 0))
    throw new RangeError(
      `rock rod: found bar ${rod.bar} m, hole ${rod.hole} m, socket ${rod.socket} m, expected a hole wider than the bar and a socket above 0`,
    );
  const { rods = 1, spacing = Number.POSITIVE_INFINITY } = rod;
  const steel = (rods * rod.yield * Math.PI * rod.bar ** 2) / 4;
  const rock = weakestTo(soil, rod.socket);
  const bond = rods * Math.PI * rod.hole * rod.socket * (rock.groutBond ?? 0);
  const { upliftAngle, deadShare = 1 } = rules;
  // water anywhere above the end of the socket lifts the whole cone: safe, and as a dowel's
  const wet = (rules.waterTable ?? Number.POSITIVE_INFINITY) < rod.socket;
  const counted = { unitWeight: deadShare * rock.unitWeight };
  const weight = wet ? submergedUnitWeight(counted) : counted.unitWeight;
  const single = coneShare(upliftAngle) * upliftCone(0, rod.socket, upliftAngle);
  // every further rod of a row adds the slice of its cone that is nearer to it than to its neighbours
  const further =
    rods === 1
      ? 0
      : Math.min(
          single,
          Math.min(coneShare(upliftAngle), sliceShare(upliftAngle)) *
            coneSlice(rod.socket, upliftAngle, spacing / 2),
        );
  const cone = (single + (rods - 1) * further) * weight;
  const axial = Math.min(steel, bond, cone);
  return { axial, governs: axial === bond ? "bond" : axial === cone ? "cone" : "steel", steel, bond, cone };
}

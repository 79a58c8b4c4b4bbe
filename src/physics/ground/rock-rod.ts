import { type GroundRules, type SoilGivens, submergedUnitWeight, weakestTo } from "./soil.ts";
import { upliftCone } from "./uplift-pyramid.ts";

/** A bar grouted into a drilled hole. m, Pa. */
export interface RockRodGeometry {
  readonly bar: number;
  readonly yield: number;
  /** Diameter of the hole. */
  readonly hole: number;
  readonly socket: number;
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
 * What a rock rod holds along its axis, nominal. A soil without a bond holds no rod: all capacity is 0.
 * @throws RangeError where the bar does not fit in its hole
 */
export function rockRodCapacity(rod: RockRodGeometry, soil: SoilGivens, rules: GroundRules): RockRodCapacity {
  if (!(rod.bar > 0 && rod.hole > rod.bar && rod.socket > 0))
    throw new RangeError(
      `rock rod: found bar ${rod.bar} m, hole ${rod.hole} m, socket ${rod.socket} m, expected a hole wider than the bar and a socket above 0`,
    );
  const steel = (rod.yield * Math.PI * rod.bar ** 2) / 4;
  const rock = weakestTo(soil, rod.socket);
  const bond = Math.PI * rod.hole * rod.socket * (rock.groutBond ?? 0);
  const { upliftAngle, deadShare = 1 } = rules;
  // water anywhere above the end of the socket lifts the whole cone: safe, and as a dowel's
  const wet = (rules.waterTable ?? Number.POSITIVE_INFINITY) < rod.socket;
  const weight = (wet ? submergedUnitWeight(rock) : rock.unitWeight) * deadShare;
  const cone = coneShare(upliftAngle) * upliftCone(0, rod.socket, upliftAngle) * weight;
  const axial = Math.min(steel, bond, cone);
  return { axial, governs: axial === bond ? "bond" : axial === cone ? "cone" : "steel", steel, bond, cone };
}

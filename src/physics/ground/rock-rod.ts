import { type GroundRules, type SoilGivens, weakestTo } from "./soil.ts";
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
  const cone = upliftCone(0, rod.socket, rules.upliftAngle) * rock.unitWeight * (rules.deadShare ?? 1);
  const axial = Math.min(steel, bond, cone);
  return { axial, governs: axial === bond ? "bond" : axial === cone ? "cone" : "steel", steel, bond, cone };
}

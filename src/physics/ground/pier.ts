import { pressureDepth } from "./embedded-post.ts";
import type { FootingLoads, Resistance, TakeOff } from "./loads.ts";
import { passiveCoefficient } from "./rankine.ts";
import {
  bearingUnder,
  type GroundRules,
  heldWeight,
  lateralMultiplier,
  type SoilGivens,
  submergedUnitWeight,
  weakestTo,
} from "./soil.ts";

/** A round drilled pier, its top at grade. m. */
export interface PierGeometry {
  readonly diameter: number;
  /** Grade to its tip. */
  readonly depth: number;
}

/** One way to judge how the ground holds a pier sideways: linear in shear and moment, ready to be asked. */
export interface SideHold {
  /** N m. */
  of(loads: FootingLoads): Resistance;
  /** Greatest moment in the pier under these loads, N m. Hot. */
  bending(shear: number, moment: number): number;
  /** Greatest shear in it, N. Hot. */
  shearing(shear: number, moment: number): number;
}

/**
 * Greatest shear in a rigid pier whose ground stiffens evenly with depth, N: under a moment the pressure z (1 - 3 z/2d)
 * shears it by 16/9 M/d at two thirds of its depth, under a shear z (1 - 4 z/3d) by 11/16 V at three quarters, both the
 * same way; at grade by V. docs/theory/ground.md.
 */
const rigidShear =
  (depth: number) =>
  (shear: number, moment: number): number =>
    Math.max(shear, (16 / 9) * (moment / depth) + (11 / 16) * shear);

/**
 * As a post free at grade: IBC 1807.3.2.1 solved for the load; no deeper than 12 ft counts for its pressure.
 * Holds as the soil row states it: allowable. Null where the soil has no lateral bearing. docs/theory/ground.md.
 */
export function pierAsPost(
  { diameter, depth }: PierGeometry,
  soil: SoilGivens,
  rules: GroundRules,
): SideHold | null {
  const uniform = weakestTo(soil, depth);
  const slope = uniform.lateralPerDepth * lateralMultiplier(soil, depth, rules);
  if (!(slope > 0)) return null;
  const pressure = Math.min(
    slope * pressureDepth(depth, "conservative"),
    uniform.lateralCap ?? Number.POSITIVE_INFINITY,
  );
  const capacity = (pressure * diameter * depth ** 2) / 2.34;
  return {
    of: ({ shear, moment }) => ({ demand: Math.abs(shear) * depth + 1.09 * Math.abs(moment), capacity }),
    // shear vanishes above the point about which a rigid post turns, at 0.7 of its depth or higher
    bending: (shear, moment) => moment + 0.7 * depth * shear,
    shearing: rigidShear(depth),
  };
}

/** As a short rigid pile in sand, about its tip, ultimate: Broms 1964. Null without a friction angle. */
export function pierInSand(
  { diameter, depth }: PierGeometry,
  soil: SoilGivens,
  rules: GroundRules,
): SideHold | null {
  const uniform = weakestTo(soil, depth);
  if (!uniform.frictionAngle) return null;
  // water anywhere above the tip lifts the whole depth: safe
  const wet = (rules.waterTable ?? Number.POSITIVE_INFINITY) < depth;
  const unitWeight = wet ? submergedUnitWeight(uniform) : uniform.unitWeight;
  const push = unitWeight * diameter * passiveCoefficient(uniform.frictionAngle, rules.fall);
  const capacity = 0.5 * push * depth ** 3;
  return {
    of: ({ shear, moment }) => ({ demand: Math.abs(shear) * depth + Math.abs(moment), capacity }),
    bending: (shear, moment) =>
      shear > 0 ? moment + (2 / 3) * shear * Math.sqrt((2 * shear) / (3 * push)) : moment,
    shearing: rigidShear(depth),
  };
}

/**
 * As a short rigid pile in clay, ultimate: Broms 1964. Demand and capacity are moments at 1.5 diameters, above which
 * clay holds nothing; the capacity is that of shear and moment grown together. Null without an undrained strength.
 */
export function pierInClay({ diameter, depth }: PierGeometry, soil: SoilGivens): SideHold | null {
  const { undrainedStrength } = weakestTo(soil, depth);
  if (!undrainedStrength) return null;
  const held = depth - 1.5 * diameter;
  const line = 9 * undrainedStrength * diameter;
  if (!(held > 0))
    return {
      of: () => ({ demand: Number.POSITIVE_INFINITY, capacity: 0 }),
      bending: () => Number.POSITIVE_INFINITY,
      shearing: () => Number.POSITIVE_INFINITY,
    };
  return {
    of({ shear, moment }) {
      const demand = Math.abs(moment) + 1.5 * diameter * Math.abs(shear);
      const f = Math.abs(shear) / line;
      // loads grown by x: x (M + 1.5 V d) + x2 V f / 2 = line (held - x f)2 / 4, of which V = line f
      const a = line / 4;
      const b = demand + 2 * a * held * f;
      const growth = (2 * a * held ** 2) / (b + Math.sqrt(b ** 2 + (2 * a * f * held) ** 2));
      return { demand, capacity: demand > 0 ? growth * demand : a * held ** 2 };
    },
    bending: (shear, moment) => moment + shear * (1.5 * diameter + (0.5 * shear) / line),
    // below the point without shear the clay pushes back with two equal halves
    shearing(shear, moment) {
      const left = held - shear / line;
      const most = moment + shear * (1.5 * diameter + (0.5 * shear) / line);
      return left > 0 ? Math.max(shear, (2 * most) / left) : Number.POSITIVE_INFINITY;
    },
  };
}

/**
 * The tip's pressure, Pa: the mast and the whole pier, no friction on its side. A pier that water and pull lift
 * together fails: nothing here holds it down.
 */
export function pierBearing(
  { diameter, depth }: PierGeometry,
  compression: number,
  soil: SoilGivens,
  rules: GroundRules,
): Resistance {
  const area = (Math.PI / 4) * diameter ** 2;
  const wet = Math.max(0, depth - (rules.waterTable ?? Number.POSITIVE_INFINITY));
  const weight = depth * rules.concreteUnitWeight;
  const down = compression / area + heldWeight(weight, wet, rules);
  // water is not counted where it relieves the tip
  return {
    demand: down > 0 ? compression / area + weight : Number.POSITIVE_INFINITY,
    capacity: bearingUnder(soil, depth, diameter),
  };
}

/** Drilled and filled neat, no forms. */
export function pierTakeOff({ diameter, depth }: PierGeometry): TakeOff {
  const volume = (Math.PI / 4) * diameter ** 2 * depth;
  return { concrete: volume, dug: volume, hole: depth, formed: 0 };
}

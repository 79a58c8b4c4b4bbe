import { activeCoefficient, passiveCoefficient } from "./rankine.ts";
import { meanUnitWeight, type SoilGivens, stretches, WATER_UNIT_WEIGHT } from "./soil.ts";

/**
 * Rankine's passive less active pressure on a face between two depths, ultimate, N: effective stress from the weight
 * of all layers above, coefficients of the layer in front. Null where a layer there states no friction angle.
 * docs/theory/ground.md.
 * @param width of the face, m @param waterTable below grade, m @param fall of the ground before it, per distance
 */
export function netPassiveForce(
  soil: SoilGivens,
  width: number,
  from: number,
  to: number,
  waterTable: number,
  fall = 0,
): number | null {
  let sum = 0;
  for (const { layer, from: a, to: b } of stretches(soil, from, to)) {
    if (layer.frictionAngle === undefined) return null;
    const net = Math.max(
      0,
      passiveCoefficient(layer.frictionAngle, fall) - activeCoefficient(layer.frictionAngle, fall),
    );
    // as if this layer reached to grade, and what the layers above weigh more or less than that
    const above = (meanUnitWeight(soil, 0, a) - layer.unitWeight) * a;
    const dry = (layer.unitWeight * (b ** 2 - a ** 2)) / 2 + above * (b - a);
    const wetFrom = Math.max(a, waterTable);
    const pore =
      wetFrom < b ? (WATER_UNIT_WEIGHT * ((b - waterTable) ** 2 - (wetFrom - waterTable) ** 2)) / 2 : 0;
    sum += width * net * Math.max(0, dry - pore);
  }
  return sum;
}

import { lateralMoment, lateralPressure, type SoilGivens } from "./soil.ts";

/** A block and its load, for the two ways side by side. SI. */
export interface BlockOverturningGivens {
  /** Along the wind. */
  readonly width: number;
  /** Across the wind. */
  readonly breadth: number;
  readonly depth: number;
  readonly concreteUnitWeight: number;
  readonly soil: SoilGivens;
  readonly lateralMultiplier: number;
  readonly verticalLoad: number;
  readonly momentAtGround: number;
  readonly shearAtGround: number;
  /** Thickness of the layers of the hand way. */
  readonly layerThickness: number;
}

/** Restoring and overturning moments about the toe, N m, and their ratios. */
export interface BlockOverturning {
  readonly deadMoment: number;
  readonly mastMoment: number;
  readonly soilMomentHand: number;
  readonly soilMomentExact: number;
  readonly overturningHand: number;
  readonly overturningExact: number;
  readonly factorHand: number;
  readonly factorExact: number;
}

/** Soil moment by layers, each at the pressure of its bottom and the arm of its middle, N m. */
function soilMomentByLayers(givens: BlockOverturningGivens): number {
  const layers = Math.ceil(givens.depth / givens.layerThickness - 1e-9);
  let moment = 0;
  for (let layer = 0; layer < layers; layer++) {
    const top = layer * givens.layerThickness;
    const bottom = Math.min(givens.depth, top + givens.layerThickness);
    const pressure = lateralPressure(givens.soil, bottom, givens.lateralMultiplier);
    moment += pressure * givens.breadth * (bottom - top) * (givens.depth - (top + bottom) / 2);
  }
  return moment;
}

/**
 * The hand way and the exact way of a block's overturning. docs/theory/ground.md.
 * @throws RangeError where a size or the layer is not above zero
 */
export function blockOverturning(givens: BlockOverturningGivens): BlockOverturning {
  const { width, breadth, depth, layerThickness } = givens;
  if (!(width > 0 && breadth > 0 && depth > 0 && layerThickness > 0))
    throw new RangeError(
      `block: found width ${width}, breadth ${breadth}, depth ${depth}, layer ${layerThickness} m, expected all above 0`,
    );
  const arm = width / 2;
  const deadMoment = width * breadth * depth * givens.concreteUnitWeight * arm;
  const mastMoment = givens.verticalLoad * arm;
  const soilMomentHand = soilMomentByLayers(givens);
  const soilMomentExact = breadth * lateralMoment(givens.soil, depth, givens.lateralMultiplier);
  const overturningHand = givens.momentAtGround;
  const overturningExact = givens.momentAtGround + givens.shearAtGround * depth;
  return {
    deadMoment,
    mastMoment,
    soilMomentHand,
    soilMomentExact,
    overturningHand,
    overturningExact,
    factorHand: (deadMoment + mastMoment + soilMomentHand) / overturningHand,
    factorExact: (deadMoment + mastMoment + soilMomentExact) / overturningExact,
  };
}

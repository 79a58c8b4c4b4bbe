import type { FootingRow } from "../../model/catalog.ts";
import { barMass } from "../../physics/concrete/bars.ts";
import {
  atStrength,
  bottomDemand,
  punchingDemand,
  type Slab,
  type SlabLoads,
  shearDemand,
  slabStrength,
  topDemand,
} from "../../physics/concrete/slab.ts";
import type { FootingResistance } from "../../physics/ground/loads.ts";
import { padCover, padResistance, padTakeOff } from "../../physics/ground/pad.ts";
import { padRocking } from "../../physics/ground/rocking.ts";
import { remembered } from "../remembered.ts";
import { sizesOf } from "../sizes.ts";
import type { FootingPart, Ground } from "../types.ts";
import { concreteLimit, type FootingLimit, footingOf } from "./footing.ts";
import { padBars } from "./pad-bars.ts";
import { standingLimits } from "./standing.ts";

type Row = Extract<FootingRow, { kind: "pad" }>;
interface PadSize {
  readonly width: number;
  readonly thickness: number;
  readonly depth: number;
  readonly steel: number;
  readonly mats: number;
}

const TOO_MANY =
  "so many that the concrete crushes before they stretch, which ACI 318-19 8.3.3.1 does not allow";
const crushes = (area: number, moment: number): boolean => area > 0 && moment === 0;

/** Its concrete and bars, whatever it stands on. */
const concreteOf = remembered(
  (
    { pedestal, cage }: Row,
    width: number,
    thickness: number,
    depth: number,
    steel: number,
    mats: number,
    strength: number,
    barYield: number,
  ) => {
    const made = padBars({ width, thickness, depth, pedestal, steel, mats }, cage, strength, barYield);
    return { ...made, mass: barMass(made.runs), strength: slabStrength(made.slab) };
  },
);

/** How it stands, and what that does to its concrete. */
interface Response extends FootingResistance, SlabLoads {}

/** A square pad with a pedestal up to grade: its own weight and that of the soil on it hold it. */
export function pad(row: Row, size: PadSize, ground: Ground): FootingPart {
  const { soil, givens, rules } = ground;
  const { width, thickness, depth, steel, mats } = size;
  const geometry = { width, thickness, depth, pedestal: row.pedestal };
  const { slab, runs, mass, pedestalMoment, words, strength } = concreteOf(
    row,
    width,
    thickness,
    depth,
    steel,
    mats,
    rules.concrete.strength,
    rules.concreteDesign.barYield,
  );
  const { counted, dry } = padCover(geometry, soil, givens);
  const stem = depth - thickness;
  const { loadFactor, source } = rules.concreteDesign;
  const limit = concreteLimit<Response>(rules.concreteDesign);
  /** A limit state of the slab on its soil, which bears elsewhere under more wind on the same weight. */
  const onSoil = (
    limitState: string,
    demand: (bent: Slab, r: SlabLoads) => number,
    capacity: number,
    note: string,
  ): FootingLimit<Response> => ({
    limitState,
    required: 1,
    source,
    of: (r) => ({ demand: atStrength(demand, slab, r, loadFactor), capacity }),
    note: () => note,
  });
  return footingOf<Response>(
    {
      choice: { kind: "pad", row: row.id, ...size },
      takeOff: { ...padTakeOff(geometry), bars: mass },
      bars: runs,
      top: row.pedestal,
      rocking: padRocking(soil, width, depth),
      normal: (r) => r.normal,
      response: (load) => {
        const { bearing, overturning, sliding, normal, eccentricity } = padResistance(
          geometry,
          load,
          soil,
          givens,
        );
        const { compression } = load;
        const moment = Math.abs(load.moment) + Math.abs(load.shear) * stem;
        // hot: named one by one, for a spread takes six times as long
        return {
          bearing,
          overturning,
          sliding,
          normal,
          eccentricity,
          compression,
          moment,
          counted,
          weight: dry,
        };
      },
      limits: [
        ...standingLimits<Response>(ground),
        onSoil(
          "pad-flexure",
          bottomDemand,
          strength.bottomMoment,
          crushes(slab.bottomArea, strength.bottomMoment) ? `${words}: ${TOO_MANY}` : words,
        ),
        onSoil(
          "pad-lift-flexure",
          topDemand,
          strength.topMoment,
          mats === 1
            ? "no mat above: no side of it may lift"
            : crushes(slab.topArea, strength.topMoment)
              ? `${words}: ${TOO_MANY}`
              : words,
        ),
        onSoil("pad-shear", shearDemand, strength.shear, "on no ties"),
        limit(
          "pad-punching",
          (r) => punchingDemand(slab, r),
          strength.punching,
          "thrust, and 0.4 of the moment, at a corner",
        ),
        limit(
          "pedestal-bending",
          (r) => r.moment,
          pedestalMoment,
          pedestalMoment > 0
            ? "at the slab; bars hooked on the lower mat"
            : "no cage has room for its bars in the pedestal and for their hooks in the slab",
        ),
      ],
    },
    ground,
  );
}

export const padChoices = (row: Row): PadSize[] =>
  sizesOf(row.width)
    .filter((width) => width >= row.pedestal)
    .flatMap((width) =>
      sizesOf(row.thickness).flatMap((thickness) =>
        sizesOf(row.depth)
          .filter((depth) => depth >= thickness)
          .flatMap((depth) =>
            row.steel.flatMap((steel) => row.mats.map((mats) => ({ width, thickness, depth, steel, mats }))),
          ),
      ),
    );

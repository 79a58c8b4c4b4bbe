import type { FootingRow } from "../../model/catalog.ts";
import type { FootingChoice } from "../../model/design.ts";
import { blockResistance, blockTakeOff } from "../../physics/ground/block.ts";
import { blockOverturning } from "../../physics/ground/block-overturning.ts";
import { blockBeside } from "../../physics/ground/block-post.ts";
import type { FootingResistance } from "../../physics/ground/loads.ts";
import { padResistance, padTakeOff } from "../../physics/ground/pad.ts";
import { concreteBearing } from "../../physics/steel/bearing.ts";
import { partCents } from "../price.ts";
import { sizesOf } from "../sizes.ts";
import type { FootingLoads, FootingPart, Ground, Measure, TakeOff } from "../types.ts";
import { utilisation } from "../types.ts";

/** What one kind of footing must answer; the rest is shared. */
interface Kind {
  readonly choice: FootingChoice;
  readonly takeOff: TakeOff;
  /** Side of the concrete that the base plate stands on, m. */
  readonly top: number;
  resistance(loads: FootingLoads): FootingResistance;
  note?(loads: FootingLoads): string;
}

function footing(kind: Kind, ground: Ground): FootingPart {
  const { rules } = ground;
  // allowable soil values hold their safety already
  const bearingFactor =
    ground.soil.values === "allowable" ? rules.bearing.required : 2 * rules.bearing.required;
  const plateStrength = (plate: number) => {
    const side = Math.min(plate, kind.top);
    return concreteBearing(rules.concrete.strength, side * side, kind.top * kind.top);
  };
  return {
    choice: kind.choice,
    takeOff: kind.takeOff,
    extras: [],
    depth: kind.choice.depth,
    cents: partCents(kind.takeOff, [], ground),
    worst(loads, plate) {
      let most = 0;
      let compression = 0;
      for (const load of loads) {
        const r = kind.resistance(load);
        const use = Math.max(
          (r.bearing.demand * bearingFactor) / r.bearing.capacity,
          ratio(r.overturning, rules.overturning.required),
          ratio(r.sliding, rules.sliding.required),
        );
        if (!(use <= most)) most = use;
        if (load.compression > compression) compression = load.compression;
      }
      return Math.max(most, (compression * rules.baseCompression.required) / plateStrength(plate));
    },
    measures(loads, plate) {
      const all = loads.map((load) => kind.resistance(load));
      const pick = (
        limitState: string,
        rule: { required: number; source: string },
        of: (r: FootingResistance) => { demand: number; capacity: number },
      ): Measure => {
        let worst = 0;
        all.forEach((r, i) => {
          const here = utilisation({ ...of(r), required: rule.required });
          if (here > utilisation({ ...of(all[worst]), required: rule.required })) worst = i;
        });
        return { limitState, ...of(all[worst]), required: rule.required, source: rule.source, of: worst };
      };
      const overturning = pick("overturning", rules.overturning, (r) => r.overturning);
      let heaviest = 0;
      loads.forEach((load, i) => {
        if (load.compression > loads[heaviest].compression) heaviest = i;
      });
      return [
        pick("base-bearing", { required: bearingFactor, source: rules.bearing.source }, (r) => r.bearing),
        { ...overturning, note: kind.note?.(loads[overturning.of]) },
        pick("sliding", rules.sliding, (r) => r.sliding),
        {
          limitState: "base-compression",
          demand: Math.max(loads[heaviest].compression, 0),
          capacity: plateStrength(plate),
          required: rules.baseCompression.required,
          source: rules.baseCompression.source,
          of: heaviest,
        },
      ];
    },
  };
}

const ratio = ({ demand, capacity }: { demand: number; capacity: number }, required: number) =>
  demand <= 0 ? 0 : capacity <= 0 ? Number.POSITIVE_INFINITY : (demand * required) / capacity;

type BlockRow = Extract<FootingRow, { kind: "block" }>;
type PadRow = Extract<FootingRow, { kind: "pad" }>;

export const block = (row: BlockRow, size: { width: number; depth: number }, ground: Ground): FootingPart =>
  footing(
    {
      choice: { kind: "block", row: row.id, ...size },
      takeOff: blockTakeOff(size),
      top: size.width,
      resistance: (loads) => blockResistance(size, loads, ground.soil, ground.givens),
      note: (loads) => {
        if (loads.moment <= 0) return "";
        const { factorHand, factorExact } = blockOverturning({
          width: size.width,
          breadth: size.width,
          depth: size.depth,
          concreteUnitWeight: ground.givens.concreteUnitWeight,
          lateralBearingPerDepth: ground.soil.lateralPerDepth * (ground.givens.lateralMultiplier ?? 1),
          lateralBearingCap: ground.soil.lateralCap ?? null,
          verticalLoad: Math.max(loads.compression, 0),
          momentAtGround: loads.moment,
          shearAtGround: loads.shear,
          layerThickness: 0.3048,
        });
        const toe = `by hand, in layers of a foot about the ground line, the factor is ${factorHand.toFixed(2)}; exactly, about the toe, ${factorExact.toFixed(2)}`;
        // the code's post formula is written for allowable lateral bearing
        const beside =
          ground.soil.values === "allowable" ? blockBeside(size, loads, ground.soil, ground.givens) : null;
        if (!beside) return toe;
        const feet = (beside.postDepth / 0.3048).toFixed(1);
        return `${toe}; with the soil's push in balance, ${beside.balancedFactor.toFixed(2)}; as an IBC 1807.3.2.1 post it would need ${feet} ft (${beside.postDepth.toFixed(2)} m)`;
      },
    },
    ground,
  );

export const pad = (
  row: PadRow,
  size: { width: number; thickness: number; depth: number },
  ground: Ground,
): FootingPart => {
  const geometry = { ...size, pedestal: row.pedestal };
  return footing(
    {
      choice: { kind: "pad", row: row.id, ...size },
      takeOff: padTakeOff(geometry),
      top: row.pedestal,
      resistance: (loads) => padResistance(geometry, loads, ground.soil, ground.givens),
    },
    ground,
  );
};

export const blockChoices = (row: BlockRow) =>
  sizesOf(row.width).flatMap((width) => sizesOf(row.depth).map((depth) => ({ width, depth })));

export const padChoices = (row: PadRow) =>
  sizesOf(row.width)
    .filter((width) => width >= row.pedestal)
    .flatMap((width) =>
      sizesOf(row.thickness).flatMap((thickness) =>
        sizesOf(row.depth)
          .filter((depth) => depth >= thickness)
          .map((depth) => ({ width, thickness, depth })),
      ),
    );

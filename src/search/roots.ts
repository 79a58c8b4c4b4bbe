import { fixedCents } from "../cost/bill.ts";
import type { ArmModel } from "../problem/torque-arm.ts";
import { type PackageModel, type Problem, type StackModel, sideHeight } from "../problem/types.ts";
import { partFeet } from "./floors.ts";
import { NOTHING } from "./ground.ts";
import type { Node, Root } from "./node.ts";
import { rootFloors } from "./root-floors.ts";
import { statics } from "./statics.ts";

/** What stands on a base, and where its top guys meet it. */
export interface Mount {
  readonly pack: PackageModel;
  readonly stack: StackModel;
  readonly arm: ArmModel | null;
}

/** Every root of a study: package by package, height by height, stack by stack, arm by arm. */
export const mountsOf = ({ packages, stacks, arms }: Problem): Mount[] =>
  packages.flatMap((pack) =>
    stacks.flat().flatMap((stack) => [null, ...arms].map((arm) => ({ pack, stack, arm }))),
  );

/** Antennas, steel, raising, permit: whole cents. */
export const mountCents = (problem: Problem, { pack, stack }: Mount): number =>
  fixedCents(problem, pack, stack.height) + stack.cents;

/** @param guys candidate heights, bottom up */
export function rootOf(problem: Problem, mount: Mount, index: number, guys: readonly number[]): Root {
  const { pack, stack, arm } = mount;
  const sides = pack.sides.map((side) => sideHeight(side, stack.height));
  const known = [0, ...guys, ...partFeet(stack).map((foot) => foot.z)];
  const apart = sides.filter((z) => !known.some((height) => Math.abs(height - z) < 1e-6));
  const heights = [...new Set([...known, ...apart])].sort((a, b) => a - b);
  const s = statics(problem, pack, stack, heights);
  return {
    ...mount,
    index,
    cents: mountCents(problem, mount),
    candidates: guys.map((z) => heights.indexOf(z)),
    statics: s,
    floors: rootFloors(problem, stack, s, arm !== null),
  };
}

/** The first node of a root: nothing but the root is chosen. */
export const rootNode = (root: Root, use: number, designs: number): Node => ({
  stage: "root",
  root,
  spent: root.cents,
  ground: NOTHING,
  use,
  designs,
  perLevel: 0,
  levels: [],
  star: null,
  guys: [],
  topStrands: [],
  uplift: 0,
  lateral: 0,
  thrust: 0,
  strands: [],
  tensions: [],
});

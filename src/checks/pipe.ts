import type { PackageModel, Problem } from "../problem/types.ts";
import { pipeMomentDemand } from "./loads.ts";
import type { MastMeasure } from "./mast-checks.ts";

/** Bending of the pipe that carries the antennas, at the mast top. It does not depend on the structure. */
export function pipeBending(problem: Problem, pack: PackageModel, height: number): MastMeasure {
  return {
    limitState: "pipe-bending",
    demand: pipeMomentDemand(problem, pack, height),
    capacity: pack.pipeStrength,
    ...problem.rules.pipe,
    of: 0,
    at: height,
  };
}

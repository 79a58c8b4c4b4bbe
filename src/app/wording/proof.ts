import type { Aim, Least } from "../../model/aim.ts";
import type { Proof } from "../../search/types.ts";
import { countText, money, type System } from "./figures.ts";

const seconds = (value: number): string => (value < 10 ? `${value.toFixed(1)} s` : `${Math.round(value)} s`);

const nothingBetter: Readonly<Record<Aim, string>> = {
  cost: "nothing cheaper is safe",
  concrete: "nothing with less concrete is safe",
  digging: "nothing with less digging is safe",
  margin: "nothing within the budget has more margin",
  height: "nothing higher is safe within the budget",
  area: "no larger antennas are safe within the budget",
};

/** The claim, with the counts that earn it. */
export const proofClaim = (
  status: "proven" | "searching" | "stopped" | "none-safe",
  proof: Proof,
  system: System,
  found = true,
  aim: Aim = "cost",
): string => {
  const grid = countText(proof.gridSize, system);
  const analysed = countText(proof.analysed, system);
  if (status === "proven") return `${grid} designs, ${analysed} analysed, ${nothingBetter[aim]}.`;
  if (status === "none-safe") return `${grid} designs, ${analysed} analysed, all fail.`;
  const decided = countText(proof.decided, system);
  if (status === "searching")
    return `${decided} of ${grid} designs decided, ${analysed} analysed. Not yet proven.`;
  if (!found)
    return `Stopped after ${seconds(proof.seconds)}: ${decided} of ${grid} designs decided, nothing safe found yet.`;
  return `Stopped after ${seconds(proof.seconds)}: ${decided} of ${grid} designs decided. It passes every check; a cheaper one may exist.`;
};

export const boundWords = (proof: Proof, total: number | null, aim: Least, system: System): string => {
  if (aim === "cost" && total !== null)
    return `Proven in ${seconds(proof.seconds)}: any other costs at least ${money(Math.max(proof.bound, 0), "$", system)}.`;
  return `Proven in ${seconds(proof.seconds)}.`;
};

/** Ticks of the bound's scale: round numbers that hold both ends with room. */
export const proofScale = (
  bound: number,
  best: number,
): { from: number; to: number; ticks: readonly number[] } => {
  const span = Math.max(best - bound, best * 0.05, 1);
  const rough = (span * 2.4) / 5;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((factor) => factor * power).find((value) => value >= rough) ?? 10 * power;
  const from = Math.max(0, Math.floor((bound - span * 0.9) / step) * step);
  const to = Math.ceil((best + span * 0.6) / step) * step;
  const ticks: number[] = [];
  for (let value = from; value <= to + step / 2; value += step) ticks.push(value);
  return { from, to, ticks };
};

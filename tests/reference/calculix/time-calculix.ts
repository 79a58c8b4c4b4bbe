import { calculixDeck } from "../../../src/report/reference/calculix-deck.ts";
import { benchMast } from "./masts.ts";
import { findCalculix, runCalculix } from "./run-calculix.ts";

/** Seconds that CalculiX takes for one case of the 24 m mast of two levels; undefined where it can't be had. */
export function timeCalculix(): { readonly seconds: number; readonly version: string } | undefined {
  const found = findCalculix();
  if (found.status === "missing") return undefined;
  const { deck } = calculixDeck(benchMast.input, benchMast.load);
  const start = performance.now();
  runCalculix(deck);
  return { seconds: (performance.now() - start) / 1000, version: found.version };
}

import type { Check } from "../model/verdict.ts";

/** The shortest road to failure: what fails, else the strength check that is used most. Checks stand in that order. */
export const governing = (checks: readonly Check[]): Check | undefined =>
  checks.find((check) => !check.passes && check.kind !== "warning") ??
  checks.find((check) => check.kind === "strength");

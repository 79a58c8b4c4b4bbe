import type { Catalog, RuleSet } from "../model/catalog.ts";
import type { Design } from "../model/design.ts";
import type { Study } from "../model/study.ts";
import type { Check } from "../model/verdict.ts";
import { compile, Uncovered } from "../problem/compile.ts";
import { DesignError } from "./resolve.ts";
import { verify } from "./verify.ts";

/** A design under one rule set of the catalog. */
export type UnderRuleSet = {
  readonly id: string;
  readonly name: string;
  /** Is it the one that the study names? */
  readonly own: boolean;
} & (
  | {
      readonly status: "judged";
      readonly passes: boolean;
      readonly smallestMargin: number;
      /** With utilisation, required factor and clause; the shortest road to failure first. */
      readonly checks: readonly Check[];
    }
  /** Its steel does not cover a part of the design, or the design is none of the study's. */
  | { readonly status: "refused"; readonly reason: string }
);

/** A design under one rule set of the catalog. */
export function underRuleSet(
  study: Study,
  catalog: Catalog,
  design: Design,
  { id, name }: RuleSet,
): UnderRuleSet {
  const head = { id, name, own: id === study.rules.set };
  try {
    const problem = compile({ ...study, rules: { ...study.rules, set: id } }, catalog);
    const { passes, smallestMargin, checks } = verify(problem, design);
    return { ...head, status: "judged", passes, smallestMargin, checks };
  } catch (error) {
    if (error instanceof Uncovered || error instanceof DesignError)
      return { ...head, status: "refused", reason: error.message };
    throw error;
  }
}

/**
 * The same mast on the same site under every rule set of the catalog: the same wind, each with its own factors. Only
 * the study's own rule set says whether the study's mast is safe.
 */
export const underRuleSets = (study: Study, catalog: Catalog, design: Design): UnderRuleSet[] =>
  catalog.rules.map((rules) => underRuleSet(study, catalog, design, rules));

import { z } from "zod";
import type { Catalog } from "../../model/catalog.ts";
import { foundText } from "../../model/input-error.ts";
import { describeIssues } from "../../model/issues.ts";
import { catenaryState, solveCatenary } from "../../physics/guy/catenary.ts";
import { parseQuantity } from "../../quantity/parse.ts";
import { type ClosedFormKind, closedFormCase, strandKind } from "./closed-form.ts";
import { guyedMastCase, REFERENCE_ELEMENTS } from "./guyed-mast.ts";
import { guyedMastSchema } from "./guyed-mast-schema.ts";

/** Numbers under the names that the case's author gave them, however deep. */
export interface ComputedBlock {
  readonly [name: string]: ComputedValue;
}
export type ComputedValue = number | string | boolean | null | ComputedBlock | readonly ComputedValue[];

export type CaseResult =
  | { readonly id: string; readonly kind: string; readonly computed: ComputedBlock }
  | { readonly id: string; readonly kind: string; readonly error: string };

export interface CaseContext {
  /** Answers the kind "strand". */
  readonly catalog: Catalog;
  /** Elements a span of a guyed mast; the reference mesh where left out. */
  readonly elementsPerSpan?: number;
}

const anyCase = z.object({
  id: z.string(),
  kind: z.string(),
  input: z.record(z.string(), z.unknown()),
});

/** ASTM A475's grades as the trade shortens them. */
const GRADES: Readonly<Record<string, string>> = {
  SM: "Siemens-Martin",
  HS: "High-Strength",
  EHS: "Extra-High-Strength",
};

/** A hundredth of a millimetre: nominal sizes lie further apart. */
const SAME_SIZE = 1e-5;

/** Finds a strand by its nominal diameter in inches, "3/16", and its grade, in full or as shortened. */
const strandsOf =
  ({ strand }: Catalog): Parameters<typeof strandKind>[0] =>
  (diameter, grade) => {
    const size = parseQuantity(`${diameter} in`, "size");
    if (!size.ok) return undefined;
    const row = strand.find(
      (s) => Math.abs(s.diameter - size.value) < SAME_SIZE && s.grade === (GRADES[grade] ?? grade),
    );
    return row && { breakingStrength: row.breakingStrength, weightPerLength: row.weight };
  };

const above = (name: string, value: number): number => {
  if (value > 0) return value;
  throw new RangeError(`input.${name}: found ${value}, expected a number above 0`);
};

/** A guy between two points, its unstressed length known. */
const catenary: ClosedFormKind = (given) => {
  const span = above("span", given.number("span"));
  const rise = given.number("rise");
  const length = above("unstressedLength", given.number("unstressedLength"));
  const stiffness = above("axialStiffness", given.number("axialStiffness"));
  const weight = above("weightPerLength", given.number("weightPerLength"));
  const state = catenaryState();
  solveCatenary(span, 0, rise, length, stiffness, 0, 0, -weight, state);
  if (!state.converged)
    throw new RangeError(
      `input.unstressedLength: found ${length}, expected a length that spans ${span} by ${rise}`,
    );
  return { horizontal: state.h, tensionTop: state.tensionMast, tensionAnchor: state.tensionAnchor };
};

/**
 * Puts any reference case to the project's own functions. What can't be read or done comes back as `error`,
 * naming the place, what was found and what was expected.
 */
export function runCase(outside: unknown, { catalog, elementsPerSpan }: CaseContext): CaseResult {
  const known = nameOf(outside);
  const read = anyCase.safeParse(outside);
  if (!read.success) return { ...known, error: firstSlip(read.error, outside) };
  if (read.data.kind !== "guyed-mast")
    return closedFormCase(read.data, { catenary, strand: strandKind(strandsOf(catalog)) });
  const mast = guyedMastSchema.safeParse(outside);
  if (!mast.success) return { ...known, error: firstSlip(mast.error, outside) };
  try {
    return guyedMastCase(mast.data, elementsPerSpan ?? REFERENCE_ELEMENTS);
  } catch (refusal) {
    if (refusal instanceof RangeError) return { ...known, error: `input: ${refusal.message}` };
    throw refusal;
  }
}

/** Id and kind of a case as far as it has them, so that an error can be told from its neighbours'. */
function nameOf(outside: unknown): { id: string; kind: string } {
  const { id, kind } = (typeof outside === "object" && outside !== null ? outside : {}) as Record<
    string,
    unknown
  >;
  return {
    id: typeof id === "string" ? id : "without an id",
    kind: typeof kind === "string" ? kind : "unknown",
  };
}

// a case is read with extra keys: none is unknown
const noSchema = z.any();

function firstSlip(error: z.ZodError, input: unknown): string {
  const [first] = describeIssues(error.issues, input, noSchema);
  return first
    ? `${first.path || "the case"}: ${first.message}`
    : `the case: found ${foundText(input)}, expected a reference case`;
}

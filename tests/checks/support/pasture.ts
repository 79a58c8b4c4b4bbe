import { readFileSync } from "node:fs";
import { defaultCatalog } from "../../../src/model/default-catalog.ts";
import { type Design, designSchema } from "../../../src/model/design.ts";
import { parseStudy } from "../../../src/model/parse.ts";
import type { StudyFile } from "../../../src/model/study.ts";
import type { Check, Verdict } from "../../../src/model/verdict.ts";
import { compile } from "../../../src/problem/compile.ts";
import type { Problem } from "../../../src/problem/types.ts";
import { FOOT } from "../../support/us-units.ts";

const file = (): StudyFile =>
  JSON.parse(readFileSync(new URL("../../../catalog/studies/upper-pasture.json", import.meta.url), "utf8"));

/** The demo study, with whatever is changed in it. */
export function pasture(change: (study: StudyFile) => void = () => {}): Problem {
  const study = file();
  change(study);
  const read = parseStudy(study, { catalog: defaultCatalog });
  if (!read.ok) throw new Error(read.errors.map(({ path, message }) => `${path}: ${message}`).join("; "));
  return compile(read.study, read.catalog);
}

const guyed: Design = {
  package: "beam-and-6m",
  height: 70 * FOOT,
  stack: [{ section: "3leg-13", length: 70 * FOOT }],
  guys: {
    perLevel: 3,
    radius: 36 * FOOT,
    rotation: 0,
    tension: 0.1,
    levels: [
      { height: 35 * FOOT, strand: "ehs-3-16" },
      { height: 65 * FOOT, strand: "ehs-1-4" },
    ],
    anchor: {
      kind: "deadman",
      row: "deadman",
      length: 5 * FOOT,
      height: 1.5 * FOOT,
      width: 1.5 * FOOT,
      depth: 5 * FOOT,
    },
  },
  footing: { kind: "block", row: "block", width: 3 * FOOT, depth: 3 * FOOT },
};

const standing: Design = {
  ...guyed,
  height: 40 * FOOT,
  stack: [{ section: "3leg-26", length: 40 * FOOT }],
  guys: null,
  footing: {
    kind: "pad",
    row: "pad",
    width: 7 * FOOT,
    thickness: 1.5 * FOOT,
    depth: 5 * FOOT,
    steel: 0.0018,
    mats: 2,
  },
};

/** A guyed mast of 70 ft on two levels that stands in the pasture, with whatever is changed in it. */
export const design = (change: Partial<Design> = {}): Design => designSchema.parse({ ...guyed, ...change });

/** A free-standing mast of 40 ft on a pad. */
export const freeStanding = (change: Partial<Design> = {}): Design =>
  designSchema.parse({ ...standing, ...change });

type Guys = NonNullable<Design["guys"]>;
export const withGuys = (change: Partial<Guys>): Design =>
  design({ guys: { ...(guyed.guys as Guys), ...change } });

export function check(verdict: Verdict, id: string): Check {
  const found = verdict.checks.find((c) => c.id === id);
  if (!found)
    throw new Error(`no check "${id}"; expected one of ${verdict.checks.map((c) => c.id).join(", ")}`);
  return found;
}

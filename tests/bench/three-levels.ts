import fc from "fast-check";
import upperPasture from "../../catalog/studies/upper-pasture.json" with { type: "json" };
import { analyse } from "../../src/checks/analysis.ts";
import { plateSide } from "../../src/checks/plate.ts";
import { resolve } from "../../src/checks/resolve.ts";
import { verify } from "../../src/checks/verify.ts";
import { type WindCase, windCases } from "../../src/checks/wind-cases.ts";
import type { Design } from "../../src/model/design.ts";
import type { StudyFile } from "../../src/model/study.ts";
import type { Problem } from "../../src/problem/types.ts";
import { problemOf } from "./studies.ts";

/** The fastest counts: a machine is never faster than it is, and often slower. */
const ROUNDS = 10;

const feet = (value: number) => `${value} ft`;

/** The demo's antennas and catalog at 100 ft, in an open field, under ice: three levels of three guys. */
const study = {
  ...(upperPasture as typeof upperPasture & StudyFile),
  site: {
    ...upperPasture.site,
    wind: { ...upperPasture.site.wind, speed: "105 mph" },
    ice: { thickness: "0.5 in", speed: "40 mph" },
  },
  lot: {
    corners: [
      [feet(0), feet(0)],
      [feet(300), feet(0)],
      [feet(300), feet(300)],
      [feet(0), feet(300)],
    ],
    mast: [feet(150), feet(150)],
    setback: feet(3),
  },
  wishes: { ...upperPasture.wishes, height: feet(100) },
  parts: {
    ...upperPasture.parts,
    mixedStacks: false,
    supports: ["guyed"],
    levelCounts: [3],
    levelHeights: { from: feet(25), to: feet(100), step: feet(5) },
    radius: { from: feet(40), to: feet(80), step: feet(2) },
  },
} as unknown as StudyFile;

function drawn(problem: Problem, places: readonly number[]): Design {
  let next = 0;
  const pick = <T>(from: readonly T[]): T => from[places[next++] % from.length];
  const { levelHeights: heights } = problem;
  const stack = pick(problem.stacks[0].filter(({ parts }) => parts[0].section.row.legs === 3));
  const low = pick(heights.slice(0, 4));
  const top = pick(heights.slice(-3));
  const middle = pick(heights.filter((z) => z > low + 1.6 && z < top - 1.6));
  return {
    package: problem.packages[0].row.id,
    height: stack.height,
    stack: stack.parts.map(({ section, length }) => ({ section: section.row.id, length })),
    guys: {
      perLevel: 3,
      radius: pick(problem.radii),
      rotation: 0,
      tension: pick(problem.study.parts.tensions),
      levels: [low, middle, top].map((height) => ({ height, strand: pick(problem.strands).id })),
      anchor: pick(problem.anchors).choice,
    },
    footing: pick(problem.footings).choice,
  };
}

/** How many designs, each unlike every other, are judged a second on one core. */
export interface Judged {
  readonly designs: number;
  readonly cases: number;
  /**
   * As the search judges: every case and check to the end, the worst utilisation of mast, guys, anchor and base. It
   * sizes an anchor or a base once a study, not once a design, so its parts are at hand.
   */
  readonly analysed: number;
  /** The same with wind at three azimuths, bare and iced, and no other case: how many those are, and the rate. */
  readonly threeWinds: number;
  readonly ofThreeWinds: number;
  /** As `verify` does: every case, with every response, buckling factor, frequency, bill and sentence. */
  readonly verified: number;
}

type Held = { readonly design: Design } & ReturnType<typeof resolve>;

/** Designs whose mast holds, so that none ends before its last case. */
export function judgeThreeLevels(count: number): Judged {
  const problem = problemOf(study);
  const keys = new Set<string>();
  const held: Held[] = [];
  const places = fc.array(fc.nat(1e6), { minLength: 16, maxLength: 16 });
  for (const at of fc.sample(places, { seed: 3, numRuns: 20 * count })) {
    if (held.length === count) break;
    const design = drawn(problem, at);
    const resolved = resolve(problem, design);
    const { model } = resolved;
    const key = JSON.stringify(design);
    if (keys.has(key) || !model.guys?.star.even) continue;
    keys.add(key);
    if (analyse(problem, model, { giveUpAbove: problem.allowed }).status === "complete")
      held.push({ design, ...resolved });
  }
  const cases = windCases(problem, held[0].model.guys);
  const six = cases.filter(({ id, toward }) => toward !== null && !id.startsWith("aslant"));
  const second = (judge: (held: Held) => void) => {
    const fastest = Array.from({ length: ROUNDS }, () => {
      const started = performance.now();
      for (const one of held) judge(one);
      return performance.now() - started;
    });
    return (1000 * held.length) / Math.min(...fastest);
  };
  const judged = (of: readonly WindCase[]) =>
    second(({ model, anchor, footing }) => {
      const result = analyse(problem, model, { giveUpAbove: problem.allowed, cases: of });
      if (result.status === "failed") throw new Error("a mast that held before fails now");
      anchor?.worst(result.anchors);
      footing.worst(result.bases, plateSide(model.stack));
    });
  return {
    designs: held.length,
    cases: cases.length,
    analysed: judged(cases),
    threeWinds: six.length,
    ofThreeWinds: judged(six),
    verified: second(({ design }) => verify(problem, design)),
  };
}

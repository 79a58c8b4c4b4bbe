import fc from "fast-check";
import upperPasture from "../../catalog/studies/upper-pasture.json" with { type: "json" };
import { analyse } from "../../src/checks/analysis.ts";
import { plateSide } from "../../src/checks/plate.ts";
import { resolve } from "../../src/checks/resolve.ts";
import { verify } from "../../src/checks/verify.ts";
import { windCases } from "../../src/checks/wind-cases.ts";
import type { Design } from "../../src/model/design.ts";
import type { StudyFile } from "../../src/model/study.ts";
import type { Problem } from "../../src/problem/types.ts";
import { problemOf } from "./studies.ts";

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
  /** As the search judges: every case and check to the end, the worst utilisation of mast, guys, anchor and base. */
  readonly analysed: number;
  /** As `verify` does: the same, with every response, buckling factor, frequency, bill and sentence. */
  readonly verified: number;
}

/** Designs whose mast holds, so that none ends before its last case. */
export function judgeThreeLevels(count: number): Judged {
  const problem = problemOf(study);
  const keys = new Set<string>();
  const held: Design[] = [];
  const places = fc.array(fc.nat(1e6), { minLength: 16, maxLength: 16 });
  for (const at of fc.sample(places, { seed: 3, numRuns: 20 * count })) {
    if (held.length === count) break;
    const design = drawn(problem, at);
    const { model } = resolve(problem, design);
    const key = JSON.stringify(design);
    if (keys.has(key) || !model.guys?.star.even) continue;
    keys.add(key);
    if (analyse(problem, model, { giveUpAbove: problem.allowed }).status === "complete") held.push(design);
  }
  const [first] = held;
  const second = (judge: (design: Design) => void) => {
    const fastest = [0, 1, 2].map(() => {
      const started = performance.now();
      for (const design of held) judge(design);
      return performance.now() - started;
    });
    return (1000 * held.length) / Math.min(...fastest);
  };
  return {
    designs: held.length,
    cases: windCases(problem, resolve(problem, first).model.guys).length,
    analysed: second((design) => {
      const { model, anchor, footing } = resolve(problem, design);
      const result = analyse(problem, model, { giveUpAbove: problem.allowed });
      if (result.status === "failed") throw new Error("a mast that held before fails now");
      anchor?.worst(result.anchors);
      footing.worst(result.bases, plateSide(model.stack));
    }),
    verified: second((design) => verify(problem, design)),
  };
}

import upperPasture from "../../catalog/studies/upper-pasture.json" with { type: "json" };
import { defaultCatalog } from "../../src/model/default-catalog.ts";
import { parseStudy } from "../../src/model/parse.ts";
import type { StudyFile } from "../../src/model/study.ts";
import { compile } from "../../src/problem/compile.ts";
import type { Problem } from "../../src/problem/types.ts";

type File = typeof upperPasture;
const base = upperPasture as File & StudyFile;

export interface BenchStudy {
  readonly name: string;
  readonly file: StudyFile;
}

export function problemOf(file: StudyFile): Problem {
  const read = parseStudy(file, { catalog: defaultCatalog });
  if (!read.ok) throw new Error(read.errors.map((error) => `${error.path}: ${error.message}`).join("; "));
  return compile(read.study, read.catalog);
}

const with_ = (name: string, parts: object, rest: Partial<StudyFile> = {}): BenchStudy => ({
  name,
  file: { ...base, ...rest, parts: { ...base.parts, ...parts } } as StudyFile,
});

/** One deadman and one block with few sizes: what makes a grid of designs small. */
const fewSizes = (lengths: readonly string[], widths: readonly string[]): Partial<StudyFile> =>
  ({
    catalog: {
      anchors: [
        {
          id: "bench-deadman",
          kind: "deadman",
          name: "Deadman of the bench",
          length: lengths,
          height: "1 ft",
          width: "1 ft",
          depth: ["4 ft", "6 ft"],
          bars: "#4",
          rod: "$38",
          invented: true,
        },
      ],
      footings: [
        {
          id: "bench-block",
          kind: "block",
          name: "Block of the bench",
          width: widths,
          depth: "2 ft 6 in",
          invented: true,
        },
      ],
    },
  }) as Partial<StudyFile>;

const few = { anchors: ["bench-deadman"], footings: ["bench-block"], mixedStacks: false, rotation: [0] };

/** Small enough for every design to be verified, each about three times the one before. */
export const enumerable: readonly BenchStudy[] = [
  with_(
    "2 sections, 2 levels",
    {
      ...few,
      supports: ["guyed"],
      sections: ["3leg-9-used", "3leg-9"],
      levelCounts: [2],
      levelHeights: ["20 ft", "70 ft"],
      strands: ["ehs-3-16", "ehs-1-4"],
      tensions: [0.1],
      radius: ["30 ft", "36 ft"],
    },
    fewSizes(["2 ft", "4 ft"], ["2 ft", "3 ft"]),
  ),
  with_(
    "2 sections, 1 or 2 levels",
    {
      ...few,
      supports: ["guyed"],
      sections: ["3leg-9-used", "3leg-9"],
      levelCounts: [1, 2],
      levelHeights: ["20 ft", "60 ft", "70 ft"],
      strands: ["ehs-3-16", "ehs-1-4"],
      tensions: [0.1],
      radius: ["30 ft", "36 ft"],
    },
    fewSizes(["2 ft", "4 ft"], ["2 ft", "3 ft"]),
  ),
  with_(
    "3 sections, 1 or 2 levels, 2 tensions",
    {
      ...few,
      supports: ["guyed"],
      sections: ["3leg-9-used", "3leg-9", "3leg-10.5"],
      levelCounts: [1, 2],
      levelHeights: ["20 ft", "40 ft", "70 ft"],
      strands: ["ehs-3-16", "ehs-1-4"],
      tensions: [0.08, 0.1],
      radius: ["30 ft", "36 ft"],
    },
    fewSizes(["2 ft", "4 ft"], ["2 ft", "3 ft"]),
  ),
  with_(
    "the same, 3 radii, 4 level heights",
    {
      ...few,
      supports: ["guyed"],
      sections: ["3leg-9-used", "3leg-9", "3leg-10.5"],
      levelCounts: [1, 2],
      levelHeights: ["20 ft", "40 ft", "60 ft", "70 ft"],
      strands: ["ehs-3-16", "ehs-1-4"],
      tensions: [0.08, 0.1],
      radius: ["30 ft", "34 ft", "38 ft"],
    },
    fewSizes(["2 ft", "4 ft"], ["2 ft", "3 ft"]),
  ),
];

/** More wind, more antenna, more height. */
const harder = (speed: string, height: string, area: string) =>
  ({
    site: { ...base.site, wind: { ...base.site.wind, speed } },
    wishes: {
      ...base.wishes,
      height,
      packages: [
        {
          id: "big",
          name: `A beam of ${area}`,
          pipe: "pipe-17",
          items: [{ area, areaKind: "round", weight: "120 lbf", above: "2 ft" }],
          cableWidth: "1 1/4 in",
        },
      ],
    },
  }) as unknown as Partial<StudyFile>;
const hard = harder("125 mph", "80 ft", "16 ft2");
const hardest = harder("120 mph", "90 ft", "12 ft2");

const axes = {
  narrow: {
    ...few,
    sections: "all",
    levelCounts: [1, 2],
    strands: ["ehs-3-16", "ehs-1-4", "ehs-5-16"],
    tensions: [0.1],
    radius: { from: "24 ft", to: "36 ft", step: "6 ft" },
  },
  middling: {
    mixedStacks: false,
    levelCounts: [1, 2],
    strands: ["ehs-3-16", "ehs-1-4", "ehs-5-16"],
    tensions: [0.1],
    radius: { from: "20 ft", to: "44 ft", step: "4 ft" },
  },
  wide: { mixedStacks: false },
  whole: {},
};
const levels = (to: number, step: number) => ({
  levelHeights: { from: "10 ft", to: `${to} ft`, step: `${step} ft` },
});

/** The demo study with its axes trimmed and whole, and the same under more wind with a bigger antenna, higher. */
export const grids: readonly BenchStudy[] = [
  with_(
    "ordinary, narrow",
    { ...axes.narrow, ...levels(70, 20) },
    fewSizes(["2 ft", "4 ft"], ["2 ft", "3 ft"]),
  ),
  with_("ordinary, middling", { ...axes.middling, ...levels(70, 10) }),
  with_("ordinary, wide", { ...axes.wide, ...levels(70, 5) }),
  with_("ordinary, whole", axes.whole),
  with_(
    "hard, narrow",
    { ...axes.narrow, ...levels(80, 20) },
    { ...hard, ...fewSizes(["4 ft", "8 ft"], ["3 ft", "4 ft"]) },
  ),
  with_("hard, middling", { ...axes.middling, ...levels(80, 10) }, hard),
  with_("hard, wide", { ...axes.wide, ...levels(80, 5) }, hard),
  with_("hard, whole", { ...axes.whole, ...levels(80, 5) }, hard),
  with_("hardest, wide", { ...axes.wide, ...levels(90, 5) }, hardest),
];

/** Walked by one worker and by two. */
export const forWorkers: BenchStudy = with_(
  "hardest, fewer levels",
  { ...axes.wide, ...levels(90, 10) },
  hardest,
);

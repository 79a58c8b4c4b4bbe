import upperPasture from "../../catalog/studies/upper-pasture.json" with { type: "json" };
import { defaultCatalog } from "../../src/model/default-catalog.ts";
import type { StudyFile } from "../../src/model/study.ts";
import { createThreads } from "../../workers/node-client.ts";

const demo = upperPasture as unknown as StudyFile;
const { prices } = defaultCatalog;

/** A given dragged through these values, each the study as it then stands. */
interface Drag {
  readonly given: string;
  readonly steps: readonly { readonly study: StudyFile; readonly catalog?: typeof defaultCatalog }[];
}

const wind = (speed: number): StudyFile =>
  ({ ...demo, site: { ...demo.site, wind: { ...demo.site.wind, speed: `${speed} mph` } } }) as StudyFile;
const soil = (id: string): StudyFile => ({ ...demo, site: { ...demo.site, soil: id } });
const wishes = (change: Partial<StudyFile["wishes"]>): StudyFile => ({
  ...demo,
  wishes: { ...demo.wishes, ...change },
});
const parts = (change: Partial<NonNullable<StudyFile["parts"]>>): StudyFile => ({
  ...demo,
  parts: { ...demo.parts, ...change },
});
const area = (squareFeet: number): StudyFile =>
  wishes({
    packages: [
      {
        ...demo.wishes.packages[0],
        items: [
          { area: `${squareFeet} ft2`, areaKind: "effective", weight: "90 lbf", above: "2 ft" },
          { antenna: "beam-6m", above: "5 ft 6 in" },
        ],
      },
    ],
  });
const concrete = (price: number) => ({
  study: demo,
  catalog: { ...defaultCatalog, prices: { ...prices, concrete: `$${price}/yd3` } } as typeof defaultCatalog,
});

const drags: readonly Drag[] = [
  { given: "price of concrete", steps: [160, 200, 260, 320, 240, 180].map(concrete) },
  { given: "soil", steps: ["ibc-4", "ibc-5", "ibc-3", "ibc-4", "ibc-5"].map((id) => ({ study: soil(id) })) },
  {
    given: "frost",
    steps: ["2 ft", "3 ft", "3 ft 6 in", "2 ft 6 in"].map((frostDepth) => ({
      study: { ...demo, site: { ...demo.site, frostDepth } },
    })),
  },
  {
    given: "lock on the radius",
    steps: ["34 ft", "32 ft", "36 ft", "40 ft", "30 ft"].map((radius) => ({
      study: parts({ radius: [radius] }),
    })),
  },
  {
    given: "lock on the section",
    steps: [["3leg-9"], ["3leg-9-used"], ["3leg-10.5"], ["3leg-9", "3leg-9-used"]].map((sections) => ({
      study: parts({ sections }),
    })),
  },
  { given: "wind", steps: [116, 117, 118, 119, 120, 114, 112].map((speed) => ({ study: wind(speed) })) },
  {
    given: "height",
    steps: ["80 ft", "70 ft", "60 ft", "50 ft", "70 ft"].map((height) => ({ study: wishes({ height }) })),
  },
  { given: "antenna area", steps: [7, 7.5, 8, 8.5, 9].map((feet) => ({ study: area(feet) })) },
  { given: "margin", steps: [0.02, 0.05, 0.1, 0.15].map((margin) => ({ study: wishes({ margin }) })) },
];

const middle = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];

/** The demo's answer again after an edit, as the page asks for it: two workers that have answered it before. */
export async function whatIf() {
  const rows: object[] = [];
  for (const { given, steps } of drags) {
    const pool = createThreads(2);
    try {
      await pool.find({ study: demo, catalog: defaultCatalog }, () => {});
      const times: number[] = [];
      for (const { study, catalog = defaultCatalog } of steps) {
        const started = performance.now();
        const { status } = await pool.find({ study, catalog }, () => {});
        if (status === "stopped") throw new Error(`${given}: stopped`);
        times.push(Math.round(performance.now() - started));
      }
      rows.push({
        dragged: given,
        edits: times.length,
        "answered at the median, ms": middle(times),
        "at worst, ms": Math.max(...times),
      });
    } finally {
      pool.dispose();
    }
  }
  return rows;
}

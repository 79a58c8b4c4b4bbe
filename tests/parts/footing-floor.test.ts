import fc from "fast-check";
import { expect, test } from "vitest";
import { footingParts } from "../../src/parts/index.ts";
import type { FootingLoads } from "../../src/parts/types.ts";
import { problemOf, smallStudy } from "../support/small-study.ts";

const share = fc.double({ min: 0, max: 1, noNaN: true });

test("floor(load) of every footing is never above worst of one with as much compression and no less shear and moment", () => {
  const sample = fc.sample(
    fc.record({
      file: smallStudy,
      stiffness: fc.constantFrom(undefined, 1e6, 5e6, 5e6),
      load: fc.record({
        compression: fc.double({ min: 1e3, max: 5e4, noNaN: true }),
        shear: fc.double({ min: 0, max: 5e3, noNaN: true }),
        moment: fc.constantFrom(0, 2e3, 5e3, 2e4),
      }),
      less: fc.record({ shear: share, moment: share }),
    }),
    { numRuns: 300, seed: 8 },
  );
  let asked = 0;
  let falls = 0;
  const wrong: string[] = [];
  for (const { file, stiffness, load, less } of sample) {
    const { ground, catalog } = problemOf(file);
    const sprung = { ...ground, baseStiffness: ground.insulators ? undefined : stiffness };
    const under: FootingLoads = {
      ...load,
      shear: less.shear * load.shear,
      moment: less.moment * load.moment,
    };
    for (const part of catalog.footings.flatMap((row) => footingParts(row, sprung)).slice(0, 200)) {
      asked++;
      const worst = part.worst([load], 0.4);
      // the whole of what it is asked may be less under more load: a footing that turns by its shear as well
      if (part.worst([under], 0.4) > worst * (1 + 1e-9)) falls++;
      if (part.floor(under, 0.4) > worst * (1 + 1e-9))
        wrong.push(`${JSON.stringify(part.choice)} under ${JSON.stringify([under, load])}`);
    }
  }
  console.log(`${asked} footings asked, ${falls} of them used more under less shear and moment`);
  expect(wrong).toEqual([]);
  expect(falls).toBeGreaterThan(100);
});

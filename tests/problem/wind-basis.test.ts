import { expect, test } from "vitest";
import type { StudyFile } from "../../src/model/study.ts";
import { latticeDrag } from "../../src/physics/wind/lattice-drag.ts";
import { latticeDragEn } from "../../src/physics/wind/lattice-drag-en.ts";
import { uniformLatticeFactor } from "../../src/physics/wind/uniform.ts";
import { pasture } from "../checks/support/pasture.ts";

type Wind = StudyFile["site"]["wind"];
const bases = {
  uniform: { basis: "uniform", pressure: "20 psf" },
  "asce7-16": { basis: "asce7-16", speed: "115 mph", exposure: "C" },
  "asce7-22": { basis: "asce7-22", speed: "115 mph", exposure: "C" },
  en1991: { basis: "en1991", basicSpeed: "25 m/s", terrain: "II" },
} as const satisfies Record<string, Wind>;
const drags = {
  uniform: uniformLatticeFactor,
  "asce7-16": latticeDrag,
  "asce7-22": latticeDrag,
  en1991: latticeDragEn,
} as const;

for (const name of ["uniform", "asce7-16", "asce7-22", "en1991"] as const) {
  const problem = (items: object[] = []) =>
    pasture((study) => {
      study.site.wind = bases[name];
      study.wishes.packages[0].items.push(...(items as never[]));
    });

  test(`a study under ${name} takes that basis's drag for three legs and for four, diagonal wind included`, () => {
    for (const id of ["3leg-13", "4leg-21"]) {
      const section = problem().sections.get(id);
      if (!section) throw new Error(`no section ${id}`);
      const { solidity, faceArea, roundShare } = section.lattice;
      expect(roundShare, id).toBe(1);
      const factor = (direction: "face" | "diagonal") =>
        drags[name]({ legs: section.row.legs, solidity, members: "round", direction });
      const worst = section.row.legs === 4 ? factor("diagonal") : factor("face");
      expect(worst).toBeGreaterThanOrEqual(factor("face"));
      expect(section.dragWidth).toBeCloseTo(worst * faceArea, 12);
    }
  });

  test(`areas of all three kinds weigh under ${name} as its table says, on the pipe and beside the mast`, () => {
    const kinds = ["flat", "round", "effective"] as const;
    const expected = name === "uniform" ? [1, 2 / 3, 1] : [2, 1.2, 1];
    const item = (areaKind: string) => ({ area: "10 ft2", areaKind, weight: "10 lbf" });
    const { packages } = problem([
      ...kinds.map((kind) => ({ ...item(kind), above: "3 ft" })),
      ...kinds.map((kind) => ({ ...item(kind), at: "40 ft" })),
    ]);
    const stated = 10 * 0.3048 ** 2;
    const factors = (list: readonly { dragArea: number; area: number }[]) =>
      list.filter(({ area }) => Math.abs(area - stated) < 1e-9).map(({ dragArea }) => dragArea / stated);
    for (const list of [factors(packages[0].antennas), factors(packages[0].sides)]) {
      expect(list).toHaveLength(3);
      list.forEach((factor, i) => {
        expect(factor).toBeCloseTo(expected[i], 12);
      });
    }
  });
}

test("the editions of ASCE 7 differ in their exposure constants alone: Kd once, the same Ke", () => {
  const at = (basis: "asce7-16" | "asce7-22", height: number, groundElevation: string) =>
    pasture((study) => {
      study.site.wind = { ...bases[basis], groundElevation };
    }).pressure(height);
  // 50 ft, exposure C: 1.0938 and 1.0882 by the two formulas
  expect(at("asce7-22", 15.24, "0 ft") / at("asce7-16", 15.24, "0 ft")).toBeCloseTo(1.0882 / 1.0938, 4);
  for (const basis of ["asce7-16", "asce7-22"] as const)
    expect(at(basis, 15.24, "5000 ft") / at(basis, 15.24, "0 ft")).toBeCloseTo(0.8344, 4);
});

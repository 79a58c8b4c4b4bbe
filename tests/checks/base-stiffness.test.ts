import { expect, test } from "vitest";
import { verify } from "../../src/checks/verify.ts";
import { defaultCatalog } from "../../src/model/default-catalog.ts";
import { check, design, freeStanding, pasture } from "./support/pasture.ts";

const on = (baseStiffness?: number) =>
  pasture((study) => {
    study.site.baseStiffness = baseStiffness;
  });
const top = (baseStiffness?: number) => {
  const { cases } = verify(on(baseStiffness), freeStanding());
  const still = cases.find((c) => c.frequencies);
  return {
    moves: cases[0].along.at(-1) ?? 0,
    buckles: cases[0].bucklingFactor,
    sways: still?.frequencies?.[0] ?? 0,
    moment: cases[0].base.moment,
  };
};

test("verify(baseStiffness) lets a mast without guys turn on its footing: it sways further and slower", () => {
  const stiff = top();
  const soft = top(2e6);
  expect(soft.moves).toBeGreaterThan(stiff.moves);
  expect(soft.buckles).toBeLessThan(stiff.buckles);
  expect(soft.sways).toBeLessThan(stiff.sways);
  // what the spring turns is the moment over its stiffness, and the top goes with it
  const turned = soft.moves - stiff.moves;
  expect(turned / ((soft.moment / 2e6) * 12.192)).toBeCloseTo(1, 1);
  expect(top(1e12).moves / stiff.moves).toBeCloseTo(1, 4);
});

test("verify(baseStiffness) leaves a guyed mast on its pin", () => {
  expect(verify(on(1e5), design()).cases[0].along).toEqual(verify(on(), design()).cases[0].along);
});

/** The pasture's ground with a subgrade modulus, MN/m3. */
const sprung = (modulus: number, baseStiffness: number) =>
  pasture((study) => {
    study.site.baseStiffness = baseStiffness;
    const soil = defaultCatalog.soils.find((row) => row.id === study.site.soil);
    if (!soil) throw new Error("the pasture's soil is not in the catalog");
    study.catalog = { soils: [{ ...soil, subgradeModulus: modulus * 1e6 }] };
  });

test("verify(baseStiffness) asks the footing for it, from the soil's subgrade modulus", () => {
  const asked = (modulus: number) => check(verify(sprung(modulus, 5e6), freeStanding()), "base-stiffness");
  // a pad of 7 ft, k B4/12 with 20 MN/m3 is 34.5 MN m/rad, less what the shear turns and the lifted side gives up
  expect(asked(20).passes).toBe(true);
  expect(asked(20).capacity).toBeLessThan(34.5e6);
  expect(asked(20).capacity).toBeGreaterThan(10e6);
  expect(asked(2).passes).toBe(false);
  expect(asked(20).capacity / asked(2).capacity).toBeCloseTo(10, 3);
});

test("verify(baseStiffness) on a soil that states no modulus fails and says what it wants", () => {
  const { passes, note } = check(verify(on(1e6), freeStanding()), "base-stiffness");
  expect(passes).toBe(false);
  expect(note).toMatch(/found no subgrade modulus of .*, expected one/);
  // a guyed mast stands on a pin and is not asked
  expect(check(verify(on(1e6), design()), "base-stiffness").passes).toBe(true);
});

import { expect, test } from "vitest";
import { verify } from "../../src/checks/verify.ts";
import { design, freeStanding, pasture } from "./support/pasture.ts";

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

test("compile(baseStiffness) says that the footing is not asked whether it has it", () => {
  expect(on(1e6).assumptions.join(" ")).toContain("resists turning as stated");
  expect(on().assumptions.join(" ")).not.toContain("resists turning");
});

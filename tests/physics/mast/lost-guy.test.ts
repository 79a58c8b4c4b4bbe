import { expect, test } from "vitest";
import { Mast } from "../../../src/physics/mast/solver.ts";
import type { LoadCase, MastInput } from "../../../src/physics/mast/types.ts";
import { along, segment, solved, star, wind } from "./support/masts.ts";

const anchors = star(3, 14);
const input: MastInput = {
  segments: [segment(0, 30, { ei: 5e5, ea: 8e7, ga: 5e6, weight: 150 })],
  base: "pinned",
  pointWeights: [{ z: 30, weight: 600, arm: 1.5 }],
  levels: [15, 28].map((z) => ({ z, anchors, ea: 4e6, weight: 1.8, tension: 3000 })),
};

test("solve(lost: a guy) leaves a mast in balance under the pull of the guys that are left", () => {
  const s = solved(input, { ...wind(), planar: false, lost: { level: 1, anchor: 0 } });
  const gone = s.mast.guys.find((guy) => guy.level === 1 && guy.anchor === 0);
  expect(gone?.state.tensionMast).toBe(0);
  expect([...(gone?.state.k ?? [1])].every((k) => k === 0)).toBe(true);
  // the others pull the mast away from the anchor that it lost, and what is left balances
  expect(along(s, 28)).toBeLessThan(-0.02);
  let force = s.mast.baseReaction[1];
  let up = s.mast.baseReaction[0] - 600 - 30 * 150;
  for (const { state } of s.mast.guys) {
    force += state.fx;
    up += state.fz;
  }
  expect(force).toBeCloseTo(0, 3);
  expect(up).toBeCloseTo(0, 3);
});

test("solve in a plane and in space agree on a lost guy, and the next case has all guys again", () => {
  const mast = new Mast(input);
  const lost: LoadCase = { ...wind(), toward: [-1, 0], lost: { level: 1, anchor: 0 } };
  const whole = { ...wind(), toward: [-1, 0] as const };
  expect(mast.solve(whole)).toBe(true);
  const before = [...mast.d];
  expect(mast.solve(lost) && mast.stable()).toBe(true);
  const plane = along({ mast, forces: undefined as never }, 28);
  const factor = mast.bucklingFactor();
  expect(mast.solve({ ...lost, planar: false }) && mast.stable()).toBe(true);
  expect(along({ mast, forces: undefined as never }, 28)).toBeCloseTo(plane, 9);
  expect(mast.bucklingFactor() / factor).toBeCloseTo(1, 8);
  expect(mast.solve(whole)).toBe(true);
  expect([...mast.d]).toEqual(before);
});

test("solve(lost: the only level's guy) of a pinned mast finds no stable rest", () => {
  const one: MastInput = { ...input, levels: [{ ...input.levels[1], anchors: star(4, 14).slice(0, 3) }] };
  const mast = new Mast(one);
  // two of four guys are left in one line: nothing holds across it
  expect(mast.solve({ ...wind(), planar: false, lost: { level: 0, anchor: 1 } }) && mast.stable()).toBe(
    false,
  );
});

import { expect, test } from "vitest";
import { footingParts } from "../../src/parts/index.ts";
import { pasture } from "../checks/support/pasture.ts";
import { FOOT } from "../support/us-units.ts";

const { ground, catalog } = pasture();
const piers = catalog.footings.flatMap((row) => (row.kind === "pier" ? footingParts(row, ground) : []));

/** Of the cage at this moment under grade, N m. */
const cageAt = (diameter: number, depth: number, moment: number) => {
  const part = piers.find(
    ({ choice }) =>
      choice.kind === "pier" &&
      Math.abs(choice.diameter - diameter) < 1e-9 &&
      Math.abs(choice.depth - depth) < 1e-9,
  );
  const measures = part?.measures([{ compression: 5000, shear: 500, moment, turn: 0 }], 0.3) ?? [];
  const cage = measures.find(({ limitState }) => limitState === "pier-bending");
  if (!cage) throw new Error("no pier of that size");
  return cage;
};

test("the cage of a stout pier is used more by its shear than by its bending: a short couple holds the moment", () => {
  const [stout, slim] = [cageAt(3 * FOOT, 3 * FOOT, 200_000), cageAt(2 * FOOT, 9 * FOOT, 50_000)];
  expect(stout.note).toMatch(/^its shear uses it more than its bending: \d/);
  expect(slim.note).not.toMatch(/shear/);
  // 1.6 of the moment and of 0.7 x 3 ft x 500 N is what bends it, which it would bear
  expect(1.6 * (200_000 + 0.7 * 3 * FOOT * 500)).toBeLessThan(stout.capacity);
  expect(stout.demand / stout.capacity).toBeGreaterThan(1);
  expect(slim.demand / slim.capacity).toBeLessThan(1);
});

test("the ties of every pier stand close enough to hold shear: 0.4 of its diameter (ACI 318-19 10.7.6.5.2, from memory)", () => {
  for (const { choice, bars } of piers) {
    if (choice.kind !== "pier") continue;
    const ties = bars.find(({ where }) => where === "ties");
    const along = choice.depth - 2 * 3 * 0.0254;
    expect(along / ((ties?.count ?? 0) - 1)).toBeLessThanOrEqual(0.4 * choice.diameter + 1e-9);
  }
});

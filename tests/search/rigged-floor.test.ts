import { expect, test } from "vitest";
import { analyse } from "../../src/checks/analysis.ts";
import { resolve } from "../../src/checks/resolve.ts";
import { SLACK } from "../../src/search/floors.ts";
import { riggedFloor, riggedLevel } from "../../src/search/rigged-floor.ts";
import { guysOf, Tree } from "../../src/search/tree.ts";
import { design, pasture } from "../checks/support/pasture.ts";

const heavilyHung = pasture((s) => {
  s.parts = { ...s.parts, guyHardware: { weight: "40 lbf", length: "3 ft", price: "$30" } };
});

test("riggedFloor(guys with heavy hardware) asks no more of an anchor than still air does", () => {
  const { model } = resolve(heavilyHung, design());
  if (!model.guys) throw new Error("a guyed design lost its guys");
  const result = analyse(heavilyHung, model);
  if (result.status !== "complete") throw new Error(`the design failed in ${result.limitState}`);
  const still = result.cases.find(({ wind }) => wind.id === "still");
  if (!still) throw new Error("no case in still air");
  const [{ uplift }] = still.anchors;
  const { star, levels } = model.guys;
  const floor = riggedFloor(levels.map((level) => riggedLevel(star, level)));
  expect(SLACK * floor.uplift).toBeLessThanOrEqual(uplift);
  // guys without their hardware would put the floor above the truth
  const bare = riggedFloor(levels.map((level) => riggedLevel(star, { ...level, hardware: undefined })));
  expect(SLACK * bare.uplift).toBeGreaterThan(uplift);
});

test("guysOf(node) hangs the study's hardware in every guy of the tree", () => {
  const [root] = new Tree(heavilyHung).roots();
  const [strand] = heavilyHung.strands;
  const guys = guysOf(
    { ...root, levels: [3, 1], strands: [strand, strand], tensions: [0.1, 0.1] },
    heavilyHung,
  );
  expect(guys.map(({ hardware }) => hardware)).toEqual([
    heavilyHung.study.parts.guyHardware,
    heavilyHung.study.parts.guyHardware,
  ]);
});

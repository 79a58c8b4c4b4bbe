import { expect, it } from "vitest";
import { verify } from "../../../src/checks/verify.ts";
import { givenOf } from "../../../src/report/sheets/given.ts";
import { baseDetail } from "../../../src/report/sheets/ground-details.ts";
import { tape } from "../../../src/report/sheets/words.ts";
import { design, pasture } from "../../checks/support/pasture.ts";
import { INCH } from "../../support/us-units.ts";

const problem = pasture((study) => {
  study.wishes.insulatedBase = true;
  const guyHardware = { weight: "6 lbf", price: "$14", breakingStrength: "6000 lbf" };
  study.parts = { ...study.parts, supports: ["guyed"], guyHardware };
});
const detail = (insulator: string | undefined) => {
  const on = design({ footing: { ...design().footing, insulator } });
  const base = insulator ? problem : pasture();
  const { drawing, scale } = baseDetail(givenOf(base, on, verify(base, on)));
  const words = drawing.shapes.flatMap((shape) => (shape.kind === "text" ? [shape.text] : []));
  const paths = drawing.shapes.flatMap((shape) => (shape.kind === "path" ? [shape] : []));
  const spans = (fill: string) =>
    paths
      .filter((path) => path.fill === fill)
      .map(({ points }) => {
        const levels = points.map(([, y]) => y);
        return {
          top: Math.min(...levels),
          metres: ((Math.max(...levels) - Math.min(...levels)) * scale) / 1000,
        };
      });
  return { words, insulators: spans("paper"), concrete: spans("concrete"), height: drawing.height, scale };
};

it("baseDetail(given) draws the insulator to scale between footing and mast, one that is too short on packing", () => {
  // a 9 in one where the tallest that the study may use is 13 in: 4 in of packing
  const short = detail("insulator-9");
  expect(short.insulators).toHaveLength(1);
  expect(short.insulators[0].metres).toBeCloseTo(9 * INCH, 6);
  expect(short.words).toEqual(expect.arrayContaining(["insulator", "packing", tape(13 * INCH)]));
  const packing = short.concrete.find(({ metres }) => Math.abs(metres - 4 * INCH) < 1e-6);
  const block = short.concrete.find(({ metres }) => Math.abs(metres - design().footing.depth) < 1e-6);
  // the block begins where the packing ends
  expect(block!.top - packing!.top).toBeCloseTo((4 * INCH * 1000) / short.scale, 6);
  const tall = detail("insulator-13");
  expect(tall.insulators[0].metres).toBeCloseTo(13 * INCH, 6);
  expect(tall.words).not.toContain("packing");
});

it("baseDetail(given) without an insulator is as high as its ground needs, and its mast is pinned to the block", () => {
  const bare = detail(undefined);
  expect(bare.insulators).toEqual([]);
  expect(bare.words).toContain("pinned base");
  expect(detail("insulator-13").height - bare.height).toBeCloseTo((13 * INCH * 1000) / bare.scale, 6);
});

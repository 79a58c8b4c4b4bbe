import { expect, test } from "vitest";
import { stackOf } from "../../src/problem/stacks.ts";
import type { SectionModel } from "../../src/problem/types.ts";
import { pasture } from "../checks/support/pasture.ts";

test("stackOf(parts) counts limited stock over all parts: nine pieces do not make two stacks of six", () => {
  const used = pasture().sections.get("3leg-9-used") as SectionModel;
  const ten = used.row.pieces[0].length;
  expect(used.row.pieces[0].have).toBe(9);
  const part = (pieces: number) => ({ section: used, length: pieces * ten });
  expect(stackOf([part(9)])?.cents).toBe(9 * 9600);
  expect(stackOf([part(6), part(3)])?.cents).toBe(9 * 9600);
  expect(stackOf([part(6), part(6)])).toBeNull();
});

import { expect, test } from "vitest";
import type { Design } from "../../src/model/design.ts";
import { designKey } from "../../src/model/design-key.ts";

const design: Design = {
  package: "beam",
  height: 9.144,
  stack: [{ section: "3leg-9", length: 9.144 }],
  guys: {
    perLevel: 3,
    radius: 6.096,
    rotation: 0,
    tension: 0.1,
    levels: [{ height: 7.62, strand: "ehs-3-16" }],
    anchor: { kind: "screw", row: "screw-7" },
  },
  footing: { kind: "block", row: "block", width: 0.6096, depth: 0.9144 },
};

test("designKey is one for designs that differ in the order of keys or in rounding", () => {
  const { package: first, ...rest } = design;
  const reordered = {
    ...rest,
    footing: { depth: 0.9144, width: 0.6096, row: "block", kind: "block" },
    package: first,
  };
  expect(designKey(reordered as Design)).toBe(designKey(design));
  expect(designKey({ ...design, height: 9.144 + 1e-9 })).toBe(designKey(design));
});

test("designKey differs with everything that a builder would do otherwise", () => {
  const guys = design.guys!;
  const others: Design[] = [
    { ...design, package: "other" },
    { ...design, height: 9.2 },
    { ...design, guys: null },
    { ...design, guys: { ...guys, radius: 6.2 } },
    { ...design, guys: { ...guys, rotation: 10 } },
    { ...design, guys: { ...guys, tension: 0.12 } },
    { ...design, guys: { ...guys, levels: [{ height: 7.62, strand: "ehs-1-4" }] } },
    { ...design, guys: { ...guys, anchor: { kind: "screw", row: "screw-9" } } },
    { ...design, footing: { kind: "block", row: "block", width: 0.6096, depth: 1 } },
  ];
  expect(new Set([design, ...others].map(designKey)).size).toBe(others.length + 1);
});

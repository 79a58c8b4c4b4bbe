import { expect, test } from "vitest";
import { steelCodes } from "../../../src/physics/steel/codes.ts";
import { type LatticeGeometry, latticeProperties } from "../../../src/physics/steel/lattice.ts";

// the table "Range of validity" of docs/theory/steel.md: a hair inside each is computed, a hair outside refused
const section: LatticeGeometry = {
  legs: 4,
  face: 0.5,
  leg: { diameter: 0.04 },
  bracing: { pattern: "single", member: { diameter: 0.016 } },
  panel: 0.5,
  yield: 250e6,
  modulus: 200e9,
  extraWeight: 0,
};
const slim = (ratio: number) => ({ diameter: 0.06, wall: 0.06 / ratio });
const angle = (ratio: number) => ({ angle: 0.06, thickness: 0.06 / ratio });
const bent = (code: keyof typeof steelCodes, ratio: number) =>
  steelCodes[code].bending(slim(ratio), 250e6, 200e9);
const epsilon = Math.sqrt(235 / 250);
type Change = Partial<LatticeGeometry>;
const aisc = (change: Change) => latticeProperties({ ...section, ...change });
const en = (change: Change) => latticeProperties({ ...section, ...change }, "en1993");
/** A diagonal of an X face, pressed or not, of any slenderness. */
const cross = (diameter: number, horizontal?: { diameter: number }) =>
  aisc({ bracing: { pattern: "x", member: { diameter, wall: diameter / 4 }, horizontal } });
const tie = (slenderness: number) => Math.SQRT1_2 / slenderness / (Math.sqrt(1 + 0.25) / 4);

const limits: readonly (readonly [string, () => unknown, () => unknown, RegExp])[] = [
  [
    "KL/r of a leg",
    () =>
      aisc({
        leg: { diameter: 4 * (0.5 / 199.9) },
        bracing: { pattern: "single", member: { diameter: 0.02 } },
      }),
    () => aisc({ leg: { diameter: 4 * (0.5 / 200.1) } }),
    /leg in compression, KL\/r: found 200\.1, expected at most 200 .*E2/,
  ],
  [
    "KL/r of a leg, EN",
    () => en({ leg: { diameter: 4 * (0.5 / 199.9) } }),
    () => en({ leg: { diameter: 4 * (0.5 / 200.1) } }),
    /leg in compression, KL\/r: found 200\.1, expected at most 200/,
  ],
  [
    "KL/r of a diagonal",
    () => aisc({ bracing: { pattern: "single", member: { diameter: 4 * (Math.hypot(0.5, 0.25) / 199.9) } } }),
    () => aisc({ bracing: { pattern: "single", member: { diameter: 4 * (Math.hypot(0.5, 0.25) / 200.1) } } }),
    /bracing in compression, KL\/r: found 200\.1/,
  ],
  [
    "KL/r of a horizontal that is pressed",
    () =>
      aisc({
        bracing: { pattern: "z", member: { diameter: 0.016 }, horizontal: { diameter: 4 * (0.5 / 199.9) } },
      }),
    () =>
      aisc({
        bracing: { pattern: "z", member: { diameter: 0.016 }, horizontal: { diameter: 4 * (0.5 / 200.1) } },
      }),
    /bracing in compression, KL\/r: found 200\.1/,
  ],
  [
    "L/r of a tube that only pulls",
    () => cross(tie(299.9), { diameter: 0.02 }),
    () => cross(tie(300.1), { diameter: 0.02 }),
    /only pulls, L\/r: found 300\.1, expected at most 300 .*D1/,
  ],
  [
    "an X that only pulls",
    () => cross(tie(199.9)),
    () => cross(tie(200.1)),
    /found diagonals of KL\/r 200 without horizontals/,
  ],
  [
    "D/t of a leg pressed",
    () => aisc({ leg: slim(359) }),
    () => aisc({ leg: slim(361) }),
    /D\/t 361.*expected at most 360 .*E7\.2/,
  ],
  ["D/t of a pipe bent", () => bent("aisc360", 359), () => bent("aisc360", 361), /D\/t 361.*F8/],
  [
    "b/t of an angle pressed",
    () => aisc({ leg: angle(20) }),
    () => aisc({ leg: angle(20.1) }),
    /b\/t: found 20\.1, expected at most 20\.08 .*E5/,
  ],
  [
    "yield",
    () => aisc({ yield: 690e6 }),
    () => aisc({ yield: 691e6 }),
    /found 691, expected at most 690 .*A3\.1/,
  ],
  [
    "d/t of a leg pressed, EN",
    () => en({ leg: slim(90 * epsilon ** 2 - 0.1) }),
    () => en({ leg: slim(90 * epsilon ** 2 + 0.1) }),
    /d\/t: found 84\.7, expected at most 84\.6 .*table 5\.2/,
  ],
  [
    "d/t of a pipe bent, EN",
    () => bent("en1993", 84.5),
    () => bent("en1993", 84.7),
    /pipe in bending, d\/t: found 84\.7, expected at most 84\.6/,
  ],
  [
    "b/t of an angle pressed, EN",
    () => en({ leg: angle(11.5 * epsilon - 0.01) }),
    () => en({ leg: angle(11.5 * epsilon + 0.01) }),
    /b\/t: found 11\.16, expected at most 11\.15/,
  ],
  [
    "flattest diagonal",
    () => aisc({ bracing: { pattern: "z", member: { diameter: 0.016 } }, panel: 0.5 * Math.tan(0.3495) }),
    () => aisc({ bracing: { pattern: "z", member: { diameter: 0.016 } }, panel: 0.5 * Math.tan(0.3485) }),
    /found diagonals at 20\.0 degrees, expected 20 to 70/,
  ],
  [
    "steepest diagonal",
    () =>
      aisc({
        bracing: { pattern: "z", member: { diameter: 0.04 } },
        leg: { diameter: 0.05 },
        panel: 0.5 * Math.tan(1.221),
      }),
    () =>
      aisc({
        bracing: { pattern: "z", member: { diameter: 0.04 } },
        leg: { diameter: 0.05 },
        panel: 0.5 * Math.tan(1.2225),
      }),
    /found diagonals at 70\.0 degrees, expected 20 to 70/,
  ],
  [
    "angles as legs",
    () => aisc({ leg: angle(10), legs: 4 }),
    () => aisc({ leg: angle(10), legs: 3 }),
    /found angles as legs of a triangular mast/,
  ],
];

test.each(limits)(
  "%s: a hair inside is computed, a hair outside is refused with the reason",
  (_, inside, outside, said) => {
    expect(inside()).toBeDefined();
    expect(outside).toThrow(RangeError);
    expect(outside).toThrow(said);
  },
);

test("rods that only pull have no limit of slenderness", () => {
  const rods = aisc({
    bracing: { pattern: "x", member: { diameter: 0.004 }, horizontal: { diameter: 0.02 } },
  });
  expect(rods.bracingSlenderness).toBeGreaterThan(300);
  expect(rods.shearStrength).toBeGreaterThan(0);
});

import { describe, expect, it, test } from "vitest";
import type { CatalogFile } from "../../../src/model/catalog.ts";
import { defaultCatalog } from "../../../src/model/default-catalog.ts";
import { parseCatalog } from "../../../src/model/parse.ts";
import { anchorParts } from "../../../src/parts/index.ts";
import { coneShare, coneSlice, rockRodCapacity, sliceShare } from "../../../src/physics/ground/rock-rod.ts";
import { upliftCone } from "../../../src/physics/ground/uplift-pyramid.ts";
import { pasture } from "../../checks/support/pasture.ts";
import { checkValue } from "../../support/check-values.ts";
import { FOOT, INCH } from "../../support/us-units.ts";

const RADIANS = Math.PI / 180;
const ANGLE = 30;
const SOCKET = 6 * FOOT;
const rock = { bearing: 0, lateralPerDepth: 0, unitWeight: 25_000, groutBond: 1e6 };
const rules = { concreteUnitWeight: 23_500, upliftAngle: ANGLE, lateralMultiplier: 1 as const };
const row = (rods: number, spacing?: number) =>
  rockRodCapacity({ bar: INCH, yield: 4e8, hole: 2 * INCH, socket: SOCKET, rods, spacing }, rock, rules);

/** Volume of the rock over a row of rods slanted b from the vertical, cut off by the ground, m3: counted in small cubes. */
function counted(rods: number, spacing: number, b: number, angle: number, cells = 150): number {
  const [sin, cos] = [Math.sin(b * RADIANS), Math.cos(b * RADIANS)];
  const deep = SOCKET * cos;
  const open = Math.cos(angle * RADIANS);
  const reach = SOCKET * sin + SOCKET * Math.tan((b + angle) * RADIANS) * cos;
  const aside = (SOCKET * cos * Math.tan(angle * RADIANS)) / Math.cos((b + angle) * RADIANS);
  const wide = (rods - 1) * spacing + 2 * aside;
  const [dx, dy, dz] = [(2 * reach) / cells, wide / cells, deep / cells];
  let inside = 0;
  for (let i = 0; i < cells; i++)
    for (let k = 0; k < cells; k++) {
      const x = -reach + (i + 0.5) * dx;
      const z = (k + 0.5) * dz;
      // over the tip, which stands at 0; the rod runs up and toward +x
      const along = x * sin + z * cos;
      if (along <= 0) continue;
      const inPlane = x * x + z * z;
      for (let j = 0; j < cells; j++) {
        const y = -aside + (j + 0.5) * dy;
        for (let rod = 0; rod < rods; rod++) {
          const off = y - rod * spacing;
          if (along >= open * Math.sqrt(inPlane + off * off)) {
            inside++;
            break;
          }
        }
      }
    }
  return inside * dx * dy * dz;
}

describe("a row of rock rods in one anchor", () => {
  it.each([1, 2, 3.5])(
    "coneSlice(half of %d ft) for each further rod counts overlapping cones once",
    (feet) => {
      checkValue({
        subject: `anchors: rock over a row of three rods ${feet} ft apart, 6 ft deep, cones of 30 degrees`,
        source:
          "cones counted in cubes of a hundredth of their size; overlap once, Littlejohn and Bruce 1977",
        tag: "arithmetic",
        expected: counted(3, feet * FOOT, 0, ANGLE),
        computed: upliftCone(0, SOCKET, ANGLE) + 2 * coneSlice(SOCKET, ANGLE, (feet * FOOT) / 2),
        tolerance: 0.01,
        unit: "m3",
      });
    },
  );

  it("rockRodCapacity(rods) is that of one by their number where they don't meet, and little more side by side", () => {
    const one = row(1);
    const apart = row(3, 2 * SOCKET * Math.tan(ANGLE * RADIANS) + 0.01);
    // slices of slanted cones may hold a little less than upright ones
    expect(apart.cone).toBeCloseTo((1 + 2 * sliceShare(ANGLE)) * one.cone, 6);
    expect(sliceShare(ANGLE)).toBeGreaterThan(0.97);
    expect(row(3, 1e-6).cone / one.cone).toBeCloseTo(1, 5);
    for (const what of ["steel", "bond"] as const) expect(apart[what]).toBeCloseTo(3 * one[what], 6);
    let before = 0;
    for (let s = 0.05; s < 3; s += 0.05) {
      const { cone } = row(4, s);
      expect(cone).toBeGreaterThanOrEqual(before);
      before = cone;
    }
  });

  it.each([20, 30, 38])("sliceShare(%d) is never above what a slanted slice holds along its rod", (angle) => {
    const share = Math.min(coneShare(angle), sliceShare(angle));
    for (const b of [10, 25, 40, 50].filter((slant) => slant + angle < 85))
      for (const spacing of [0.2, 0.6, 1.2]) {
        const slice = counted(2, spacing, b, angle, 110) - counted(1, spacing, b, angle, 110);
        const upright = coneSlice(SOCKET, angle, spacing / 2);
        expect(slice * Math.cos(b * RADIANS)).toBeGreaterThan(0.97 * share * upright);
      }
    expect(coneSlice(SOCKET, angle, 99)).toBeCloseTo(upliftCone(0, SOCKET, angle), 9);
  });

  const { ground } = pasture((study) => (study.site.soil = "ibc-2"));
  const written = (more: object): CatalogFile =>
    ({
      ...defaultCatalog,
      anchors: [
        {
          ...defaultCatalog.anchors.find(({ kind }) => kind === "rock-rod"),
          id: "row",
          socket: "4 ft",
          ...more,
        },
      ],
    }) as CatalogFile;

  test("anchorParts(a row of three) buys and drills three, and lifts ground that much wider", () => {
    const partOf = (more: object) => {
      const read = parseCatalog(written(more));
      if (!read.ok) throw new Error(read.errors[0].message);
      return anchorParts(read.catalog.anchors[0], ground)[0];
    };
    const one = partOf({});
    const three = partOf({ rods: 3, spacing: "2 ft" });
    expect(three.extras.map(({ quantity }) => quantity)).toEqual(
      one.extras.map(({ quantity }) => 3 * quantity),
    );
    expect(three.spread - one.spread).toBeCloseTo(2 * FOOT, 9);
    const pull = [{ uplift: 9000, lateral: 8000 }];
    expect(three.worst(pull)).toBeLessThan(one.worst(pull));
    expect(three.measures(pull)[0].note).toContain("of 3 rods together");
    expect(three.floor(9000, 8000)).toBeLessThanOrEqual(three.worst(pull) * (1 + 1e-12));
  });

  test("parseCatalog(a row without a spacing, or with rods nearer than four holes) is refused", () => {
    const said = (more: object) => {
      const read = parseCatalog(written(more));
      return read.ok ? [] : read.errors.map(({ message }) => message);
    };
    expect(said({ rods: 2 })[0]).toMatch(/expected how far apart the rods of a row are/);
    expect(said({ rods: 2, spacing: "5 in" })[0]).toMatch(/at least four holes, 0\.178 m/);
    expect(said({ rods: 2, spacing: "7 in" })).toEqual([]);
  });
});

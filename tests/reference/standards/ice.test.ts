import { test } from "vitest";
import { iceAt, iceWeight } from "../../../src/physics/wind/ice.ts";
import { pasture } from "../../checks/support/pasture.ts";
import { checkValue } from "../../support/check-values.ts";
import { FOOT, INCH, POUND } from "../../support/us-units.ts";

const row = (subject: string, clause: string, expected: number, computed: number, unit: string) =>
  checkValue({
    subject: `wind: ice, ${subject}`,
    source: `ASCE 7-16 ${clause}, from memory`,
    tag: "arithmetic",
    expected,
    computed,
    tolerance: 1e-4,
    unit,
  });

test("iceAt(thickness, height) is the map's times (z/33 ft)^0.10", () => {
  for (const [feet, expected] of [
    [33, 1],
    [100, 1.1172],
    [200, 1.1974],
    [900, 1.3918],
  ] as const)
    row(`height factor at ${feet} ft`, "equation 10.4-4", expected, iceAt(1, feet * FOOT), "");
  row("height factor above 900 ft", "equation 10.4-4", 1.4, iceAt(1, 1000 * FOOT), "");
});

test("iceWeight(diameter, thickness) is 56 lb/ft3 on pi t (D + t)", () => {
  // pi 0.5 (1 + 0.5) = 2.3562 in2
  row(
    "1/2 in on an inch round",
    "equation 10.4-1 and section 10.4.1",
    0.9163,
    (iceWeight(INCH, INCH / 2) * FOOT) / POUND,
    "lb/ft",
  );
});

test("a study's ice is t Ii fz Kzt^0.35 on its strand", () => {
  const problem = pasture((study) => {
    study.site.ice = { thickness: "0.75 in", speed: "40 mph", importance: 1.25 };
    study.site.wind = { ...study.site.wind, topographicFactor: 1.5 } as typeof study.site.wind;
  });
  const [strand] = problem.strands;
  const iced = problem.iced?.(70 * FOOT).strand(strand);
  // what the wind meets has grown by the ice on both sides
  const thickness = ((iced?.dragWidth ?? 0) / problem.roundFactor - 3 * strand.wire) / 2;
  // 0.75 x 1.25 x (70/33)^0.10 x 1.5^0.35
  row(
    "design thickness, 0.75 in, category IV, 70 ft, Kzt 1.5",
    "equation 10.4-5",
    1.16483,
    thickness / INCH,
    "in",
  );
  row(
    "weight on the strand at that thickness",
    "equation 10.4-1",
    problem.rules.iced.ice * iceWeight(3 * strand.wire, 1.16483 * INCH),
    iced?.weight ?? 0,
    "N/m",
  );
});

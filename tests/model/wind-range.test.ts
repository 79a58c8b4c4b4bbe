import { expect, test } from "vitest";
import { defaultCatalog } from "../../src/model/default-catalog.ts";
import { parseStudy } from "../../src/model/parse.ts";
import type { StudyFile } from "../../src/model/study.ts";
import { windReach } from "../../src/model/wind-range.ts";
import { type WindGivens, windAction } from "../../src/physics/wind/wind-action.ts";
import { pasture } from "../checks/support/pasture.ts";

const FOOT = 0.3048;

const read = (wind: StudyFile["site"]["wind"], height: string) => {
  let file: StudyFile | undefined;
  pasture((study) => (file = study));
  const study = file as StudyFile;
  return parseStudy(
    { ...study, site: { ...study.site, wind }, wishes: { ...study.wishes, height } },
    { catalog: defaultCatalog },
  );
};

const asce = { speed: 50, topographicFactor: 1, groundElevation: 0, gustFactor: 0.85 } as const;
const profiles: WindGivens[] = [
  {
    basis: "en1991",
    basicSpeed: 25,
    terrain: "II",
    orographyFactor: 1,
    airDensity: 1.25,
    structuralFactor: 1,
  },
  ...(["asce7-16", "asce7-22"] as const).flatMap((basis) =>
    (["B", "C", "D"] as const).map((exposure) => ({ basis, exposure, ...asce })),
  ),
];

test.each(profiles)("windReach($basis, $exposure) is where the profile itself ends", (wind) => {
  const { height } = windReach(wind);
  const { pressure } = windAction(wind);
  expect(pressure(height * (1 - 1e-9))).toBeGreaterThan(0);
  expect(() => pressure(height + 0.01)).toThrow(/found height/);
});

test.each([
  [{ basis: "uniform", pressure: "20 psf" }, "293 ft", "294 ft", /at most 91\.4 m: one pressure.*300 ft/],
  [{ basis: "en1991", basicSpeed: "25 m/s", terrain: "II" }, "198 m", "199 m", /at most 200\.0 m: .*4\.3\.2/],
] as const)("parseStudy(%j) takes a mast of %s and refuses one of %s", (wind, within, beyond, why) => {
  expect(read(wind, within).ok).toBe(true);
  const refused = read(wind, beyond);
  if (refused.ok) throw new Error("it should be refused");
  expect(refused.errors.map(({ path }) => path)).toEqual(["wishes.height"]);
  expect(refused.errors[0].message).toMatch(/found masts whose antennas reach .* m over the ground/);
  expect(refused.errors[0].message).toMatch(why);
});

test("a section whose faces the ice closes is left out, with the reason", () => {
  const frozen = pasture((study) => {
    study.site.ice = { thickness: "3.4 in", speed: "40 mph" };
  });
  const chosen = frozen.stacks.flat().flatMap(({ parts }) => parts.map(({ section }) => section.row.id));
  expect(chosen).not.toContain("3leg-7.5");
  expect(chosen).toContain("3leg-31");
  expect(frozen.assumptions.join(" ")).toMatch(
    /Section 3leg-7\.5 is left out, .*expected the face above the leg/,
  );
  expect(frozen.iced?.(70 * FOOT)).toBeDefined();
});

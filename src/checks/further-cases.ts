import type { PackageModel, Problem } from "../problem/types.ts";
import type { GuyModel } from "./rigging.ts";
import type { Upwind, WindCase } from "./wind-cases.ts";

/**
 * Cases that a study asks for beside wind and ice. They come after those, so that the search's first case stays the
 * one that kills; added cases only make more designs fail.
 * @param bare the wind cases without ice
 */
export function furtherCases(
  problem: Problem,
  guys: GuyModel | null,
  bare: readonly WindCase[],
): readonly WindCase[] {
  return [...airCases(problem, guys, bare), ...serviceCases(problem, bare), ...lossCases(problem, guys)];
}

/** Wind in the coldest and the hottest air. Without guys nothing holds the mast from growing. */
function airCases(problem: Problem, guys: GuyModel | null, bare: readonly WindCase[]): WindCase[] {
  const { temperature } = problem.study.site;
  if (!temperature || !guys) return [];
  const { installed, coldest, hottest } = temperature;
  return (
    [
      ["cold", coldest],
      ["hot", hottest],
    ] as const
  )
    .filter(([, air]) => air !== installed)
    .flatMap(([name, air]) =>
      bare.map((wind) => ({
        ...wind,
        id: `${wind.id}-${name}`,
        title: `${wind.title}, ${air} °C`,
        warmer: air - installed,
      })),
    );
}

/** The service wind, in which antennas must keep pointing where they should. */
function serviceCases({ study }: Problem, bare: readonly WindCase[]): WindCase[] {
  const { swayLimit, twistLimit, serviceWind } = study.wishes;
  if (swayLimit === undefined && twistLimit === undefined) return [];
  const [plain] = bare;
  return bare
    .filter(({ dead }) => dead === plain.dead)
    .map((wind) => ({
      ...wind,
      id: `${wind.id}-service`,
      title: `service wind: ${wind.title}`,
      dead: 1,
      share: serviceWind,
      purpose: "service" as const,
    }));
}

/** One guy of each level gone, the wind from its side: it pushes where the others pull. */
function lossCases(problem: Problem, guys: GuyModel | null): WindCase[] {
  if (!problem.study.wishes.lossOfOneGuy || !guys) return [];
  const { wind } = problem.rules.lossOfGuy;
  const { star, levels } = guys;
  // guys that are alike are lost alike
  const anchors = star.even ? [0] : star.anchors.map((_, anchor) => anchor);
  return levels.flatMap((_, level) =>
    anchors.map((anchor) => ({
      id: `lost-${level + 1}${star.even ? "" : `-${anchor + 1}`}`,
      title: `${star.even ? "a guy" : `guy ${anchor + 1}`} of level ${level + 1} lost${wind === 0 ? ", still air" : ", wind from its side"}`,
      toward: (180 + (360 * anchor) / star.perLevel) % 360,
      planar: star.even,
      weather: "bare" as const,
      dead: 1,
      share: wind,
      lost: { level, anchor },
      purpose: "accident" as const,
    })),
  );
}

/** Up to so many heights every pattern of sides is tried; the cases double with each. */
const EVERY_PATTERN = 4;

/**
 * Which heights of so many stand upwind, in turn; none of them is every case already. Every pattern up to four heights;
 * of more all, every other one, and all below or all above each of them.
 */
export function sidePatterns(heights: number): readonly Upwind[] {
  const all = 2 ** heights - 1;
  if (heights <= EVERY_PATTERN) return Array.from({ length: all }, (_, i) => all - i);
  const everyOther = Array.from({ length: heights }, (_, i) => (i % 2 === 0 ? 2 ** i : 0)).reduce(
    (a, b) => a + b,
  );
  const below = Array.from({ length: heights - 1 }, (_, i) => 2 ** (i + 1) - 1);
  return [all, everyOther, all - everyOther, ...below.flatMap((lower) => [lower, all - lower])];
}

/** Heights at which a package's antennas hang off the axis, at most: those on its pipe load the mast's top together. */
const heightsOf = ({ antennas, sides }: PackageModel): number =>
  Number(antennas.some(({ offset }) => offset > 0)) +
  new Set(sides.filter(({ offset }) => offset > 0).map(({ from, distance }) => `${from} ${distance}`)).size;

const upwindWords = (upwind: Upwind, heights: number): string => {
  if (upwind === 2 ** heights - 1) return "antennas beside it upwind";
  const places = Array.from({ length: heights }, (_, i) => i + 1).filter(
    (i) => Math.floor(upwind / 2 ** (i - 1)) % 2,
  );
  return `antennas beside it upwind at height ${places.join(", ")} of ${heights}, from the lowest up`;
};

/**
 * What hangs off the axis bends a guyed mast by its weight, which relieves one span as it strains the next: downwind is
 * worst for a mast without guys alone. Every wind again with them on the other side, and in every pattern of sides.
 */
export function otherSides({ packages }: Problem, cases: readonly WindCase[]): WindCase[] {
  const heights = Math.max(...packages.map(heightsOf));
  return sidePatterns(heights).flatMap((upwind) =>
    cases
      .filter(({ toward }) => toward !== null)
      .map((wind) => ({
        ...wind,
        id: `${wind.id}-upwind${upwind === 2 ** heights - 1 ? "" : `-${upwind}`}`,
        title: `${wind.title}, ${upwindWords(upwind, heights)}`,
        upwind,
      })),
  );
}

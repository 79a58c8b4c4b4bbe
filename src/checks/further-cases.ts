import type { Problem } from "../problem/types.ts";
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

const upwindWords: Readonly<Record<Upwind, string>> = {
  all: "antennas beside it upwind",
  first: "every other antenna beside it upwind, the lowest too",
  second: "every other antenna beside it upwind, from the second up",
};

/**
 * What hangs off the axis bends a guyed mast by its weight, which relieves one span as it strains the next: downwind is
 * worst for a mast without guys alone. Every wind again with them on the other side, and by turns where there are more.
 */
export function otherSides({ packages }: Problem, cases: readonly WindCase[]): WindCase[] {
  const most = Math.max(
    ...packages.map((pack) => [...pack.antennas, ...pack.sides].filter(({ offset }) => offset > 0).length),
  );
  const ways: readonly Upwind[] = most === 0 ? [] : most === 1 ? ["all"] : ["all", "first", "second"];
  return ways.flatMap((upwind) =>
    cases
      .filter(({ toward }) => toward !== null)
      .map((wind) => ({
        ...wind,
        id: `${wind.id}-upwind${upwind === "all" ? "" : `-${upwind}`}`,
        title: `${wind.title}, ${upwindWords[upwind]}`,
        upwind,
      })),
  );
}

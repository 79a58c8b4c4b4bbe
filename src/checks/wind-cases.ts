import type { IceFactors } from "../model/rule-set.ts";
import type { Problem } from "../problem/types.ts";
import { furtherCases, otherSides } from "./further-cases.ts";
import type { GuyModel } from "./rigging.ts";

/** Heights at which antennas hang off the axis, a bit each from the lowest up: 1 where they stand upwind of it. */
export type Upwind = number;

/** A load case: where the wind blows, in which weather, and what dead weight counts. */
export interface WindCase {
  readonly id: string;
  readonly title: string;
  /** Degrees from anchor 1; null in still air. */
  readonly toward: number | null;
  /** Do guys and wind share a mirror plane? */
  readonly planar: boolean;
  readonly weather: "bare" | "iced";
  /** Factors of a combination with ice. */
  readonly ice?: IceFactors;
  /** Factor on dead weight. */
  readonly dead: number;
  /** Share of the design wind; default all of it. */
  readonly share?: number;
  /** Air against that when the guys were rigged, K; default 0. */
  readonly warmer?: number;
  /** Which antennas that hang off the axis stand upwind of it; default 0, none. */
  readonly upwind?: Upwind;
  /** The guy that is gone. */
  readonly lost?: { readonly level: number; readonly anchor: number };
  /** What the case asks: that all holds (default), that antennas point, or that the mast outlives an accident. */
  readonly purpose?: "service" | "accident";
}

type Azimuth = Pick<WindCase, "id" | "title" | "toward" | "planar">;

/**
 * Wind azimuths that can govern, the killing one first: toward a guy (it slackens, two share the pull and the mast
 * leans furthest), away from one (it takes all), across, and 15 degrees off away, where the one guy is tightest by a
 * percent (docs/theory/checks.md). Four guys: along a pair, and between.
 */
const azimuths: Readonly<Record<0 | 3 | 4, readonly Azimuth[]>> = {
  0: [{ id: "wind", title: "wind, worst direction", toward: 0, planar: true }],
  3: [
    { id: "toward", title: "wind toward a guy", toward: 0, planar: true },
    { id: "away", title: "wind away from a guy", toward: 180, planar: true },
    { id: "across", title: "wind across a guy", toward: 90, planar: false },
    { id: "aslant", title: "wind 15 degrees off a guy", toward: 195, planar: false },
  ],
  4: [
    { id: "along", title: "wind along two guys", toward: 0, planar: true },
    { id: "between", title: "wind between guys", toward: 45, planar: true },
  ],
};

/** Where no two anchors are alike every guy has cases of its own, and no wind keeps the mast in a plane. */
const unevenAzimuths: Readonly<Record<3 | 4, readonly Azimuth[]>> = {
  3: azimuths[3].flatMap((wind) =>
    [0, 1, 2].flatMap((guy) => {
      const toward = (wind.toward as number) + 120 * guy;
      const ways = wind.id === "toward" || wind.id === "away" ? [toward] : [toward, 240 * guy - toward];
      return ways.map((way, side) => ({
        id: `${wind.id}-${guy + 1}${side === 0 ? "" : "-left"}`,
        title: `${wind.title.replace("a guy", `guy ${guy + 1}`)}${side === 0 ? "" : ", other side"}`,
        toward: ((way % 360) + 360) % 360,
        planar: false,
      }));
    }),
  ),
  4: azimuths[4].flatMap((wind) =>
    [0, 1, 2, 3].map((guy) => ({
      id: `${wind.id}-${guy + 1}`,
      title: `${wind.title}, toward ${guy + 1}${wind.id === "between" ? ` and ${((guy + 1) % 4) + 1}` : ""}`,
      toward: ((wind.toward as number) + 90 * guy) % 360,
      planar: false,
    })),
  ),
};
const still: Azimuth = { id: "still", title: "still air", toward: null, planar: true };

/** The cases of a problem by what they depend on in a structure: its search asks for them at every one. */
const kept = new WeakMap<Problem, Map<string, readonly WindCase[]>>();

/**
 * The load cases of verdict and search alike. Still air is the mast as rigged, dead weight as it is; ice comes
 * with its own wind and alone.
 */
export function windCases(problem: Problem, guys: GuyModel | null): readonly WindCase[] {
  const kind = guys ? `${guys.star.perLevel} ${guys.star.even} ${guys.levels.length}` : "";
  let ofProblem = kept.get(problem);
  if (!ofProblem) kept.set(problem, (ofProblem = new Map()));
  let cases = ofProblem.get(kind);
  if (!cases) ofProblem.set(kind, (cases = allCases(problem, guys)));
  return cases;
}

function allCases(problem: Problem, guys: GuyModel | null): readonly WindCase[] {
  const winds =
    guys && !guys.star.even ? unevenAzimuths[guys.star.perLevel] : azimuths[guys?.star.perLevel ?? 0];
  const { values: all, guyed = all.length } = problem.rules.deadFactors;
  const values = guys ? all.slice(0, guyed) : all;
  const bare = values.flatMap((dead) =>
    winds.map(
      (wind): WindCase => ({
        ...wind,
        id: values.length > 1 ? `${wind.id}-${dead}` : wind.id,
        title: dead === 1 ? wind.title : `${wind.title}, dead weight x ${dead}`,
        weather: "bare",
        dead,
      }),
    ),
  );
  const { iced: leading, icedWind } = problem.rules;
  const blown = problem.iced
    ? [
        winds.map((wind) => icedCase(problem, wind, leading, "iced", `ice and ${wind.title}`)),
        icedWind
          ? winds.map((wind) => icedCase(problem, wind, icedWind, "icy", `${wind.title}, ice along with it`))
          : [],
      ]
    : [];
  const iced = blown.flatMap((cases, i) => [
    ...cases,
    ...(i === 0 ? [stillCase(problem, "iced")] : []),
    ...relieved(cases, Math.min(...values)),
  ]);
  const cases = [...bare, ...iced, stillCase(problem, "bare"), ...furtherCases(problem, guys, bare)];
  return guys ? [...cases, ...otherSides(problem, cases)] : cases;
}

/** Dead weight holds the mast down in ice too: the least that it counts with bare, where its ice counts it with more. */
const relieved = (iced: readonly WindCase[], least: number): WindCase[] =>
  iced
    .filter(({ dead }) => least < dead)
    .map((wind) => ({
      ...wind,
      id: `${wind.id}-${least}`,
      title: `${wind.title}, dead weight x ${least}`,
      dead: least,
    }));

/** Ice hangs in freezing air, whatever the air was when the guys were rigged. */
function icedCase({ study }: Problem, wind: Azimuth, ice: IceFactors, id: string, title: string): WindCase {
  const { temperature } = study.site;
  return {
    ...wind,
    id: `${wind.id}-${id}`,
    title,
    weather: "iced",
    ice,
    dead: ice.dead,
    warmer: temperature && temperature.iced - temperature.installed,
  };
}

/** The mast as it stands in still air, bare or under the ice of the study. */
export const stillCase = (problem: Problem, weather: WindCase["weather"]): WindCase =>
  weather === "bare"
    ? { ...still, weather, dead: 1 }
    : icedCase(problem, still, problem.rules.iced, "iced", "ice in still air");

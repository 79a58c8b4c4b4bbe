import { pipeSlope } from "../physics/steel/pipe-slope.ts";
import { roundProperties } from "../physics/steel/round.ts";
import { sideHeight } from "../problem/types.ts";
import type { MastLimitState, MastMeasure, SolvedCase } from "./mast-checks.ts";

/** Steel pipe, Pa: AISC 360-16. */
const MODULUS = 200e9;
/** Pieces that the wind on the pipe itself is lumped in. */
const PIECES = 8;

const radians = (degrees: number) => (degrees * Math.PI) / 180;

/** Where an antenna hangs: the mast's own height there, and how far up its pipe. */
interface Place {
  readonly name: string;
  readonly z: number;
  readonly up: number;
}

const places = ({ model: { package: pack, stack } }: SolvedCase): Place[] => [
  ...pack.antennas.map(({ name, above }) => ({ name, z: stack.height, up: above })),
  ...pack.sides.map((side) => ({ name: side.name, z: sideHeight(side, stack.height), up: 0 })),
];

/** Turn of the pipe beyond that of the mast top, at a distance up it, in the case's share of the wind. */
function pipeTurn({ problem, model: { package: pack, stack }, wind }: SolvedCase, up: number): number {
  if (up === 0) return 0;
  const share = wind.share ?? 1;
  const { area, radiusOfGyration } = roundProperties(pack.pipe);
  const piece = pack.exposed / PIECES;
  const forces = [
    ...pack.antennas.map(({ above, dragArea }) => ({
      force: share * problem.pressure(stack.height + above) * dragArea,
      at: above,
    })),
    ...Array.from({ length: PIECES }, (_, i) => {
      const at = (i + 0.5) * piece;
      return { force: share * problem.pressure(stack.height + at) * pack.pipeDragWidth * piece, at };
    }),
  ];
  return pipeSlope(forces, up, MODULUS * area * radiusOfGyration ** 2);
}

const asked = (c: SolvedCase, limit: number | undefined): limit is number =>
  limit !== undefined && c.wind.purpose === "service";

/** The antenna that is worst off. */
function worstOf(
  c: SolvedCase,
  limitState: string,
  limit: number,
  demand: (place: Place) => number,
): MastMeasure[] {
  const all = places(c).map((place) => ({ place, turn: demand(place) }));
  const { place, turn } = all.reduce((a, b) => (b.turn > a.turn ? b : a));
  return [
    {
      limitState,
      demand: turn,
      capacity: radians(limit),
      required: 1,
      source: "stated by the study",
      of: 0,
      at: place.z + place.up,
      note: `at ${place.name}, in ${(100 * (c.wind.share ?? 1)).toFixed(0)} % of the design wind`,
    },
  ];
}

/** Turn of every antenna from plumb in the service wind: that of the mast there, and of its pipe. */
export const sway: MastLimitState = {
  id: "sway",
  title: "Sway of antennas",
  unit: "angle",
  kind: "limit",
  measure(c) {
    const limit = c.problem.study.wishes.swayLimit;
    if (!asked(c, limit)) return [];
    const { mast } = c;
    return worstOf(c, sway.id, limit, ({ z, up }) => {
      const at = mast.nodeAt(z) * mast.perNode;
      return Math.hypot(mast.d[at + 2], mast.perNode === 5 ? mast.d[at + 4] : 0) + pipeTurn(c, up);
    });
  },
};

/** Turn of every antenna about the mast's axis in the service wind. */
export const twistAtAntennas: MastLimitState = {
  id: "twist",
  title: "Twist of antennas",
  unit: "angle",
  kind: "limit",
  measure(c) {
    const limit = c.problem.study.wishes.twistLimit;
    if (!asked(c, limit)) return [];
    return worstOf(c, twistAtAntennas.id, limit, ({ z }) => c.twist?.turn[c.mast.nodeAt(z)] ?? 0);
  },
};

import { catenaryState, solveCatenary } from "../../physics/guy/catenary.ts";
import { isTaut, type SwungGuy, secondsForSwings, tensionFromSwings } from "../../physics/guy/swings.ts";
import { STEEL_EXPANSION } from "../../physics/steel/expansion.ts";
import type { Given, Level } from "./given.ts";
import type { Band, Cell, Section } from "./types.ts";
import { both, figure } from "./words.ts";

/** Fahrenheit: what a crew meets. */
const AIR = [-20, -5, 10, 25, 40, 50, 60, 70, 80, 95, 110];
const COUNTS = [10, 20] as const;

const celsius = (fahrenheit: number) => (fahrenheit - 32) / 1.8;
const fahrenheit = (air: number) => 1.8 * air + 32;
export const airWords = (air: number): string => `${Math.round(fahrenheit(air))} °F`;

/** The rows of the table: what a crew meets, and the air that the guys are cut for. */
const airs = (rigged: number): number[] =>
  [...new Set([...AIR, Math.round(fahrenheit(rigged))])].sort((a, b) => a - b);

/** Tension at the anchor end of a guy cut for the reference air, N: mast plumb, ground still. */
export function tensionAt(level: Level, air: number, mastWarms: boolean): number {
  const grown = 1 + STEEL_EXPANSION * (air - level.rigged);
  const state = catenaryState();
  const rise = level.height * (mastWarms ? grown : 1) - level.elevation;
  // the strand keeps its weight when it grows
  solveCatenary(
    level.span,
    0,
    rise,
    level.unstressed * grown,
    level.stiffness,
    0,
    0,
    -level.weight / grown,
    state,
  );
  return state.tensionAnchor;
}

/** One guy swung by hand: its strand and what the study states of its hardware, between its ends. */
export const swung = (level: Level): SwungGuy => ({
  guyWeight: level.weight * level.unstressed,
  guyLength: level.chord,
});

export function tensionSheet(given: Given): Band[] {
  if (given.levels.length === 0)
    return [
      {
        kind: "whole",
        sections: [
          {
            title: "No guys",
            parts: [{ kind: "words", text: "This mast stands free: there is no tension to set." }],
          },
        ],
      },
    ];
  return [{ kind: "whole", sections: [wanted(given), byAir(given), swings(given), practice] }];
}

const wanted = ({ rigs }: Given): Section => ({
  title: "Initial tension",
  gloss: `at the anchor end, ${airWords(rigs[0].rigged)}, still air, mast plumb`,
  parts: [
    {
      kind: "table",
      head: ["Level", "At", "Chord", "Of breaking strength", "Tension", "Weight of one guy"],
      rows: rigs.map((level) => [
        `${level.name} (${level.letter})`,
        both(level.height, "feet"),
        both(level.chord, "feet"),
        figure(level.tension / level.strand.breakingStrength, "share", 1),
        both(level.tension, "force"),
        figure(level.weight * level.unstressed, "force", 1),
      ]),
    },
    ...(rigs.some(({ arm }) => arm)
      ? [
          {
            kind: "words" as const,
            text: "On torque arms every anchor has two guys, one to the tip on either side: both to this tension, drawn by turns a little at a time, and read against each other. Where one is tauter the mast is turned.",
          },
        ]
      : []),
  ],
});

/** Mast and strand warm alike; beside it, a mast that stays as cool as it was rigged in the shade of morning. */
const byAir = ({ rigs }: Given): Section => ({
  title: "Tension against air temperature",
  gloss: "lbf, N small, at the anchor end; seconds for 20 swings",
  parts: [
    {
      kind: "table",
      head: ["Air", ...rigs.flatMap(({ name }) => [name, "strand alone", "20 swings"])],
      heavy: [airs(rigs[0].rigged).indexOf(Math.round(fahrenheit(rigs[0].rigged)))],
      rows: airs(rigs[0].rigged).map((degrees) => {
        const air = celsius(degrees);
        return [
          both(air, "celsius", 0),
          ...rigs.flatMap((level): Cell[] => {
            const tension = tensionAt(level, air, true);
            return [
              both(tension, "force"),
              figure(tensionAt(level, air, false), "force"),
              isTaut(swung(level), tension)
                ? figure(secondsForSwings(swung(level), tension, 20), "time", 1)
                : "too slack",
            ];
          }),
        ];
      }),
    },
    {
      kind: "words",
      text: `First column of a level: mast and strand, both steel, warm alike, the mast grows with the air. “Strand alone”: the mast stays as at ${airWords(rigs[0].rigged)}. Set the first column on a dull, calm day, when mast and strand have the temperature of the air. Steel grows 11.7 millionths a kelvin (from memory). Anchors and ground do not move.`,
    },
  ],
});

function swings({ rigs }: Given): Section {
  return {
    title: "Swings to count at the wanted tension",
    gloss: "swing a guy sideways by hand, count over-and-back, time with a watch",
    parts: [
      {
        kind: "table",
        head: [
          "Level",
          "Swings",
          "Seconds",
          "Half a swing fewer counted",
          "Half a swing more",
          "Half a swing and 0.1 s",
        ],
        rows: rigs.flatMap((level) =>
          COUNTS.map((count): Cell[] => {
            const guy = swung(level);
            if (!isTaut(guy, level.tension))
              return [`${level.name} (${level.letter})`, `${count}`, "too slack", "", "", ""];
            const seconds = secondsForSwings(guy, level.tension, count);
            const at = (n: number) => tensionFromSwings(guy, n, seconds).tension / level.tension - 1;
            const band = tensionFromSwings(guy, count, seconds);
            return [
              `${level.name} (${level.letter})`,
              `${count}`,
              figure(seconds, "time", 2),
              `reads ${percentOf(at(count - 0.5))}`,
              `reads ${percentOf(at(count + 0.5))}`,
              `${pounds(band.least)} to ${pounds(band.most)} lbf`,
            ];
          }),
        ),
      },
      {
        kind: "words",
        text: "T = W L N² / (8.05 t²): tension in lbf, weight W of one guy in lbf with all that hangs on it, chord L in ft, N swings in t seconds (common practice; 8.05 is g/4 rounded). W here holds the insulators and hardware that the study states; where there are others, weigh them and add. A pulse struck near the anchor returns as often as the guy swings. The count reads the tension at half height, a little above that at the anchor.",
      },
    ],
  };
}

const practice: Section = {
  title: "Order of work",
  parts: [
    {
      kind: "ticks",
      steps: [
        "Air temperature read in the shade: ______ °F, no wind to speak of",
        "All turnbuckles with equal thread left; lowest level first, each guy of a level by turns, a third of the tension at a time",
        "Mast plumbed in two directions after each round (transit or plumb line)",
        "Every guy counted twice: the two tensions of one guy agree, and guys of a level agree with each other",
        "Turnbuckles locked with wire; ends and locks seen by a second person",
        "Counted again after a month and after the first storm",
      ],
    },
  ],
};

const percentOf = (share: number) => `${Math.abs(share * 100).toFixed(0)} % ${share < 0 ? "low" : "high"}`;
const pounds = (force: number) => (force / 4.4482216152605).toFixed(0);

import type { Given } from "./given.ts";
import type { Cell, Section } from "./types.ts";
import { both, figure } from "./words.ts";

const greatest = (values: readonly number[]): number => Math.max(0, ...values.map(Math.abs));

/** How the mast as rigged sways: what gusts and vortices meet. */
export function frequencies({ verdict }: Given): Section[] {
  const found = verdict.cases.find((c) => c.frequencies)?.frequencies ?? [];
  if (found.length === 0) return [];
  return [
    {
      title: "Sway frequencies",
      gloss: "of the mast as rigged, in still air, without ice; a third of each guy's mass sways with it",
      parts: [
        {
          kind: "table",
          head: ["Mode", "Frequency", "Period"],
          rows: found.map((frequency, i): Cell[] => [
            `${i + 1}`,
            `${frequency.toFixed(2)} Hz`,
            `${(1 / frequency).toFixed(2)} s`,
          ]),
        },
      ],
    },
  ];
}

/** What antennas beside the axis turn; nothing where there are none. */
export function twists({ verdict }: Given): Section[] {
  const turned = verdict.cases.filter((c) => c.twist);
  if (turned.length === 0) return [];
  return [
    {
      title: "Twist about the axis",
      gloss:
        "antennas beside the mast, torque of either sense; guys end on the axis and hold nothing against it",
      parts: [
        {
          kind: "table",
          head: ["Case", "Greatest twist", "Torque on the base"],
          rows: turned.map((c): Cell[] => [
            c.title,
            figure(greatest(c.twist ?? []), "angle", 2),
            both(c.torque?.[0] ?? 0, "moment"),
          ]),
        },
        {
          kind: "words",
          text: "The base is held against twist, on a pin too: its plate and bolts must bear the torque above.",
        },
      ],
    },
  ];
}

export const guyForces = ({ verdict, levels }: Given): Section => ({
  title: "Greatest guy tensions",
  gloss: "at the mast end, whole load",
  parts: [
    {
      kind: "table",
      head: ["Level", "Case", "Greatest", "Breaking strength", "Share", "Slackest"],
      words: [1],
      rows: levels.map((level, i): Cell[] => {
        const pulls = verdict.cases.flatMap((c) =>
          c.guys
            .filter((guy) => guy.level === i + 1)
            .map((guy) => ({ c, tension: Math.max(guy.tensionMast, guy.tensionAnchor) })),
        );
        const worst = pulls.reduce((a, b) => (b.tension > a.tension ? b : a));
        const slackest = pulls.reduce((a, b) => (b.tension < a.tension ? b : a));
        return [
          level.name,
          worst.c.title,
          both(worst.tension, "force"),
          both(level.strand.breakingStrength, "force"),
          figure(worst.tension / level.strand.breakingStrength, "share", 0),
          both(slackest.tension, "force"),
        ];
      }),
    },
  ],
});

/** The hand method beside the exact one, in the first case: why it is not what the mast is built by. */
export function byHand({ verdict, levels }: Given): Section[] {
  const windy = verdict.cases.find((c) => c.hand);
  const hand = windy?.hand;
  if (!windy || !hand) return [];
  return [
    {
      title: "The hand method beside the exact one",
      gloss: windy.title,
      parts: [
        {
          kind: "table",
          head: [
            "Level",
            "Thrust by hand",
            "Exact",
            "Hand / exact",
            "Pull of one guy by hand",
            "Tightest, exact",
          ],
          rows: levels.map((level, i): Cell[] => [
            level.name,
            both(hand.thrusts[i], "force"),
            both(hand.exact[i], "force"),
            (hand.thrusts[i] / hand.exact[i]).toFixed(2),
            both(hand.tensions[i], "force"),
            both(
              Math.max(...windy.guys.filter((guy) => guy.level === i + 1).map((guy) => guy.tensionMast)),
              "force",
            ),
          ]),
        },
        {
          kind: "words",
          text: "By hand: thrusts in proportion to height that balance the wind's moment about the base, one guy alone against each, no initial tension. It is right for one level only; with more, the lowest level gets 0.3 to 0.6 of its true thrust and the top up to 2.5 times, and leaving out the initial tension is always unsafe (docs/theory/tension.md).",
        },
      ],
    },
  ];
}

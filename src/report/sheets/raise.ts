import { sideHeight } from "../../problem/types.ts";
import { lowerFirst } from "../names.ts";
import { elevation, joints } from "./elevation.ts";
import type { Given } from "./given.ts";
import type { Band, Cell, Section } from "./types.ts";
import { figure, sectionName, strandName, tape } from "./words.ts";

export function raiseSheet(given: Given): Band[] {
  const drawn = elevation(given);
  return [
    {
      kind: "pair",
      left: [
        {
          title: "Elevation",
          gloss: `1 : ${drawn.scale} on paper printed full size`,
          parts: [drawn.drawing],
        },
      ],
      right: [
        stack(given),
        ...(given.levels.length > 0 ? [guys(given)] : []),
        ...arms(given),
        ...(given.model.package.antennas.length > 0 ? [top(given)] : []),
        ...(given.model.package.sides.length > 0 ? [beside(given)] : []),
        danger(given),
      ],
    },
    {
      kind: "whole",
      sections: [
        {
          title: "Raise",
          gloss: "common practice, no source; tick, name, date",
          parts: [{ kind: "ticks", steps: steps(given) }],
        },
      ],
    },
  ];
}

function stack(given: Given): Section {
  const name = (id: string) => {
    const row = given.problem.catalog.sections.find((one) => one.id === id);
    return row ? sectionName(row) : id;
  };
  const all = joints(given);
  // pieces alike one above another stand in one row
  const rows: { from: number; to: number; length: number; section: string; top: number }[] = [];
  all.forEach(({ length, section, top }, i) => {
    const last = rows.at(-1);
    if (last && last.section === section && Math.abs(last.length - length) < 1e-6) {
      last.to = i + 1;
      last.top = top;
    } else rows.push({ from: i + 1, to: i + 1, length, section, top });
  });
  return {
    title: "Sections",
    gloss: "from the base up",
    parts: [
      {
        kind: "table",
        head: ["No.", "Section", "Each", "Top at"],
        words: [1],
        rows: rows.map((row): Cell[] => [
          row.from === row.to ? `${row.from}` : `${row.from}–${row.to}`,
          name(row.section),
          figure(row.length, "feet"),
          figure(row.top, "feet"),
        ]),
      },
    ],
  };
}

const guys = (given: Given): Section => ({
  title: "Guys",
  gloss: `${given.perLevel} a level${given.levels.some(({ arm }) => arm) ? ", twice as many on torque arms" : ""}, tension on sheet 4`,
  parts: [
    {
      kind: "table",
      head: ["Level", "Strand", "At"],
      words: [1],
      rows: given.levels.map((level): Cell[] => [
        `${level.letter}, ${lowerFirst(level.name)}`,
        strandName(level.strand),
        figure(level.height, "feet"),
      ]),
    },
  ],
});

/** Torque arms: where their tips stand, so that each anchor sees two. */
const arms = (given: Given): Section[] => {
  const armed = given.levels.filter(({ arm }) => arm !== null);
  if (armed.length === 0) return [];
  const first = given.design.guys?.rotation ?? 0;
  const tips = [60, 180, 300].map((turn) => `${Math.round((first + turn) % 360)}°`).join(", ");
  return [
    {
      title: "Torque arms",
      gloss: `tips toward ${tips}, each between two anchors`,
      parts: [
        {
          kind: "table",
          head: ["Level", "Arm", "At", "Axis to tip"],
          words: [1],
          rows: armed.map((level): Cell[] => [
            `${level.letter}, ${lowerFirst(level.name)}`,
            level.arm?.row.name ?? "",
            figure(level.height, "feet"),
            figure(level.arm?.row.length ?? 0, "feet"),
          ]),
        },
        {
          kind: "words",
          text: "Two guys from every anchor, one to the tip on either side of it; two guys meet at every tip. Both guys of an anchor are drawn by turns, a little at a time: one alone turns the mast.",
        },
      ],
    },
  ];
};

const top = (given: Given): Section => ({
  title: "Top",
  gloss: given.model.package.pipe.name,
  parts: [
    {
      kind: "table",
      head: ["Antenna", "Over top", "Weight"],
      rows: given.model.package.antennas.map((antenna): Cell[] => [
        antenna.name,
        figure(antenna.above, "feet"),
        figure(antenna.weight, "force"),
      ]),
    },
  ],
});

const beside = (given: Given): Section => ({
  title: "Beside the mast",
  parts: [
    {
      kind: "table",
      head: ["Antenna", "Over base", "Off axis", "Weight"],
      rows: given.model.package.sides.map((side): Cell[] => [
        side.name,
        figure(sideHeight(side, given.design.height), "feet"),
        figure(side.offset, "feet"),
        figure(side.weight, "force"),
      ]),
    },
  ],
});

const danger = (given: Given): Section => ({
  title: "While it rises",
  parts: [
    {
      kind: "words",
      boxed: true,
      text: `A half-raised mast is not covered by this calculation.${
        given.levels.length > 0
          ? " Temporary guys in three directions stand on every section above the last finished level before anyone climbs past it, and stay until the next level holds."
          : " It stands free only when its base has cured and every joint is bolted: hold it by temporary guys until then."
      }${given.design.footing.insulator === undefined ? "" : " An insulated mast turns freely on its foot and can carry a deadly voltage: transmitter locked off and mast earthed while anyone is near; fenced off when done."} Nobody under the work. Full-body harness, always tied on. No work in wind, rain, ice or with thunder about.`,
    },
  ],
});

function steps(given: Given): string[] {
  const all = joints(given);
  const said = [
    "Concrete cured 7 days; date of pour read from sheet 2",
    `Nothing overhead within ${tape(1.5 * given.reach)} of the mast; power lines shown to all; weather seen`,
    "Gin pole, rope and pulleys looked over; harnesses looked over; signals agreed; one person directs",
    given.design.footing.insulator === undefined
      ? "Base plate and first section set, plumbed in two directions"
      : `Base insulator set level in grout, its top ${tape(given.problem.ground.stand)} over the concrete; the first section on it propped from all sides, plumbed in two directions`,
  ];
  let low = 0;
  given.levels.forEach((level, i) => {
    const upTo = all.findIndex((joint) => joint.top >= level.height - 1e-6);
    const from = Math.min(low + 1, upTo + 1);
    said.push(
      `${from === upTo + 1 ? `Section ${from}` : `Sections ${from} to ${upTo + 1}`} up, each joint bolted and seen${i === 0 ? "" : ", temporary guys moved up with them"}`,
      ...(level.arm ? [`Torque arm on at ${tape(level.height)}, its tips between the anchors, level`] : []),
      `${level.name} on at ${tape(level.height)}: hand taut, then by turns to a third of the wanted tension; plumb`,
    );
    low = upTo + 1;
  });
  if (low < all.length)
    said.push(
      `${low + 1 === all.length ? `Section ${all.length}` : `Sections ${low + 1} to ${all.length}`} up, each joint bolted and seen, temporary guys until done`,
    );
  said.push("Pipe and antennas up; cable tied to a leg; all bolts tight");
  if (given.levels.length > 0)
    said.push(
      "All levels to the tensions of sheet 4, lowest first; plumbed; temporary guys off; turnbuckles wired",
    );
  if (given.design.footing.insulator !== undefined)
    said.push(
      "Insulators whole and clean, at the foot and at the mast end of every guy; nothing else bridges them",
    );
  said.push(
    "Earthing and lightning protection by local code, each leg and guy; seen by whoever signs for it",
    "Ladder or climbing guard and warning sign in place",
  );
  return said;
}

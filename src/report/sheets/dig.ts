import type { Given } from "./given.ts";
import { anchorDetail, baseDetail } from "./ground-details.ts";
import { plan } from "./plan.ts";
import { settingOut } from "./setting-out.ts";
import type { Band, Cell, Section } from "./types.ts";
import { both, tape } from "./words.ts";

export function digSheet(given: Given): Band[] {
  const star = plan(given);
  const base = baseDetail(given);
  const anchor = anchorDetail(given);
  const detail = (title: string, one: NonNullable<typeof anchor>): Section => ({
    title,
    gloss: `section, 1 : ${one.scale}`,
    parts: [one.drawing],
  });
  return [
    {
      kind: "pair",
      left: [{ title: "Setting out", gloss: `1 : ${star.scale}, north up`, parts: [star.drawing] }],
      right: [settingOut(given), rules(given)],
    },
    { kind: "pair", left: [detail("Base", base)], right: anchor ? [detail("Anchor", anchor)] : [] },
    { kind: "whole", sections: [holes(given), ...bars(given), signed] },
  ];
}

/** Layers as a digger meets them. */
const beneath = ({ digging, layers }: Given["problem"]["soil"]): string =>
  layers
    ? `${digging} digging, ${layers.map((layer) => `${layer.digging} from ${tape(layer.from)}`).join(", ")}; `
    : "";

const holes = (given: Given): Section => {
  const { footing, anchor, perLevel, pull } = given;
  const { soil, waterTable, pourBelowWater } = given.problem.ground;
  const rows: Cell[][] = [
    [
      "Base",
      "1",
      both(footing.depth ?? 0, "feet"),
      both(footing.takeOff.dug, "volume", 2),
      both(footing.takeOff.concrete, "volume", 2),
      "at the mast peg",
    ],
  ];
  const choice = given.design.guys?.anchor;
  if (anchor && choice && pull !== null) {
    const out = choice.kind === "deadman" ? (choice.depth - choice.height / 2) / Math.tan(pull) : 0;
    rows.push([
      "Anchor",
      `${perLevel}`,
      anchor.depth === null ? "" : both(anchor.depth, "feet"),
      anchor.takeOff.dug > 0 ? both(anchor.takeOff.dug, "volume", 2) : "",
      anchor.takeOff.concrete > 0 ? both(anchor.takeOff.concrete, "volume", 2) : "",
      choice.kind === "deadman"
        ? `middle ${tape((given.design.guys?.radius ?? 0) + out)} from the mast`
        : choice.kind === "post"
          ? "its middle at its peg"
          : "head at its peg, along the pull",
    ]);
  }
  const water = Number.isFinite(waterTable)
    ? `water stated ${tape(waterTable)} down${pourBelowWater ? ", concrete poured below it where it must" : ""}`
    : "no water table stated: dry is assumed";
  return {
    title: "Holes",
    gloss: `${soil.name}; ${beneath(soil)}${water}`,
    parts: [
      {
        kind: "table",
        head: ["Hole", "Holes", "Deep", "Dug, each", "Concrete, each", "Where"],
        words: [5],
        rows,
      },
    ],
  };
};

/** Every bar, to be cut and tied, of base and anchors; nothing where bars are bought by the volume of concrete. */
const bars = ({ footing, anchor, perLevel }: Given): Section[] =>
  [
    { title: "Bars of the base", runs: footing.bars },
    { title: `Bars of each anchor, ${perLevel} alike`, runs: anchor?.cage ?? [] },
  ]
    .filter(({ runs }) => runs.length > 0)
    .map(({ title, runs }) => ({
      title,
      gloss: "straight, 3 in of concrete over every bar",
      parts: [
        {
          kind: "table",
          head: ["Bar", "Pieces", "Long, each", "Where"],
          words: [3],
          rows: runs.map(({ bar, count, length, where }): Cell[] => [
            bar.name,
            `${count}`,
            both(length, "feet"),
            where,
          ]),
        },
      ],
    }));

function rules(given: Given): Section {
  const { frostDepth } = given.problem.ground;
  const choice = given.design.guys?.anchor;
  const said = [
    "Have buried cables and pipes marked before a spade goes in; shore or slope every hole that a person enters.",
    `Frost reaches ${tape(frostDepth)}: no underside stands on frozen or loosened ground.`,
    "Footings are cast against undisturbed soil. A side that falls in is dug back and poured full, not filled.",
  ];
  if (choice?.kind === "deadman")
    said.push(
      "Deadmen bear against undisturbed soil on the mast’s side: dig from the far side, cut a slot for the rod only, and keep the near wall plumb and whole. Fill in 6 in layers, each rammed. The slot is not in the take-off. The rod goes through the middle of the block, its plate on the far side with 3 in of concrete behind it.",
    );
  if (choice?.kind === "screw")
    said.push("Screws are turned in along the pull; one that turns in easily does not hold.");
  if (choice?.kind === "post")
    said.push(
      "A post’s block is cast neat against undisturbed soil on every side and up to grade. The post stands plumb, its plate at the underside, and its strong axis bends toward the mast.",
    );
  const rods = given.problem.catalog.anchors.find(({ id }) => id === choice?.row);
  if (rods?.kind === "rock-rod" && rods.rods > 1)
    said.push(
      `An anchor is a row of ${rods.rods} rods across the pull, ${tape(rods.spacing ?? 0)} apart, all along it, under one yoke that pulls them alike.`,
    );
  if (choice?.kind === "rock-rod" || "dowels" in given.design.footing)
    said.push(
      "Holes in rock are blown clean and wetted before the grout; loose or split rock does not count as socket.",
    );
  return {
    title: "Rules of the holes",
    parts: [{ kind: "words", text: said.join(" ") }],
  };
}

const signed: Section = {
  title: "Tick and sign",
  parts: [
    {
      kind: "ticks",
      steps: [
        "Pegs checked by ties; nothing overhead; buried services marked",
        "Holes measured, sides whole, no water, soil as stated",
        "Bars and rods in place, 3 in of cover; seen before the pour",
        "Poured; day of pour: ____________ cure at least 7 days before load",
      ],
    },
  ],
};

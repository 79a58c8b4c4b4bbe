import type { BillLine } from "../../model/verdict.ts";
import { billWords, lowerFirst, upperFirst } from "../names.ts";
import { buyAndCut } from "./buy-and-cut.ts";
import type { Given } from "./given.ts";
import { airWords } from "./tension.ts";
import type { Band, Cell, Section, Table } from "./types.ts";
import { both, figure, sectionName, strandName, strandSize, tape } from "./words.ts";

/** An 80 lb bag makes 0.60 cubic feet (common practice, no source), m3: where the prices state no bag. */
const BAG = 0.6 * 0.3048 ** 3;

const groups: readonly (readonly [BillLine["group"], string])[] = [
  ["sections", "Mast sections"],
  ["guys", "Guys"],
  ["anchors", "Anchors"],
  ["footing", "Base"],
  ["digging", "Digging"],
  ["antennas", "Antennas and pipe"],
  ["raising", "Raising"],
  ["other", "Other"],
];

const inUnit: Readonly<Record<BillLine["unit"], (quantity: number) => Cell>> = {
  each: (quantity) => `${quantity}`,
  m: (quantity) => both(quantity, "length", 0),
  m3: (quantity) => both(quantity, "volume", 2),
  m2: (quantity) => both(quantity, "area", 0),
  kg: (quantity) => both(quantity, "mass", 0),
};

/** As a buyer asks for it: rows by their size, pieces by the tape. */
export function itemWords({ problem, design }: Given, line: BillLine): string {
  const { sections, strand } = problem.catalog;
  const named = (id: string): string => {
    const section = sections.find((row) => row.id === id);
    const wound = strand.find((row) => row.id === id);
    return section ? sectionName(section) : wound ? strandSize(wound) : id;
  };
  return upperFirst(billWords(line, design.guys?.levels.length ?? 0, { row: named, length: tape }));
}

/** Everything to buy; its amounts are the lines of the bill, so that its sum is the bill's total. */
export function buySheet(given: Given): Band[] {
  const { verdict } = given;
  const { lines, total } = verdict.bill;
  const everything: Table = {
    kind: "table",
    head: ["For", "Item", "Quantity", "Amount"],
    words: [1],
    rows: groups.flatMap(([group, name]) =>
      lines
        .filter((line) => line.group === group)
        .map((line, i): Cell[] => [
          i === 0 ? name : "",
          itemWords(given, line),
          inUnit[line.unit](line.quantity),
          figure(line.amount / 100, "money"),
        ]),
    ),
    sum: ["Total", "", "", figure(total, "money")],
  };
  const whole = buyAndCut(given);
  return [
    {
      kind: "whole",
      sections: [
        {
          title: "Everything to buy",
          gloss: "amounts as in the bill",
          parts: [everything],
        },
      ],
    },
    { kind: "pair", left: cutList(given), right: concrete(given) },
    ...(whole.length > 0 ? [{ kind: "whole" as const, sections: whole }] : []),
  ];
}

function cutList({ rigs, problem }: Given): Section[] {
  if (rigs.length === 0) return [];
  const reels = new Map<string, { name: string; length: number }>();
  for (const { strand, cut, count } of rigs) {
    const reel = reels.get(strand.id) ?? { name: strandName(strand), length: 0 };
    reels.set(strand.id, { ...reel, length: reel.length + count * cut });
  }
  const ends = rigs.reduce((sum, { count }) => sum + 2 * count, 0);
  return [
    {
      title: "Cut list",
      gloss: `at ${airWords(rigs[0].rigged)}, for one guy`,
      parts: [
        {
          kind: "table",
          head: ["Level", "Pieces", "Unstressed", "Cut"],
          rows: rigs.map((level) => [
            level.name,
            `${level.count}`,
            figure(level.unstressed, "feet"),
            both(level.cut, "feet"),
          ]),
        },
        {
          kind: "words",
          text: `${[...reels.values()]
            .map(({ name, length }) => `${Math.ceil(length / 0.3048)} ft of ${name}`)
            .join(
              "; ",
            )} in all. Unstressed length at the initial tension, and ${tape(problem.prices.termination)} for the two ends of each guy. ${ends} end fittings, ${ends} thimbles, ${ends / 2} turnbuckles. The bill counts the straight distance, an inch or so longer. Measure on site before the cut: the ground is taken as stated, the guy as fixed in the mast’s axis${rigs.some(({ arm }) => arm) ? " or at its tip" : ""}.`,
        },
      ],
    },
  ];
}

function concrete({ verdict, problem, footing, anchor, perLevel }: Given): Section[] {
  const placed = verdict.concreteVolume;
  if (placed <= 0) return [];
  const ordered = placed * (1 + problem.prices.concreteWaste);
  const share = Math.round(problem.prices.concreteWaste * 100);
  const rows = [
    ["Base", "1", footing.takeOff.concrete],
    ...(anchor && anchor.takeOff.concrete > 0 ? [["Anchors", `${perLevel}`, anchor.takeOff.concrete]] : []),
  ] as [string, string, number][];
  const sold = problem.prices.concreteSupply?.bag?.yield;
  const makes = sold ?? BAG;
  const bag = sold === undefined ? "An 80 lb bag" : "A bag as it is sold";
  const bagsOf = (volume: number) => Math.ceil((volume * (1 + problem.prices.concreteWaste)) / makes - 1e-9);
  // a bag once opened is used up at its hole
  const bags = rows.reduce((sum, [, count, volume]) => sum + Number(count) * bagsOf(volume), 0);
  return [
    {
      title: "Concrete",
      gloss: `order ${(ordered / 0.9144 ** 3).toFixed(2)} yd³ or ${bags} bags`,
      parts: [
        {
          kind: "table",
          head: ["Hole", "Holes", "In place, each", "Bags, each"],
          rows: rows.map(([name, count, volume]) => [
            name,
            count,
            both(volume, "volume", 2),
            `${bagsOf(volume)}`,
          ]),
          sum: ["In place", "", both(placed, "volume", 2), ""],
        },
        {
          kind: "words",
          text: `${share} % more is ordered than stands. ${bag} makes ${(makes / 0.3048 ** 3).toFixed(2)} ft³. Strength ${Math.round(problem.rules.concrete.strength / 6894.757)} psi: ${lowerFirst(problem.rules.concrete.source)}. Steel by mass: the dig sheet lists every bar, but those of an anchor post’s block.`,
        },
      ],
    },
  ];
}

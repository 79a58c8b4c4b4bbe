import { describe, expect, it } from "vitest";
import { type Analysis, analyse } from "../../src/checks/analysis.ts";
import { defaultCatalog } from "../../src/model/default-catalog.ts";
import { parseStudy } from "../../src/model/parse.ts";
import { compile } from "../../src/problem/compile.ts";
import type { Problem } from "../../src/problem/types.ts";
import { modelOf } from "../../src/search/evaluate.ts";
import type { Node } from "../../src/search/node.ts";
import { Recall, structureKey } from "../../src/search/recall.ts";
import { renewal } from "../../src/search/renew.ts";
import { Tree } from "../../src/search/tree.ts";

type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json };
type Path = readonly (string | number)[];

/** Everything that an analysis may read, all at once: few structures, each with every kind of case. */
const rich = {
  mastwright: 1,
  name: "rich",
  site: {
    wind: {
      basis: "asce7-16",
      speed: "95 mph",
      exposure: "C",
      hill: { shape: "ridge", height: "50 ft", halfLength: "140 ft", distance: "20 ft" },
      groundElevation: "700 ft",
      gustFactor: "computed",
    },
    ice: { thickness: "0.25 in", importance: 1.1, speed: "35 mph" },
    temperature: { installed: 12, coldest: -20, hottest: 38, iced: -3 },
    baseStiffness: 4e6,
    soil: "ibc-4",
    frostDepth: "2 ft",
    waterTable: "9 ft",
    greatestDig: "6 ft",
  },
  lot: {
    corners: [
      ["0 ft", "0 ft"],
      ["96 ft", "0 ft"],
      ["96 ft", "90 ft"],
      ["0 ft", "90 ft"],
    ],
    mast: ["46 ft", "44 ft"],
    setback: "2 ft",
    slope: { toward: 70, fall: 0.06 },
  },
  wishes: {
    height: ["40 ft"],
    packages: [
      {
        id: "one",
        name: "one",
        pipe: "pipe-17",
        items: [
          { area: "4 ft2", areaKind: "round", weight: "40 lbf", above: "2 ft", offset: "6 in" },
          { area: "2 ft2", areaKind: "flat", weight: "30 lbf", at: "22 ft", offset: "1 ft" },
          { antenna: "beam-3el-trap", below: "3 ft" },
        ],
        cableWidth: "1 in",
        ladder: "2 in",
      },
    ],
    margin: 0.05,
    swayLimit: 2,
    twistLimit: 3,
    serviceWind: 0.5,
    lossOfOneGuy: true,
  },
  rules: { set: "asce7-asd" },
  parts: {
    sections: ["3leg-13-used"],
    supports: ["guyed", "freestanding"],
    guysPerLevel: [3],
    levelCounts: [1],
    levelHeights: ["30 ft"],
    strands: ["ehs-3-16"],
    tensions: [0.1],
    radius: ["26 ft"],
    drawnIn: true,
    rotation: [0, 40],
    footings: ["block"],
    anchors: ["post-pipe", "deadman"],
    guyHardware: { weight: "5 lbf", length: "2 ft", price: "$9" },
  },
  ranges: {
    soilStrength: { from: 0.9, to: 1.1 },
    windSpeed: { from: "90 mph", to: "100 mph" },
    wallLoss: { from: "0.1 mm", to: "0.2 mm" },
    tension: { from: 0.9, to: 1.1 },
  },
} as const;

/** The same without what a mast on an insulator can't have, and with it. */
const insulated = {
  ...rich,
  site: {
    ...rich.site,
    wind: { basis: "en1991", basicSpeed: "24 m/s", terrain: "II", structuralFactor: 1.1 },
    ice: { thickness: "6 mm", speed: "10 m/s" },
    baseStiffness: undefined,
  },
  lot: { ...rich.lot, slope: undefined },
  wishes: {
    ...rich.wishes,
    insulatedBase: true,
    packages: rich.wishes.packages.map((pack) => ({
      ...pack,
      items: pack.items.map((item) => ({ ...item, offset: 0 })),
    })),
  },
  rules: { set: "en" },
  ranges: undefined,
  parts: {
    ...rich.parts,
    supports: ["guyed"],
    guysPerLevel: [4],
    guyHardware: { ...rich.parts.guyHardware, breakingStrength: "3000 lbf" },
  },
} as const;

/** And with six guys a level. */
const armed = {
  ...rich,
  lot: { ...rich.lot, slope: undefined },
  wishes: { ...rich.wishes, lossOfOneGuy: false },
  ranges: undefined,
  parts: { ...rich.parts, drawnIn: false, torqueArms: ["arm-16"], anchors: ["deadman"] },
} as const;

type Read = { readonly study: Json; readonly catalog: Json };

/** The rows that the study can use: others are not there to be changed. */
function readOf(file: unknown): Read {
  const read = parseStudy(file, { catalog: defaultCatalog });
  if (!read.ok) throw new Error(read.errors.map((error) => error.message).join("; "));
  const { study, catalog } = read;
  const used = <T extends { id: string }>(rows: readonly T[], ids: "all" | readonly string[]) =>
    rows.filter((row) => ids === "all" || ids.includes(row.id));
  const { parts } = study;
  return {
    study: study as unknown as Json,
    catalog: {
      ...catalog,
      sections: used(catalog.sections, parts.sections),
      strand: used(catalog.strand, parts.strands),
      anchors: used(catalog.anchors, parts.anchors),
      footings: used(catalog.footings, parts.footings),
      soils: used(catalog.soils, [study.site.soil]),
      rules: used(catalog.rules, [study.rules.set]),
      pipes: used(catalog.pipes, ["pipe-17"]),
      antennas: used(catalog.antennas, ["beam-3el-trap"]),
      insulators: catalog.insulators.slice(0, 1),
      torqueArms: used(catalog.torqueArms, parts.torqueArms ?? []),
    } as unknown as Json,
  };
}

/** Every number and truth in a value, and words that have others in their place. */
function* leaves(value: Json, path: Path = []): Generator<Path> {
  if (typeof value === "number" || typeof value === "boolean") yield path;
  else if (typeof value === "string") {
    if (others(path, value)) yield path;
  } else if (value && typeof value === "object")
    for (const [key, inside] of Object.entries(value))
      yield* leaves(inside as Json, [...path, Array.isArray(value) ? Number(key) : key]);
}

/** Another word of the same list. */
const words: readonly (readonly string[])[] = [
  ["B", "C", "D"],
  ["0", "I", "II", "III", "IV"],
  ["ridge", "escarpment"],
  ["upwind", "downwind"],
  ["round", "flat", "effective"],
  ["single", "x"],
  ["cold-formed", "hot-finished"],
  ["aisc360", "en1993"],
  ["prism", "cone"],
  ["allowable", "ultimate"],
];
const others = (path: Path, value: string): string | undefined =>
  ["id", "name", "family", "section", "version"].includes(String(path.at(-1)))
    ? undefined
    : words.find((list) => list.includes(value))?.find((word) => word !== value);

const changed = (value: Json, path: Path): Json => {
  if (typeof value === "number") return value === 0 ? 0.013 : value * 1.037;
  if (typeof value === "boolean") return !value;
  return others(path, value as string) as string;
};

function withChange(value: Json, path: Path, full: Path = path): Json {
  if (path.length === 0) return changed(value, full);
  const [key, ...rest] = path;
  if (Array.isArray(value)) return value.map((one, i) => (i === key ? withChange(one, rest, full) : one));
  const record = value as { readonly [key: string]: Json };
  return { ...record, [key]: withChange(record[key], rest, full) };
}

/** A tree of a small grid that refuses nothing by use. */
const lenient = (problem: Problem) => new Tree({ ...problem, allowed: Number.MAX_VALUE });

/** Every structure of it, by what it is called. */
function structures(tree: Tree): Map<string, Node> {
  const found = new Map<string, Node>();
  const open = [...tree.roots()];
  for (let node = open.pop(); node; node = open.pop())
    if (node.stage === "structure") found.set(structureKey(node), node);
    else open.push(...tree.children(node));
  return found;
}

const told = (analysis: Analysis): string =>
  JSON.stringify(
    analysis.status === "failed"
      ? [analysis.status, analysis.limitState, analysis.worst]
      : [analysis.worst, analysis.limitState, analysis.anchors, analysis.bases, analysis.gusts],
  );

const analysed = (problem: Problem, node: Node): string =>
  told(analyse(problem, modelOf(node, problem), { giveUpAbove: Number.MAX_VALUE }));

/** Does a search of the second problem take what was solved in the first for its own? */
function takenOver(first: Problem, second: Problem): boolean {
  const recall = new Recall();
  const nothing: Analysis = { status: "failed", worst: 1, limitState: "none" };
  recall.open(first);
  recall.analysis("one", 0.5, () => nothing);
  recall.open(second);
  recall.analysis("one", 0.5, () => nothing);
  return recall.remembered > 0;
}

/** What a tree has to say of a structure's mast, and what it costs. */
const facts = ({ use, uplift, lateral, thrust, designs, spent }: Node): string =>
  [use, uplift, lateral, thrust, designs, spent].map((value) => value.toPrecision(12)).join(" ");

describe("what is remembered of a mast, against everything that is stated", () => {
  it.each([
    ["a study with everything", rich],
    ["an insulated mast under EN wind", insulated],
    ["a mast on torque arms", armed],
  ])(
    "Recall(%s) and renewal(before, now) forget, or call otherwise, whatever a changed given makes otherwise",
    (_, file) => {
      const stated = readOf(file);
      const compiled = ({ study, catalog }: Read) => compile(study as never, catalog as never);
      const problem = compiled(stated);
      const tree = lenient(problem);
      const known = structures(tree);
      expect(known.size).toBeGreaterThan(1);
      const before = new Map([...known].map(([key, node]) => [key, analysed(problem, node)]));
      let forgot = 0;
      let kept = 0;
      let refused = 0;
      let renewed = 0;
      const stale: string[] = [];
      for (const part of ["study", "catalog"] as const)
        for (const path of leaves(stated[part])) {
          let after: Problem;
          let there: Map<string, Node>;
          let now: Tree;
          try {
            after = compiled({ ...stated, [part]: withChange(stated[part], path) });
            now = lenient(after);
            there = structures(now);
          } catch {
            // a change that makes no study any more: a count that is no whole number, steel outside its clauses
            refused++;
            continue;
          }
          const again = renewal(tree, now);
          if (again) {
            renewed++;
            for (const [key, node] of known) {
              // a copy: what is renewed is changed
              const is = { ...node };
              const fresh = there.get(key);
              if (again(is) && (!fresh || facts(is) !== facts(fresh) || is.ground.cents > fresh.ground.cents))
                stale.push(`${part}.${path.join(".")}: ${key}, renewed`);
            }
          }
          if (!takenOver(problem, after)) {
            forgot++;
            continue;
          }
          kept++;
          for (const [key, node] of there) {
            const was = before.get(key);
            if (was !== undefined && was !== analysed(after, node))
              stale.push(`${part}.${path.join(".")}: ${key}`);
          }
        }
      console.log(
        `${known.size} structures; ${forgot} changes forget them all, ${kept} keep what is equal, ${renewed} the tree as well, ${refused} are no study`,
      );
      expect(stale).toEqual([]);
      expect(forgot).toBeGreaterThan(60);
      expect(kept).toBeGreaterThan(60);
      expect(renewed).toBeGreaterThan(30);
    },
    300_000,
  );
});

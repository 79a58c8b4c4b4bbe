import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { z } from "zod";
import { defaultCatalog } from "../../src/model/default-catalog.ts";
import { parseCatalog, parseDesign, parseStudy } from "../../src/model/parse.ts";
import { designFromText, studyFromText } from "../../src/model/parse-text.ts";
import { startingStudies } from "../../src/model/starting-studies.ts";
import { editedStudy, errorsOf, type Loose, readCatalog } from "./support.ts";

const row = (id: string): Loose =>
  structuredClone(defaultCatalog.sections.find((section) => section.id === id));
const length = 'a length (ft, in, m or mm), as "18 ft 6 in"';

/** What is done to a good study; path, found and expected of the one error that follows. */
const spoilt: [string, (study: Loose) => void, string, string, string][] = [
  [
    "a misspelt unit",
    (s) => (s.site.wind.speed = "105 mhp"),
    "site.wind.speed",
    '"105 mhp"',
    'a speed (mph, km/h, m/s or kn), as "105 mph"',
  ],
  ["a unit of something else", (s) => (s.wishes.height = "70 lb"), "wishes.height", '"70 lb"', length],
  [
    "a negative size",
    (s) => (s.site.frostDepth = "-3 ft"),
    "site.frostDepth",
    '"-3 ft"',
    "a length of 0 or more",
  ],
  [
    "an unknown key",
    (s) => (s.site.winnd = 1),
    "site.winnd",
    'key "winnd"',
    'a known key; the nearest is "wind"',
  ],
  ["a missing key", (s) => delete s.site.soil, "site.soil", "nothing", "text"],
  [
    "an unknown wind basis",
    (s) => (s.site.wind.basis = "asce7"),
    "site.wind.basis",
    '"asce7"',
    '"uniform" or "asce7-16" or "asce7-22" or "en1991"',
  ],
  [
    "an unknown soil",
    (s) => (s.site.soil = "ibc5"),
    "site.soil",
    '"ibc5"',
    'a soil of the catalog; the nearest is "ibc-5"',
  ],
  [
    "an unknown section",
    (s) => (s.parts.sections = ["3leg-9", "3leg9"]),
    "parts.sections[1]",
    '"3leg9"',
    'a section of the catalog; the nearest is "3leg-9"',
  ],
  [
    "an unknown strand",
    (s) => (s.parts.strands = ["ehs-3-61"]),
    "parts.strands[0]",
    '"ehs-3-61"',
    'a strand of the catalog; the nearest is "ehs-3-16"',
  ],
  [
    "an unknown antenna",
    (s) => (s.wishes.packages[0].items[1].antenna = "beam-6"),
    "wishes.packages[0].items[1].antenna",
    '"beam-6"',
    'an antenna of the catalog; the nearest is "beam-6m"',
  ],
  [
    "an unknown pipe",
    (s) => (s.wishes.packages[0].pipe = "pipe-12"),
    "wishes.packages[0].pipe",
    '"pipe-12"',
    'a pipe of the catalog; the nearest is "pipe-11"',
  ],
  [
    "an unknown rule set",
    (s) => (s.rules.set = "asce7-lsd"),
    "rules.set",
    '"asce7-lsd"',
    'a rule set of the catalog; the nearest is "asce7-asd"',
  ],
  [
    "an unknown footing",
    (s) => (s.parts.footings = ["blok"]),
    "parts.footings[0]",
    '"blok"',
    'a footing of the catalog; the nearest is "block"',
  ],
  [
    "an unknown anchor",
    (s) => (s.parts.anchors = ["screw7"]),
    "parts.anchors[0]",
    '"screw7"',
    'an anchor of the catalog; the nearest is "screw-7"',
  ],
  [
    "a lot whose edges cross",
    (s) =>
      (s.lot.corners = [
        ["0 ft", "0 ft"],
        ["90 ft", "120 ft"],
        ["90 ft", "0 ft"],
        ["0 ft", "120 ft"],
      ]),
    "lot.corners",
    "edge 1 (corner 1 to 2) meets edge 3 (corner 3 to 4)",
    "corners in order around the lot, so that no edge meets another",
  ],
  [
    "a lot of no area",
    (s) =>
      (s.lot.corners = [
        ["0 ft", "0 ft"],
        ["90 ft", "0 ft"],
        ["40 ft", "0 ft"],
      ]),
    "lot.corners",
    "a lot of no area",
    "a lot with an area above 0",
  ],
  [
    "a mast outside the lot",
    (s) => (s.lot.mast = ["200 ft", "62 ft"]),
    "lot.mast",
    '["200 ft","62 ft"]',
    "a place inside the lot",
  ],
  [
    "an axis that runs backwards",
    (s) => (s.parts.radius = { from: "30 ft", to: "20 ft", step: "1 ft" }),
    "parts.radius.to",
    '"20 ft"',
    'a value at or above "from"',
  ],
  ["a step of 0", (s) => (s.parts.radius.step = "0 ft"), "parts.radius.step", '"0 ft"', "a length above 0"],
  ["a step below 0", (s) => (s.parts.rotation.step = -10), "parts.rotation.step", "-10", "a number above 0"],
  [
    "an axis of too many values",
    (s) => (s.parts.radius = { from: "0 m", to: "10 m", step: "1 mm" }),
    "parts.radius.step",
    "a step that makes 10001 values",
    "a step that makes at most 10000 values",
  ],
  ["an empty axis", (s) => (s.wishes.height = []), "wishes.height", "[]", "a list of 1 or more entries"],
  [
    "a value of the wrong kind",
    (s) => (s.parts.radius = true),
    "parts.radius",
    "true",
    `an object or a list or ${length}`,
  ],
  [
    "a value twice in a list",
    (s) => (s.parts.strands = ["ehs-1-4", "ehs-1-4"]),
    "parts.strands[1]",
    '"ehs-1-4" a second time',
    "each value once",
  ],
  [
    "two packages of one key",
    (s) => s.wishes.packages.push(s.wishes.packages[0]),
    "wishes.packages[1].id",
    '"beam-and-6m" a second time (row 1 has it)',
    "a key of its own",
  ],
  [
    "two rows of one key",
    (s) => (s.catalog = { sections: [row("3leg-9"), row("3leg-13"), row("3leg-9")] }),
    "catalog.sections[2].id",
    '"3leg-9" a second time (row 1 has it)',
    "a key of its own",
  ],
  [
    "a wall thicker than the radius",
    (s) => (s.catalog = { sections: [{ ...row("3leg-9"), leg: { diameter: "1 in", wall: "0.6 in" } }] }),
    "catalog.sections[0].leg.wall",
    '"0.6 in"',
    "a wall of half the diameter at most",
  ],
  [
    "a measured wall above the wall as new",
    (s) => (s.catalog = { sections: [{ ...row("3leg-9"), measuredWall: "0.084 in" }] }),
    "catalog.sections[0].measuredWall",
    '"0.084 in"',
    "a measured wall no thicker than the wall as new",
  ],
  [
    "an angle thicker than half its leg",
    (s) => (s.catalog = { sections: [{ ...row("4leg-11"), leg: { angle: "2 in", thickness: "1 1/8 in" } }] }),
    "catalog.sections[0].leg.thickness",
    '"1 1/8 in"',
    "a thickness of half the angle's leg at most",
  ],
  [
    "angles as legs of a triangular mast",
    (s) => (s.catalog = { sections: [{ ...row("3leg-9"), leg: { angle: "1 in", thickness: "1/8 in" } }] }),
    "catalog.sections[0].leg",
    "angles as legs of a triangular mast",
    "rods or tubes: the faces of a triangular mast meet at 60 degrees, an angle's legs at 90, and bent angles are not covered",
  ],
  [
    "a joined crossing where nothing crosses",
    (s) =>
      (s.catalog = {
        sections: [{ ...row("3leg-9"), bracing: { ...row("3leg-9").bracing, joined: true } }],
      }),
    "catalog.sections[0].bracing.joined",
    "true",
    'a joined crossing with pattern "x" alone',
  ],
  [
    "a rating that rates nothing",
    (s) => (s.catalog = { sections: [{ ...row("3leg-9"), rated: { source: "a data sheet" } }] }),
    "catalog.sections[0].rated",
    '{"source":"a data sheet"}',
    "a moment, an axial force or a shear that the seller states",
  ],
  [
    "a hold in a digging class that is none",
    (s) =>
      (s.catalog = {
        anchors: [
          { ...defaultCatalog.anchors.find(({ id }) => id === "screw-5"), holds: { frm: "900 lbf" } },
        ],
      }),
    "catalog.anchors[0].holds.frm",
    'key "frm"',
    'a known key; the nearest is "firm"',
  ],
  [
    "a price without its unit",
    (s) => (s.catalog = { strand: [{ ...defaultCatalog.strand[0], price: "$0.30" }] }),
    "catalog.strand[0].price",
    '"$0.30"',
    'a price per length, as "$0.62/ft"',
  ],
];

describe("parseStudy names path, found and expected of", () => {
  test.each(spoilt)("%s", (_what, edit, path, found, expected) => {
    expect(errorsOf(editedStudy(edit))).toEqual([{ path, found, expected, message: expect.any(String) }]);
  });
});

test("parseCatalog and parseStudy refuse a rule set whose lean is beyond the ten degrees that the solver covers", () => {
  const leaning = (most: number) =>
    defaultCatalog.rules.map((rules, index) =>
      index === 0 ? { ...rules, tilt: { most, source: "own" } } : rules,
    );
  const expected = (path: string) => ({ path, found: "10.1", expected: "a number of 10 or less" });
  expect(errorsOf(parseCatalog({ ...defaultCatalog, rules: leaning(10.1) }))).toMatchObject([
    expected("rules[0].tilt.most"),
  ]);
  expect(errorsOf(editedStudy((study) => (study.catalog = { rules: leaning(10.1) })))).toMatchObject([
    expected("catalog.rules[0].tilt.most"),
  ]);
  expect(parseCatalog({ ...defaultCatalog, rules: leaning(10) }).ok).toBe(true);
  expect(parseCatalog({ ...defaultCatalog, rules: leaning(0) }).ok).toBe(false);
});

test("what parseStudy says of every slip is in our own words: the page does not send the library's", () => {
  const said = () => spoilt.map(([, edit]) => errorsOf(editedStudy(edit)));
  const before = said();
  const { localeError } = z.config();
  z.config({ localeError: () => "in the library's words" });
  try {
    expect(said()).toEqual(before);
    expect(z.string().safeParse(1).error?.issues[0].message).toBe("in the library's words");
    const dowels = parseCatalog({
      ...defaultCatalog,
      footings: defaultCatalog.footings.map((row) => ("dowels" in row ? { ...row, dowels: [5] } : row)),
    });
    expect(errorsOf(dowels)).toMatchObject([{ found: "5", expected: "a multiple of 4" }]);
  } finally {
    z.config({ localeError });
  }
});

test("parseStudy says in one sentence what a misspelt unit should be", () => {
  const [error] = errorsOf(editedStudy((study) => (study.site.wind.speed = "105 mhp")));
  expect(error.message).toBe('"mhp" isn\'t a unit of speed; write mph, km/h, m/s or kn, as "105 mph"');
});

test("parseStudy refuses a study of a future version by its number", () => {
  expect(errorsOf(editedStudy((study) => (study.mastwright = 7)))).toEqual([
    {
      path: "mastwright",
      found: "version 7",
      expected: 'a version up to 1, as "mastwright": 1',
      message: "found version 7, this program reads up to 1",
    },
  ]);
});

test("parseStudy reports every slip, not the first alone", () => {
  const errors = errorsOf(
    editedStudy((study) => {
      study.site.wind.speed = "105 mhp";
      study.site.frostDepth = "-1 ft";
      study.aim = "beauty";
    }),
  );
  expect(errors.map((error) => error.path).sort()).toEqual(["aim", "site.frostDepth", "site.wind.speed"]);
});

test("parseStudy caps what it reports, however much is wrong", () => {
  const errors = errorsOf(
    editedStudy((study) => {
      for (let index = 0; index < 5000; index++) study.site[`key${index}`] = index;
    }),
  );
  expect(errors.length).toBe(100);
});

test("parseStudy puts a study's own rows in their place, and new ones at the end", () => {
  const read = editedStudy((study) => {
    study.catalog = {
      sections: [
        { ...row("3leg-9"), extraWeight: 0.2 },
        { ...row("3leg-9"), id: "mine" },
      ],
    };
  });
  if (!read.ok) throw new Error(read.errors[0].message);
  const before = readCatalog().sections;
  const after = read.catalog.sections;
  expect(after.map(({ id }) => id)).toEqual([...before.map(({ id }) => id), "mine"]);
  expect(after.find(({ id }) => id === "3leg-9")!.extraWeight).toBe(0.2);
  expect(read.catalog.strand).toEqual(readCatalog().strand);
});

test("parseStudy finds an id that only the study's own rows have", () => {
  const read = editedStudy((study) => {
    study.catalog = { sections: [{ ...row("3leg-9"), id: "mine" }] };
    study.parts.sections = ["mine"];
  });
  expect(read.ok).toBe(true);
});

test("a study read, written as SI numbers and read again is the same study", () => {
  for (const { file } of startingStudies) {
    const first = parseStudy(file, { catalog: defaultCatalog });
    if (!first.ok) throw new Error(first.errors[0].message);
    const second = studyFromText(JSON.stringify(first.study), { catalog: first.catalog });
    expect(second).toEqual({ ok: true, study: first.study, catalog: first.catalog });
  }
});

test("parseCatalog reads its own output, and gives the same catalog for the same object", () => {
  const catalog = readCatalog();
  expect(parseCatalog(JSON.parse(JSON.stringify(catalog)))).toEqual({ ok: true, catalog });
  expect(readCatalog()).toBe(catalog);
});

test("parseCatalog keeps paths from its own root", () => {
  const catalog = structuredClone(defaultCatalog) as Loose;
  catalog.sections[3].leg.wall = "0.083 inn";
  expect(errorsOf(parseCatalog(catalog))).toMatchObject([
    { path: "sections[3].leg.wall", found: '"0.083 inn"' },
  ]);
});

test("parseStudy never throws, whatever JSON it is given", () => {
  let tried = 0;
  fc.assert(
    fc.property(fc.jsonValue(), (value) => {
      tried++;
      const read = studyFromText(JSON.stringify(value), { catalog: defaultCatalog });
      expect(read.ok).toBe(false);
      for (const error of errorsOf(read)) expect(error.found !== "" && error.expected !== "").toBe(true);
    }),
    { numRuns: 300, seed: 5 },
  );
  expect(tried).toBe(300);
});

test("parseStudy never throws with a piece of a good study replaced by any JSON", () => {
  const paths: ((study: Loose, value: unknown) => void)[] = [
    (s, v) => (s.site = v),
    (s, v) => (s.site.wind = v),
    (s, v) => (s.lot.corners = v),
    (s, v) => (s.lot.mast = v),
    (s, v) => (s.wishes.packages = v),
    (s, v) => (s.wishes.packages[0].items[0] = v),
    (s, v) => (s.parts.radius = v),
    (s, v) => (s.catalog = v),
    (s, v) => (s.catalog = { sections: [v] }),
  ];
  fc.assert(
    fc.property(fc.constantFrom(...paths), fc.jsonValue(), (put, value) => {
      const read = editedStudy((study) => put(study, value));
      for (const error of errorsOf(read)) expect(error.message).not.toBe("");
    }),
    { numRuns: 500, seed: 6 },
  );
});

const design = {
  package: "beam-and-6m",
  height: "30 ft",
  stack: [{ section: "3leg-9", length: "30 ft" }],
  guys: {
    perLevel: 3,
    radius: "20 ft",
    rotation: 0,
    tension: 0.1,
    levels: [{ height: "25 ft", strand: "ehs-3-16" }],
    anchor: { kind: "screw", row: "screw-7" },
  },
  footing: { kind: "block", row: "block", width: "2 ft", depth: "3 ft" },
};

test("parseDesign reads a design and looks its ids up", () => {
  expect(parseDesign(design, { catalog: readCatalog() }).ok).toBe(true);
  expect(designFromText(JSON.stringify(design)).ok).toBe(true);
});

test.each([
  [
    { stack: [{ section: "3leg-8", length: "30 ft" }] },
    "stack[0].section",
    '"3leg-8"',
    'a section of the catalog; the nearest is "3leg-9"',
  ],
  [
    { stack: [{ section: "3leg-9", length: "20 ft" }] },
    "stack",
    "6.096 m of sections",
    "sections that together reach the height of 9.144 m",
  ],
  [
    { footing: { kind: "block", row: "pad", width: 1, depth: 1 } },
    "footing.row",
    '"pad"',
    'a block footing of the catalog; the nearest is "block"',
  ],
  [
    { guys: { ...design.guys, anchor: { kind: "screw", row: "deadman" } } },
    "guys.anchor.row",
    '"deadman"',
    'a screw anchor of the catalog; the nearest is "screw-5"',
  ],
  [
    { guys: { ...design.guys, levels: [{ height: "40 ft", strand: "ehs-1-4" }] } },
    "guys.levels[0].height",
    '"40 ft"',
    "a height up to the mast top, 9.144 m",
  ],
])("parseDesign with %j names path, found and expected", (edit, path, found, expected) => {
  const read = parseDesign({ ...design, ...edit }, { catalog: readCatalog() });
  expect(errorsOf(read)).toEqual([
    { path, found, expected, message: `found ${found}, expected ${expected}` },
  ]);
});

test("parseDesign looks for the package where the study is given", () => {
  const read = editedStudy(() => {});
  if (!read.ok) throw new Error(read.errors[0].message);
  const wrong = parseDesign(
    { ...design, package: "beam-and-60" },
    { catalog: read.catalog, study: read.study },
  );
  expect(errorsOf(wrong)).toMatchObject([
    { path: "package", expected: 'an antenna package of the study; the nearest is "beam-and-6m"' },
  ]);
});

test("parseCatalog() reads a table again only where it has changed, and says the same of what is wrong", () => {
  const { prices } = defaultCatalog;
  const first = parseCatalog({ ...defaultCatalog });
  const edited = parseCatalog({ ...defaultCatalog, prices: { ...prices, concrete: "$333/yd3" } });
  const fresh = parseCatalog(
    structuredClone({ ...defaultCatalog, prices: { ...prices, concrete: "$333/yd3" } }),
  );
  if (!first.ok || !edited.ok || !fresh.ok) throw new Error("expected catalogs that parse");
  expect(edited.catalog).toEqual(fresh.catalog);
  expect(edited.catalog.prices.concrete).not.toBe(first.catalog.prices.concrete);
  expect(edited.catalog.sections).toBe(first.catalog.sections);
  // also under a name that every object has
  for (const unknown of ["mud", "toString"])
    expect(errorsOf(parseCatalog({ ...defaultCatalog, [unknown]: [] })).map(({ found }) => found)).toEqual([
      `key "${unknown}"`,
    ]);
  expect(errorsOf(parseCatalog({ ...defaultCatalog, soils: [{ id: "mud" }] })).length).toBeGreaterThan(0);
});

import type { CaseResponse, Check } from "../../model/verdict.ts";
import { anchorName, footingName } from "../part-names.ts";
import { byHand, frequencies, guyForces, twists } from "./calculation-mast.ts";
import type { Given } from "./given.ts";
import type { Band, Cell, Section } from "./types.ts";
import { windRows } from "./wind-rows.ts";
import { both, figure, placeOf, sectionName, strandName, tape, taped, usedOf } from "./words.ts";

export function calculationSheet(given: Given): Band[] {
  return [
    { kind: "pair", left: [site(given)], right: [structure(given)] },
    {
      kind: "whole",
      sections: [
        checks(given),
        sources(given),
        cases(given),
        ...frequencies(given),
        ...twists(given),
        reactions(given),
        ...(given.levels.length > 0 ? [guyForces(given), ...byHand(given)] : []),
        said(given),
      ],
    },
  ];
}

function site({ problem }: Given): Section {
  const { frostDepth, waterTable } = problem.study.site;
  const rows: Cell[][] = windRows(problem.study.site);
  rows.push(
    ["Soil", problem.soil.name],
    ["Bearing", both(problem.soil.bearing, "pressure")],
    ["Lateral bearing", both(problem.soil.lateralPerDepth, "pressurePerDepth")],
    ...(problem.soil.layers ?? []).flatMap((layer): Cell[][] => [
      [`From ${tape(layer.from)} down, digging`, layer.digging],
      [`From ${tape(layer.from)} down, bearing`, both(layer.bearing, "pressure")],
      [`From ${tape(layer.from)} down, lateral`, both(layer.lateralPerDepth, "pressurePerDepth")],
    ]),
    ["Soil values", `${problem.soil.values}; ${problem.soil.source}`],
    ["Frost depth", both(frostDepth, "feet")],
    ["Water table", waterTable === undefined ? "none stated" : both(waterTable, "feet")],
    ...(problem.study.site.baseStiffness === undefined
      ? []
      : [["Base of a mast without guys", turning(problem.study.site.baseStiffness)]]),
    ...(problem.study.site.temperature ? [["Air", airs(problem.study.site.temperature)]] : []),
    ["Rule set", problem.rules.name],
    ["Steel", problem.rules.steel === "en1993" ? "EN 1993-1-1" : "AISC 360-16"],
    ["Margin wished", figure(problem.study.wishes.margin, "share", 0)],
  );
  return {
    title: "Givens",
    parts: [
      {
        kind: "table",
        head: ["Site and rules", ""],
        rows: rows.map(([name, value]) => [`${name}`.replaceAll(" ", "\u00a0"), value]),
        words: [1],
      },
    ],
  };
}

const turning = (stiffness: number) => `turns against ${(stiffness / 1000).toPrecision(3)} kN m/rad`;

const airs = ({
  installed,
  coldest,
  hottest,
}: NonNullable<Given["problem"]["study"]["site"]["temperature"]>): string =>
  `rigged at ${installed} °C, from ${coldest} to ${hottest} °C`;

function structure(given: Given): Section {
  const { design, model, problem } = given;
  const rows: Cell[][] = [
    ["Height", both(design.height, "feet")],
    ...model.stack.parts.map((part): Cell[] => [`${tape(part.length)} of`, sectionName(part.section.row)]),
    ["Antennas", model.package.row.name],
    ...[...model.package.antennas, ...model.package.sides].map((antenna): Cell[] => [
      `${antenna.name}, area`,
      both(antenna.area, "area", 1),
    ]),
    ["Pipe", model.package.antennas.length > 0 ? model.package.pipe.name : "none"],
  ];
  if (design.guys)
    rows.push(
      ["Anchor radius", both(design.guys.radius, "feet")],
      ["Anchor 1 toward", figure(design.guys.rotation, "degrees", 0)],
      ...given.levels.map((level): Cell[] => [
        `${level.name}, ${tape(level.height)}`,
        strandName(level.strand),
      ]),
      ["Initial tension", figure(design.guys.tension, "share", 1)],
    );
  rows.push(["Base", footingName(design.footing, tape)]);
  const anchor = design.guys?.anchor;
  if (anchor)
    rows.push([
      "Anchors",
      `${anchorName(anchor, given.perLevel, problem.catalog.anchors, taped)}${anchor.kind === "post" ? `, guys at ${tape(given.anchor?.head ?? 0)}` : ""}`,
    ]);
  return { title: "Design", parts: [{ kind: "table", head: ["Mast", ""], rows, words: [1] }] };
}

/** A demand or capacity in the unit of its check. */
const inUnit = (si: number, unit: Check["unit"]): Cell => {
  if (!Number.isFinite(si)) return si > 0 ? "no end" : "none";
  switch (unit) {
    case "ratio":
      return si.toFixed(3);
    case "angle":
      return figure(si, "angle", 2);
    case "pressure":
      // soil speaks in psf, steel in ksi
      return Math.abs(si) > 2e6 ? both(si, "stress") : both(si, "pressure");
    case "length":
      return both(si, "feet");
    default:
      return both(si, unit);
  }
};

const checks = ({ verdict, design }: Given): Section => ({
  title: "Checks",
  gloss: "shortest road to failure first; used = demand × required / capacity",
  parts: [
    {
      kind: "table",
      head: ["Check", "Where", "Case", "Demand", "Capacity", "Required", "Used", "Note"],
      words: [1, 2, 7],
      heavy: [0],
      rows: verdict.checks.map((check): Cell[] => [
        check.title,
        placeOf(check, design),
        check.loadCase,
        inUnit(check.demand, check.unit),
        inUnit(check.capacity, check.unit),
        check.kind === "strength" ? check.required.toFixed(2) : "",
        usedOf(check),
        check.note ?? "",
      ]),
    },
  ],
});

/** Each source once, with the checks that lean on it. */
function sources({ verdict }: Given): Section {
  const bySource = new Map<string, Set<string>>();
  for (const check of verdict.checks)
    bySource.set(check.source, (bySource.get(check.source) ?? new Set<string>()).add(check.title));
  return {
    title: "Sources of the required factors and limits",
    parts: [
      {
        kind: "table",
        head: ["Source", "Checks"],
        words: [1],
        rows: [...bySource].map(([source, titles]): Cell[] => [source, [...titles].join(", ")]),
      },
    ],
  };
}

const most = (values: readonly number[]): number => Math.max(0, ...values.map(Math.abs));
const lean = (c: CaseResponse): number => Math.hypot(c.along.at(-1) ?? 0, c.across.at(-1) ?? 0);

const cases = ({ verdict, problem }: Given): Section => ({
  title: "Load cases",
  gloss: `wind factor: ${problem.rules.windFactor.source}`,
  parts: [
    {
      kind: "table",
      head: [
        "Case",
        "Pressure at top",
        "Top moves",
        "Greatest moment",
        "Greatest shear",
        "Compression",
        "Buckles at",
      ],
      rows: verdict.cases.map((c): Cell[] => [
        c.title,
        both(c.pressure.at(-1)?.q ?? 0, "pressure", 1),
        `${inchesRounded(lean(c))} in`,
        both(most(c.moment), "moment"),
        both(most(c.shear), "force"),
        both(Math.max(...c.compression), "force"),
        Number.isFinite(c.bucklingFactor) ? `× ${c.bucklingFactor.toFixed(1)}` : "–",
      ]),
    },
  ],
});
const inchesRounded = (si: number) => (si / 0.0254).toFixed(1);

function reactions({ verdict }: Given): Section {
  const anchors = verdict.cases[0]?.anchors.length ?? 0;
  return {
    title: "Reactions",
    gloss: "on base and anchor heads; up and toward the mast at an anchor",
    parts: [
      {
        kind: "table",
        head: [
          "Case",
          "Base down",
          "Base shear",
          "Base moment",
          ...Array.from({ length: anchors }, (_, i) => [`Anchor ${i + 1} up`, `${i + 1} along`]).flat(),
        ],
        rows: verdict.cases.map((c): Cell[] => [
          c.title,
          both(c.base.compression, "force"),
          both(c.base.shear, "force"),
          both(c.base.moment, "moment"),
          ...c.anchors.flatMap(({ uplift, lateral }): Cell[] => [
            figure(uplift, "force"),
            figure(lateral, "force"),
          ]),
        ]),
      },
      ...(anchors > 0
        ? [
            {
              kind: "words" as const,
              text: "Forces in lbf; bearings of the wind are taken from anchor 1; every anchor is built for the worst of them.",
            },
          ]
        : []),
    ],
  };
}

const said = ({ verdict, problem, model }: Given): Section => ({
  title: "Assumed and not covered",
  parts: [
    {
      kind: "words",
      text: [
        ...verdict.assumptions,
        `Guys end in the mast’s axis; ends bear ${[...new Set(model.guys?.levels.map((l) => `${Math.round(l.strand.efficiency * 100)} %`) ?? [])].join(", ") || "nothing"} of breaking strength.`,
        `Concrete: ${problem.rules.concrete.source}.`,
        "Not covered: raising, earthquake, fatigue, bolts and welds of joints, anchor bolts, soil that is not as stated.",
      ].join(" "),
    },
  ],
});

import { governing } from "../../checks/governing.ts";
import type { Antenna, Catalog, Section, Soil, Strand } from "../../model/catalog.ts";
import type { Design } from "../../model/design.ts";
import { mountHeight } from "../../model/mount-height.ts";
import type { Study } from "../../model/study.ts";
import type { CaseResponse, Check, Verdict } from "../../model/verdict.ts";
import { insulationOf } from "../../problem/insulation.ts";
import { starOf } from "../../problem/star.ts";
import type { Judged } from "../../search/types.ts";
import { numberedChecks } from "../wording/check.ts";
import { byId } from "../wording/parts.ts";

/** All that the elevation shows, in SI and in the plane of the wind; nothing here knows a pixel. */
export interface Scene {
  readonly design: Design;
  readonly verdict: Verdict;
  readonly soil: Soil | undefined;
  readonly frostDepth: number;
  /** What the ground rises along the wind, per distance. */
  readonly rise: number;
  readonly parts: readonly StackPart[];
  /** `arm`: axis to a tip of its torque arm, m; 0 where its guys meet the axis. */
  readonly levels: readonly { height: number; strand: Strand | undefined; arm: number }[];
  readonly anchors: readonly SceneAnchor[];
  readonly items: readonly SceneItem[];
  readonly pipeTop: number;
  readonly load: CaseResponse | undefined;
  /** Bearing the wind blows toward, degrees from north. */
  readonly windBearing: number | null;
  readonly governs: Check | undefined;
  readonly numbered: readonly { check: Check; number: number | null; place: Place }[];
}
export interface StackPart {
  readonly section: Section | undefined;
  readonly from: number;
  readonly to: number;
}
export interface SceneAnchor {
  readonly number: number;
  readonly bearing: number;
  /** Along the wind and across it, from the mast. */
  readonly along: number;
  readonly across: number;
  /** Level distance from the mast, and its hold over the base. */
  readonly radius: number;
  readonly elevation: number;
  /** Depth of the pull's hold, 0 at the surface. */
  readonly depth: number;
  /** Where it holds its guys above the surface. */
  readonly head: number;
}
export interface SceneItem {
  readonly antenna: Antenna | undefined;
  readonly area: number;
  /** Over the base. */
  readonly height: number;
  /** Beside the mast, this far from its axis; 0 on the pipe. */
  readonly beside: number;
}
/** Of the legs, m. */
const CLEAR = 0.4;

export type Place = "mast" | "pipe" | "guy" | "anchor" | "base" | "none";

/** By the first word of what a limit state is called in files; what isn't listed stands on the mast. */
const places: readonly (readonly [RegExp, Place])[] = [
  [/^guy-/, "guy"],
  [/^pipe-/, "pipe"],
  [/^(anchor|screw|rod|post)-/, "anchor"],
  [/^(base|insulator|pad|pedestal|pier|dowel|overturning|sliding)/, "base"],
];
/** Where in the drawing a check belongs. */
export const placeOf = ({ kind, limitState }: Check): Place =>
  kind === "strength" ? (places.find(([name]) => name.test(limitState))?.[1] ?? "mast") : "none";

const loadOf = (verdict: Verdict, governs: Check | undefined): CaseResponse | undefined => {
  const wanted = governs?.loadCase;
  const named = verdict.cases.find((load) => load.title === wanted || load.id === wanted);
  if (named && named.windToward !== null) return named;
  const greatest = (load: CaseResponse) =>
    load.windToward === null ? -1 : Math.max(0, ...load.moment.map((value) => Math.abs(value)));
  return [...verdict.cases].sort((a, b) => greatest(b) - greatest(a))[0];
};

const anchorDepth = (design: Design): number => {
  const anchor = design.guys?.anchor;
  if (!anchor) return 0;
  if (anchor.kind === "deadman") return anchor.depth - anchor.height / 2;
  if (anchor.kind === "post") return anchor.depth / 2;
  return anchor.kind === "rock-rod" ? anchor.socket : 1.2;
};

const anchorsOf = (design: Design, study: Study, catalog: Catalog, windToward: number): SceneAnchor[] => {
  const guys = design.guys;
  if (!guys) return [];
  const row = byId(catalog.anchors, guys.anchor.row);
  const head = row?.kind === "post" ? row.height : 0;
  return starOf(study.lot, guys, head, insulationOf(study, catalog).stand).anchors.map(
    ({ radius, elevation }, index) => {
      const turned = (360 / guys.perLevel) * index;
      const angle = ((turned - windToward) * Math.PI) / 180;
      return {
        number: index + 1,
        bearing: (guys.rotation + turned) % 360,
        along: radius * Math.cos(angle),
        across: radius * Math.sin(angle),
        radius,
        elevation,
        depth: anchorDepth(design),
        head,
      };
    },
  );
};

/** What an evenly falling lot rises toward a bearing, per distance. */
const riseAlong = ({ slope }: Study["lot"], bearing: number): number =>
  slope ? -slope.fall * Math.cos(((bearing - slope.toward) * Math.PI) / 180) : 0;

export const sceneOf = ({ design, verdict }: Judged, study: Study, catalog: Catalog): Scene => {
  const governs = governing(verdict.checks);
  const load = loadOf(verdict, governs);
  let from = 0;
  const parts = design.stack.map((part) => {
    const piece = { section: byId(catalog.sections, part.section), from, to: from + part.length };
    from += part.length;
    return piece;
  });
  const antennas = study.wishes.packages.find((set) => set.id === design.package);
  const items = (antennas?.items ?? []).map((item) => {
    const height = mountHeight(item, design.height);
    // an antenna beside the mast whose arm is not stated is drawn clear of the legs all the same
    const beside = item.above === undefined ? Math.max(item.offset, CLEAR) : 0;
    if (!("antenna" in item)) return { antenna: undefined, area: item.area, height, beside };
    const antenna = byId(catalog.antennas, item.antenna);
    return { antenna, area: antenna?.area ?? 0, height, beside };
  });
  const windToward = load?.windToward ?? 180;
  return {
    design,
    verdict,
    soil: byId(catalog.soils, study.site.soil),
    frostDepth: study.site.frostDepth,
    rise: riseAlong(study.lot, (design.guys?.rotation ?? 0) + windToward),
    parts,
    levels: (design.guys?.levels ?? []).map((level) => ({
      height: level.height,
      strand: byId(catalog.strand, level.strand),
      arm: byId(catalog.torqueArms, level.arm ?? "")?.length ?? 0,
    })),
    anchors: anchorsOf(design, study, catalog, windToward),
    items,
    pipeTop: Math.max(design.height, ...items.map((item) => item.height)),
    load,
    windBearing: load?.windToward == null ? null : ((design.guys?.rotation ?? 0) + load.windToward) % 360,
    governs,
    numbered: numberedChecks(verdict.checks).map((row) => ({ ...row, place: placeOf(row.check) })),
  };
};

/** The joints of a stack where its catalog pieces meet, counted from each part's foot. */
export const joints = (parts: readonly StackPart[]): readonly number[] =>
  parts.flatMap(({ section, from, to }) => {
    const lengths = section?.pieces.map((piece) => piece.length) ?? [];
    const piece = lengths.find(
      (length) => Math.abs(Math.round((to - from) / length) * length - (to - from)) < 1e-3,
    );
    const step = piece ?? to - from;
    const cuts: number[] = [];
    for (let z = from + step; z < to - 1e-3; z += step) cuts.push(z);
    return [...cuts, to];
  });

/** Heights and resultant moments of a case; a moment list twice as long as z holds below and above each node. */
export const momentLine = (load: CaseResponse): readonly (readonly [z: number, moment: number])[] =>
  load.moment.length === load.z.length * 2
    ? load.z.flatMap((z, i) => [[z, load.moment[2 * i]] as const, [z, load.moment[2 * i + 1]] as const])
    : load.z.map((z, i) => [z, load.moment[i] ?? 0] as const);

import { createHash } from "node:crypto";
import { Mast } from "../../physics/mast/solver.ts";
import type { LoadCase, MastInput } from "../../physics/mast/types.ts";
import { armLines, armTips, number } from "./calculix-arms.ts";
import { pressed, stifferBy, stretched } from "./calculix-strain.ts";

/** A mast as CalculiX is given it, and how to read what it prints. */
export interface CalculixModel {
  readonly deck: string;
  /** Names the deck in stored results: other text, other name. */
  readonly hash: string;
  readonly mastNodes: readonly number[];
  /** Height of each mast node as drawn, before it is compressed, and as rigged, m. */
  readonly mastHeights: readonly number[];
  readonly riggedHeights: readonly number[];
  /** Load on each mast node, N. */
  readonly loads: readonly (readonly [number, number, number])[];
  readonly guys: readonly {
    readonly level: number;
    readonly node: number;
    readonly anchorNode: number;
    /** Where it ends, if on an arm: node, and place as drawn. */
    readonly tip?: { readonly node: number; readonly at: readonly [number, number, number] };
    /** Whole load of the guy, N. */
    readonly load: readonly [number, number, number];
  }[];
}

/** Truss segments to a guy. */
export const SEGMENTS = 40;
/** Length of a beam element, m, at most. */
const BEAM = 0.5;
const POINTS = 8;
const GUY_BASE = 10_000;
const GUY_STEP = 100;
const STUBS = 9000;

/**
 * Writes a mast and one load case as a deck for CalculiX: quadratic beams (B32R) with large displacements, guys as
 * chains of trusses (T3D2) with the initial stress of their unstressed lengths.
 *
 * Beams there are solid squares: the side follows from EI and EA, and GA must be the square's own, 5/12 EA. Weight
 * and initial tension shorten a real mast before its levels are set; here the mast is drawn longer by as much.
 * @throws RangeError where a segment is no square bar
 */
export function calculixDeck(input: MastInput, load: LoadCase): CalculixModel {
  const rigged = new Mast(input);
  for (const s of input.segments)
    if (Math.abs(s.ga / squareShear(s.ea) - 1) > 1e-9)
      throw new RangeError(
        `segment from ${s.from} m: found GA ${s.ga} N, expected ${squareShear(s.ea)}, 5/12 EA`,
      );
  if (load.lost)
    throw new RangeError(
      `guy of level ${load.lost.level + 1}: found it lost, expected every guy in its place`,
    );
  const leaning =
    input.pointWeights.find(({ arm }) => arm !== 0) ?? load.points.find(({ moment }) => moment !== 0);
  if (leaning)
    throw new RangeError(`load at ${leaning.z} m: found one on a pipe, expected it on the mast itself`);
  const mesh = beamMesh(input);
  const spring = input.base === "fixed" ? input.baseStiffness : undefined;
  const [cx, cy] = load.toward;

  const nominal = [0, ...mesh.flatMap(({ from, to }) => [0.5 * (from + to), to])];
  const nodeAt = (z: number): number => {
    const i = nominal.findIndex((height) => Math.abs(height - z) < 1e-6);
    if (i < 0) throw new RangeError(`no node at ${z} m`);
    return i;
  };

  // where the axes of a section turn, its node becomes rigid: a pull on a soft one dents the bar by a tenth of a
  // millimetre. A square is the same either way, so it is turned at every guy and load, and stubs are added at the ends
  const turnsAt = new Set([...input.levels, ...input.pointWeights, ...load.points].map(({ z }) => nodeAt(z)));
  const bars: { segment: number; elements: number[]; way: number; stiffer: number }[] = [];
  mesh.forEach(({ segment }, e) => {
    const below = bars.at(-1);
    if (below && below.segment === segment && !turnsAt.has(2 * e)) below.elements.push(e);
    else
      bars.push({
        segment,
        elements: [e],
        way: below && !turnsAt.has(2 * e) ? below.way : 1 - (below?.way ?? 1),
        stiffer: 1,
      });
  });

  // nodes of the mast: ends and middles of elements; each drawn longer by the compression when rigged
  const mastHeights = [0];
  for (const bar of bars) {
    const { ea } = input.segments[bar.segment];
    const pressure = (e: number) => riggedCompression(rigged, 0.5 * (mesh[e].from + mesh[e].to)) / ea;
    const mean = bar.elements.reduce((sum, e) => sum + pressure(e), 0) / bar.elements.length;
    bar.stiffer = stifferBy(mean);
    for (const e of bar.elements) {
      const grown = 1 + (load.mastStrain ?? 0);
      const length = (grown * (mesh[e].to - mesh[e].from)) / pressed(pressure(e) / bar.stiffer);
      const at = mastHeights[mastHeights.length - 1];
      mastHeights.push(at + 0.5 * length, at + length);
    }
  }
  const mastNodes = mastHeights.map((_, i) => i + 1);

  const loads = nominal.map((): [number, number, number] => [0, 0, 0]);
  mesh.forEach(({ from, to, segment }, e) => {
    const length = to - from;
    const middle = 0.5 * (from + to);
    // a step of the load on a node belongs to the element it lies in
    const inside = 1e-9 * length;
    const q = [load.line(from + inside), load.line(middle), load.line(to - inside)];
    const share = [(q[0] * length) / 6, (4 * q[1] * length) / 6, (q[2] * length) / 6];
    share.forEach((force, k) => {
      loads[2 * e + k][0] += cx * force;
      loads[2 * e + k][1] += cy * force;
      loads[2 * e + k][2] -= (input.segments[segment].weight * length * (k === 1 ? 4 : 1)) / 6;
    });
  });
  for (const point of input.pointWeights) loads[nodeAt(point.z)][2] -= point.weight;
  for (const point of load.points) {
    loads[nodeAt(point.z)][0] += cx * point.force;
    loads[nodeAt(point.z)][1] += cy * point.force;
  }

  const last = mastNodes.length;
  const top = mastHeights[last - 1];
  const lines: string[] = ["*NODE,NSET=NMAST"];
  mastHeights.forEach((z, i) => {
    lines.push(`${mastNodes[i]},0.,0.,${number(z)}`);
  });
  lines.push("*NODE");
  [-STUB, -0.5 * STUB].forEach((z, i) => {
    lines.push(`${STUBS + i},0.,0.,${number(z)}`);
  });
  [top + 0.1, top + 0.2].forEach((z, i) => {
    lines.push(`${STUBS + 2 + i},0.,0.,${number(z)}`);
  });
  const section = (
    name: string,
    material: string,
    side: number,
    way: number,
    elements: readonly string[],
  ) => {
    lines.push(
      `*ELEMENT,TYPE=B32R,ELSET=${name}`,
      ...elements,
      `*BEAM SECTION,ELSET=${name},MATERIAL=${material},SECTION=RECT`,
      `${number(side)},${number(side)}`,
      way === 0 ? "1.,0.,0." : "0.,1.,0.",
    );
  };
  bars.forEach(({ segment, elements, way, stiffer }, b) => {
    const { ei, ea } = input.segments[segment];
    const side = Math.sqrt((12 * ei) / ea);
    lines.push(`*MATERIAL,NAME=STEEL${b}`, "*ELASTIC", `${number((stiffer * ea) / side ** 2)},0.`);
    section(
      `MAST${b}`,
      `STEEL${b}`,
      side,
      way,
      elements.map((e) => `${e + 1},${2 * e + 1},${2 * e + 2},${2 * e + 3}`),
    );
    if (b === 0 && spring !== undefined)
      lines.push("*MATERIAL,NAME=RIGID", "*ELASTIC", `${number((RIGID * stiffer * ea) / side ** 2)},0.`);
    if (b === 0)
      section("FOOT", spring === undefined ? `STEEL${b}` : "RIGID", side, 1 - way, [
        `${STUBS},${STUBS},${STUBS + 1},1`,
      ]);
    if (b === bars.length - 1)
      section("HEAD", `STEEL${b}`, side, 1 - way, [`${STUBS + 1},${last},${STUBS + 2},${STUBS + 3}`]);
  });

  const tips = armTips(rigged);
  const joint = (level: number) => nodeAt(input.levels[level].z);
  lines.push(
    ...armLines(tips, (level) => ({ node: mastNodes[joint(level)], height: mastHeights[joint(level)] })),
  );
  const stresses: string[] = [];
  const guyLoads: string[] = [];
  const guys = rigged.guys.map((guy, g) => {
    const level = input.levels[guy.level];
    const mastNode = nodeAt(level.z);
    const first = GUY_BASE + g * GUY_STEP;
    const tip = tips.find(
      ({ level: of, x, y }) => of === guy.level && Math.hypot(x - guy.headX, y - guy.headY) < 1e-9,
    );
    const [outX, outY] = [guy.x - guy.headX, guy.y - guy.headY];
    const to = [-outX, -outY, mastHeights[mastNode] - guy.z];
    const chord = Math.hypot(to[0], to[1], to[2]);
    const along = to.map((component) => component / chord);
    const unstressed = guy.length * (load.guyStretch?.[guy.level] ?? 1);
    lines.push(`*NODE,NSET=NGUY${g}`);
    for (let i = 0; i <= SEGMENTS; i++) {
      const share = i / SEGMENTS;
      lines.push(
        `${first + i},${number(guy.x + share * to[0])},${number(guy.y + share * to[1])},${number(guy.z + share * to[2])}`,
      );
    }
    lines.push(`*ELEMENT,TYPE=T3D2,ELSET=GUY${g}`);
    for (let i = 0; i < SEGMENTS; i++) lines.push(`${first + i},${first + i},${first + i + 1}`);
    // any area will do, stiffness counts: below a hundredth of a square metre rounding keeps it from converging
    const area = 1e-2;
    const rise = level.z - guy.z;
    const span = Math.hypot(outX, outY);
    const strand = stretched(Math.hypot(span, rise) / chord, guy.ea, chord, unstressed);
    lines.push(
      `*MATERIAL,NAME=STRAND${g}`,
      "*ELASTIC",
      `${number(strand.stiffness / area)},0.`,
      `*SOLID SECTION,ELSET=GUY${g},MATERIAL=STRAND${g}`,
      number(area),
    );
    const stress = strand.initial / area;
    const [x, y, z] = along;
    const tensor = [x * x, y * y, z * z, x * y, x * z, y * z].map((c) => number(c * stress)).join(",");
    for (let i = 0; i < SEGMENTS; i++)
      for (let point = 1; point <= POINTS; point++) stresses.push(`${first + i},${point},${tensor}`);
    // load of the case, wind square to the chord as rigged, back in the frame of the anchors
    const c = [-outX, -outY, rise].map((component) => component / Math.hypot(span, rise));
    const d = c[0] * cx + c[1] * cy;
    const across = [cx - d * c[0], cy - d * c[1], -d * c[2]];
    const wind = (load.guyWind[guy.level] ?? 0) * Math.hypot(across[0], across[1], across[2]);
    const q = [wind * across[0], wind * across[1], wind * across[2] - guy.weight];
    const whole = q.map((component) => component * unstressed) as [number, number, number];
    for (let i = 0; i <= SEGMENTS; i++) {
      const part = (i === 0 || i === SEGMENTS ? 0.5 : 1) / SEGMENTS;
      whole.forEach((component, axis) => {
        if (component !== 0) guyLoads.push(`${first + i},${axis + 1},${number(component * part)}`);
      });
    }
    for (const axis of [1, 2, 3])
      lines.push(
        "*EQUATION",
        "2",
        `${first + SEGMENTS},${axis},1.,${tip?.node ?? mastNodes[mastNode]},${axis},-1.`,
      );
    const end = tip && { node: tip.node, at: [tip.x, tip.y, mastHeights[mastNode]] as const };
    return { level: guy.level, node: mastNode, anchorNode: first, load: whole, ...(end ? { tip: end } : {}) };
  });

  if (spring !== undefined) lines.push(...turningBase(spring));
  const held = input.base === "fixed" && spring === undefined;
  lines.push("*BOUNDARY", held ? "1,1,6" : "1,1,3");
  if (!held) lines.push("1,6,6");
  if (spring !== undefined) lines.push(`${SPRUNG},3,3`);
  for (const { anchorNode } of guys) lines.push(`${anchorNode},1,3`);
  lines.push("*NSET,NSET=NREACT", "1,");
  for (const { anchorNode } of guys) lines.push(`${anchorNode},`);
  if (stresses.length > 0) lines.push("*INITIAL CONDITIONS,TYPE=STRESS", ...stresses);
  lines.push("*STEP,NLGEOM,INC=400", "*STATIC", "0.25,1.,1e-6,0.5");
  // the program's own tolerance is half a per cent of the mean force; a tenth of that is near its rounding
  lines.push("*CONTROLS,PARAMETERS=FIELD", "1e-3,1e-2", "*CLOAD");
  loads.forEach((force, i) => {
    force.forEach((component, axis) => {
      if (component !== 0) lines.push(`${mastNodes[i]},${axis + 1},${number(component)}`);
    });
  });
  lines.push(
    ...guyLoads,
    "*NODE PRINT,NSET=NMAST,FREQUENCY=1000",
    "U",
    "*NODE PRINT,NSET=NREACT,FREQUENCY=1000",
    "RF",
    "*END STEP",
    "",
  );
  const deck = lines.join("\n");
  return {
    deck,
    hash: createHash("sha256").update(deck).digest("hex").slice(0, 16),
    mastNodes,
    mastHeights,
    riggedHeights: nominal,
    loads,
    guys,
  };
}

/** The stub under a base that turns: stiffer than the mast by this. */
const RIGID = 1e3;
/** Node at the foot of that stub, and how far it is below the base, m. */
const SPRUNG = 9800;
const STUB = 0.2;

/** Two level springs at the foot of a stiff stub hold the base as one that turns would: k / h2 each. */
const turningBase = (stiffness: number): string[] => [
  "*NODE",
  `${SPRUNG},0.,0.,${number(-STUB)}`,
  ...[1, 2].flatMap((axis) => [
    "*EQUATION",
    "2",
    `${SPRUNG},${axis},1.,${STUBS},${axis},-1.`,
    `*ELEMENT,TYPE=SPRING1,ELSET=TURN${axis}`,
    `${SPRUNG + axis},${SPRUNG}`,
    `*SPRING,ELSET=TURN${axis}`,
    `${axis}`,
    number(stiffness / STUB ** 2),
  ]),
];

/** Shear stiffness of a solid square bar of this axial stiffness, Poisson's ratio 0: 5/6 x G A. */
export const squareShear = (ea: number): number => (5 / 12) * ea;

interface BeamElement {
  readonly from: number;
  readonly to: number;
  readonly segment: number;
}

/** Elements of half a metre at most between all stations. */
function beamMesh(input: MastInput): BeamElement[] {
  const top = input.segments[input.segments.length - 1].to;
  const stations = [
    ...new Set([
      0,
      top,
      ...input.segments.map((s) => s.to),
      ...input.levels.map((level) => level.z),
      ...input.pointWeights.map((point) => point.z),
      ...(input.kinks ?? []),
    ]),
  ]
    .filter((z) => z >= 0 && z <= top)
    .sort((a, b) => a - b);
  return stations.slice(1).flatMap((to, i) => {
    const from = stations[i];
    const pieces = Math.ceil((to - from) / BEAM - 1e-9);
    const at = (k: number) => from + ((to - from) * k) / pieces;
    return Array.from({ length: pieces }, (_, k) => {
      const middle = at(k + 0.5);
      return {
        from: at(k),
        to: at(k + 1),
        segment: input.segments.findIndex((s) => middle > s.from && middle < s.to),
      };
    });
  });
}

/** Compression at a height when rigged, by statics, N. */
function riggedCompression(mast: Mast, z: number): number {
  const e = mast.z.findLastIndex((height) => height <= z);
  return -mast.rigged[e] - mast.weight[e] * (z - 0.5 * (mast.z[e] + mast.z[e + 1]));
}

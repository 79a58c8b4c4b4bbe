import type { Catalog, Table } from "../../model/catalog.ts";
import type { System } from "./figures.ts";
import { sectionName, strandName } from "./parts.ts";

export type Shelf = Table | "prices";
/** Shelves whose rows are alike: a table with a column a value, a page a row, and CSV. */
export type RowShelf = Exclude<Table, "rules">;

export const shelves: readonly { readonly id: Shelf; readonly name: string; readonly question: string }[] = [
  { id: "sections", name: "Sections", question: "Is the used stack worth its price?" },
  { id: "strand", name: "Strand", question: "Which strand holds it up?" },
  { id: "anchors", name: "Anchors", question: "What can hold the guys down?" },
  { id: "footings", name: "Footings", question: "What can it stand on?" },
  { id: "soils", name: "Soils", question: "What does the ground bear?" },
  { id: "antennas", name: "Antennas", question: "What shall it carry?" },
  { id: "pipes", name: "Pipes", question: "What carries the antennas?" },
  { id: "rules", name: "Rules", question: "By which rules is it judged?" },
  { id: "prices", name: "Prices", question: "What does each thing cost here?" },
];

/** Columns of the wide table; the rest of a row stands on its own page at the right. */
export const mainColumns: Readonly<Record<RowShelf, readonly string[]>> = {
  sections: [],
  strand: ["diameter", "grade", "breakingStrength", "weight", "price", "fittings", "efficiency"],
  anchors: ["name", "kind", "length", "height", "width", "depth", "rod", "price", "install"],
  footings: ["name", "kind", "width", "depth", "thickness"],
  soils: ["name", "bearing", "lateralPerDepth", "friction", "cohesion", "unitWeight", "digging"],
  antennas: ["name", "area", "areaKind", "weight", "boom", "bands", "gain", "price"],
  pipes: ["name", "diameter", "wall", "yield", "length", "price"],
};

const words: Readonly<Record<string, string>> = {
  id: "Key",
  family: "Family",
  legs: "Legs",
  face: "Face, leg to leg",
  "leg.diameter": "Leg",
  "leg.wall": "Leg wall, new",
  "leg.angle": "Leg, if an angle",
  "leg.thickness": "Angle thickness, new",
  measuredWall: "Leg wall, measured",
  "bracing.pattern": "Bracing",
  "bracing.member.diameter": "Bracing bar",
  "bracing.member.wall": "Bracing wall",
  "bracing.member.angle": "Bracing, if an angle",
  "bracing.member.thickness": "Bracing thickness",
  "bracing.joined": "Crossing joined",
  "bracing.horizontal.diameter": "Horizontal bar",
  "bracing.horizontal.wall": "Horizontal wall",
  "bracing.horizontal.angle": "Horizontal, if an angle",
  "bracing.horizontal.thickness": "Horizontal thickness",
  panel: "Panel",
  yield: "Yield",
  modulus: "Modulus",
  tubing: "Tubes are",
  splice: "Splice bears, a leg",
  "rated.moment": "Rated moment",
  "rated.axial": "Rated thrust",
  "rated.shear": "Rated shear",
  "rated.source": "Rated by",
  extraWeight: "Joints, share of weight",
  pieces: "Pieces: length: price: have",
  used: "Used",
  invented: "Invented",
  diameter: "Diameter",
  grade: "Grade",
  wire: "Wire",
  breakingStrength: "Breaks at",
  weight: "Weight",
  price: "Price",
  fittings: "Ends of one guy",
  efficiency: "Share that ends hold",
  source: "Source",
  name: "Name",
  kind: "Kind",
  length: "Length",
  height: "Height",
  width: "Width",
  depth: "Depth",
  rod: "Rod",
  install: "To put in",
  thickness: "Thickness",
  pedestal: "Pedestal",
  cage: "Upright bars, share",
  steel: "Bars of a mat, share",
  mats: "Mats of bars",
  bearing: "Bears",
  lateralPerDepth: "Sideways, per depth",
  lateralCap: "Sideways, at most",
  friction: "Friction",
  cohesion: "Cohesion",
  unitWeight: "Unit weight",
  frictionAngle: "Friction angle, °",
  undrainedStrength: "Undrained strength",
  groutBond: "Grout bond",
  layers: "Beneath, from a depth",
  digging: "Digs",
  values: "Values are",
  area: "Area",
  areaKind: "Area is",
  boom: "Boom",
  elements: "Elements",
  span: "Span",
  bands: "Bands",
  gain: "Gain, dBi",
  wall: "Wall",
  offAxis: "Off its axis, °",
  lateralShare: "Sideways share",
  bar: "Bar",
  hole: "Hole",
  socket: "Socket",
  drilling: "Drilling",
  "holds.easy": "Holds, easy digging",
  "holds.firm": "Holds, firm digging",
  "holds.hard": "Holds, hard digging",
  "holds.rock": "Holds, rock",
};
export const columnWords = (name: string): string => words[name] ?? name;

export const rowTitle = (shelf: Table, row: { readonly id: string }, system: System): string => {
  if (shelf === "sections") return sectionName(row as Catalog["sections"][number], system);
  if (shelf === "strand") return strandName(row as Catalog["strand"][number], system);
  return (row as { name?: string }).name ?? row.id;
};

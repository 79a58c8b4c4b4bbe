interface Word {
  readonly word: string;
  /** Other forms that stand for the same in a text. */
  readonly also?: readonly string[];
  /** One line, in the words of the site. */
  readonly line: string;
}

/** Words of the trade, each in one line. The page marks them where they stand and lists them at its foot. */
export const glossary: readonly Word[] = [
  { word: "anchor", also: ["anchors"], line: "What holds the lower end of the guys in the ground." },
  {
    word: "bearing",
    line: "Pressing on the ground: the soil bears so many pounds on each square foot before it gives.",
  },
  { word: "block", line: "A stout footing of concrete that holds by its weight and by the soil beside it." },
  { word: "bracing", line: "The thin rods between the legs, which keep them from shearing past each other." },
  {
    word: "buckling",
    line: "Giving way sideways under a push from the end, long before the steel is crushed.",
  },
  {
    word: "cage",
    line: "Bars tied into a basket and cast into the concrete, because concrete can’t be pulled.",
  },
  { word: "compression", line: "Being pressed together; the lee leg of a mast is pressed most." },
  { word: "contour", also: ["contours"], line: "A line along which the cost is the same." },
  { word: "deadman", also: ["deadmen"], line: "A block buried deep, held down by the soil above it." },
  { word: "derated", line: "Counted as weaker than new, by the wall that rust has left." },
  { word: "dowel", also: ["dowels"], line: "A bar grouted into a hole in rock, to tie concrete to it." },
  {
    word: "earth screw",
    also: ["earth screws"],
    line: "A steel shaft with a blade, turned into the ground.",
  },
  {
    word: "effective area",
    line: "The flat plate that would catch as much wind as the antenna does, in square feet.",
  },
  { word: "EHS", line: "Extra high strength: the stronger grade of guy strand, for its size." },
  {
    word: "exposure",
    line: "How open the country is: B built up or wooded, C open fields, D beside open water.",
  },
  { word: "face", line: "One side of a lattice mast, from leg to leg." },
  { word: "fall zone", line: "The circle that the mast would reach if it fell over at its foot." },
  { word: "footing", line: "The concrete that the mast stands on." },
  { word: "front", line: "The designs that no other beats in cost, concrete and margin at once." },
  { word: "frost depth", line: "How far down the ground freezes; footings go below it or are lifted." },
  { word: "governs", line: "Is nearest to failing: the one check to mend first." },
  {
    word: "gust factor",
    line: "How much a gust adds to the steady wind; a mast that sways slowly asks for more.",
  },
  {
    word: "guy",
    also: ["guys"],
    line: "A steel strand from the mast to an anchor, which holds the mast upright.",
  },
  { word: "initial tension", line: "How tight a guy is drawn in still air, as a share of what breaks it." },
  { word: "Kzt", line: "Hill factor: how much faster the wind runs over a crest; 1.0 on level ground." },
  {
    word: "LRFD",
    line: "Loads are raised and strengths lowered by factors, in place of one factor of safety.",
  },
  {
    word: "margin",
    line: "How much more load, in percent, everything could bear beyond what the rules ask.",
  },
  { word: "moment", line: "Force times lever: what bends a mast or turns a footing over." },
  { word: "overturning", line: "Tipping over about the footing’s lower edge." },
  { word: "pad", line: "A flat slab of concrete with a pedestal on it: it spreads the load." },
  { word: "passive pressure", line: "How hard soil pushes back on what is pressed against it." },
  { word: "pedestal", line: "The upright stub of concrete between a pad and the mast." },
  { word: "pier", line: "A round shaft of concrete in a drilled hole." },
  {
    word: "proven",
    line: "Every design on the grid is either judged or shown to cost more: nothing was guessed.",
  },
  { word: "punching", line: "The pedestal breaking through the slab as a heel breaks through ice." },
  { word: "rock rod", also: ["rock rods"], line: "A steel rod grouted into a hole in rock." },
  {
    word: "rule set",
    line: "The factors of one standard: how much stronger than its load each part must be.",
  },
  { word: "section", also: ["sections"], line: "One length of mast, usually ten feet." },
  { word: "setback", line: "How far everything must stay from the lot line." },
  { word: "shear", line: "A push across: one part sliding past the next." },
  { word: "sliding", line: "The footing being pushed along sideways." },
  { word: "splice", line: "The joint from one section to the next." },
  { word: "stability", line: "Whether the whole bent mast stands, or gives way all at once." },
  { word: "strand", line: "Steel wires laid round each other: what guys are made of." },
  { word: "thrust", line: "The push down the mast, from weight and from the guys’ pull." },
  { word: "toe", line: "The footing’s lower edge on the side that it would tip to." },
  { word: "torque", line: "What twists the mast about its own axis." },
  {
    word: "torque arm",
    also: ["torque arms"],
    line: "An arm that holds two guys apart at one level, so that they resist twist.",
  },
  { word: "turnbuckle", also: ["turnbuckles"], line: "A screw in the guy to draw it tighter." },
  { word: "uplift", line: "Being pulled up out of the ground." },
  {
    word: "utilisation",
    line: "Load times required factor over strength: 1.00 is all of what is allowed.",
  },
  { word: "yield", line: "The stress at which steel stays bent." },
];

const plain = (text: string) => text.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");
const byForm = new Map(
  glossary.flatMap((entry) => [entry.word, ...(entry.also ?? [])].map((form) => [form.toLowerCase(), entry])),
);
const forms = [...byForm.keys()].sort((a, b) => b.length - a.length).map(plain);
const anyForm = new RegExp(`(?<![\\p{L}-])(?:${forms.join("|")})(?![\\p{L}-])`, "giu");

export interface Piece {
  readonly text: string;
  readonly line?: string;
}

/** The line of one word, where the page says it in a shorter way. */
export const lineOf = (word: string): string => byForm.get(word.toLowerCase())?.line ?? "";

/** A text cut where a word of the trade stands; each word is marked once in a text. */
export const glossedPieces = (text: string): readonly Piece[] => {
  const pieces: Piece[] = [];
  const seen = new Set<Word>();
  let from = 0;
  for (const match of text.matchAll(anyForm)) {
    const entry = byForm.get(match[0].toLowerCase());
    if (!entry || seen.has(entry)) continue;
    seen.add(entry);
    if (match.index > from) pieces.push({ text: text.slice(from, match.index) });
    pieces.push({ text: match[0], line: entry.line });
    from = match.index + match[0].length;
  }
  if (from < text.length) pieces.push({ text: text.slice(from) });
  return pieces;
};

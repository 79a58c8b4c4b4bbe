/** Four corners of what a word covers, in order; turned words keep their turned box. */
export type Quad = readonly (readonly [x: number, y: number])[];

/** A box of a width and height about a middle, turned by degrees. */
export const turnedBox = (x: number, y: number, width: number, height: number, degrees: number): Quad => {
  const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  return [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ].map(([a, b]) => {
    const [dx, dy] = [(a * width) / 2, (b * height) / 2];
    return [x + dx * cos - dy * sin, y + dx * sin + dy * cos] as const;
  });
};

const edges = (quad: Quad) => quad.map((corner, i) => [corner, quad[(i + 1) % quad.length]] as const);

/** Is there a line between them, along a side of one of the two? Then convex shapes are apart. */
export const overlap = (a: Quad, b: Quad): boolean =>
  ![...edges(a), ...edges(b)].some(([[x1, y1], [x2, y2]]) => {
    const along = (quad: Quad) => quad.map(([x, y]) => (x - x1) * (y2 - y1) - (y - y1) * (x2 - x1));
    const [first, second] = [along(a), along(b)];
    return Math.max(...first) <= Math.min(...second) || Math.max(...second) <= Math.min(...first);
  });

/** From a place to the nearest of a shape; 0 inside it. */
export const distanceTo = (quad: Quad, x: number, y: number): number => {
  const sides = edges(quad).map(([[x1, y1], [x2, y2]]) => (x - x1) * (y2 - y1) - (y - y1) * (x2 - x1));
  if (sides.every((side) => side >= 0) || sides.every((side) => side <= 0)) return 0;
  return Math.min(
    ...edges(quad).map(([[x1, y1], [x2, y2]]) => {
      const [dx, dy] = [x2 - x1, y2 - y1];
      const share = Math.min(1, Math.max(0, ((x - x1) * dx + (y - y1) * dy) / (dx * dx + dy * dy || 1)));
      return Math.hypot(x - x1 - share * dx, y - y1 - share * dy);
    }),
  );
};

/** Of a circle with its line. */
export const RADIUS = 10.5;

export type Spot = readonly [x: number, y: number];

export interface Wanted {
  readonly id: string;
  /** Where it belongs. */
  readonly first: Spot;
  /** Where it would stand, best first: worked out as far as they are asked. */
  readonly spots: () => Iterable<Spot>;
}
interface Paper {
  readonly width: number;
  readonly height: number;
  readonly words: readonly Quad[];
  /** Circles that stand already. */
  readonly taken: readonly (readonly [x: number, y: number])[];
}

/** The first spot of each, in order, that covers no word and no other circle and lies on the paper. */
export const placed = (wanted: readonly Wanted[], paper: Paper): ReadonlyMap<string, Spot> => {
  const taken = [...paper.taken];
  // most words are far from most spots: that is seen at a glance
  const words = paper.words.map((word) => {
    const [xs, ys] = [word.map(([x]) => x), word.map(([, y]) => y)];
    return {
      word,
      left: Math.min(...xs),
      right: Math.max(...xs),
      top: Math.min(...ys),
      foot: Math.max(...ys),
    };
  });
  const far = RADIUS + 1;
  const free = ([x, y]: Spot): boolean =>
    x >= RADIUS &&
    y >= RADIUS &&
    x <= paper.width - RADIUS &&
    y <= paper.height - RADIUS &&
    taken.every(([tx, ty]) => Math.hypot(tx - x, ty - y) >= 2 * RADIUS) &&
    words.every(
      ({ word, left, right, top, foot }) =>
        x <= left - far ||
        x >= right + far ||
        y <= top - far ||
        y >= foot + far ||
        distanceTo(word, x, y) >= far,
    );
  const places = new Map<string, Spot>();
  for (const { id, first, spots } of wanted) {
    // paper with no room for it at all keeps the number where it belongs: the list beside it says the rest
    let spot = first;
    for (const one of spots())
      if (free(one)) {
        spot = one;
        break;
      }
    taken.push(spot);
    places.set(id, spot);
  }
  return places;
};

/** Rings about a place, the nearest first and what is preferred of each ring first. */
export function* around(
  x: number,
  y: number,
  prefer: (dx: number, dy: number) => number,
  from = 20,
): Generator<Spot> {
  for (let ring = 0; ring < 24; ring++) {
    const radius = from + 7 * ring;
    const round = Array.from({ length: 24 }, (_, i) => {
      const angle = (i * Math.PI) / 12;
      return [radius * Math.cos(angle), radius * Math.sin(angle)] as const;
    });
    round.sort((a, b) => prefer(...a) - prefer(...b));
    for (const [dx, dy] of round) yield [x + dx, y + dy];
  }
}

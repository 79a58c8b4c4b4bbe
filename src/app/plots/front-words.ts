/** A ring on the paper, px. */
export interface RingSpot {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  readonly letter: string | null;
}
/** Where a stair ends on the right, and what stands there: in full, or where there is no room for it in short. */
export interface StairEnd {
  readonly x: number;
  readonly y: number;
  readonly words: readonly [full: string, short: string];
  /** In the heavy face, under its line: the safe edge, whose upper side belongs to the stairs. */
  readonly under: boolean;
}

type Box = readonly [left: number, top: number, right: number, foot: number];
type Off = readonly [dx: number, dy: number];

/** Side of the square behind a letter. */
export const LETTER = 17;
/** Mean width of a letter of 13 px, in the light and the heavy face. */
const LIGHT = 6;
const HEAVY = 6.5;

const meet = (a: Box, b: Box): boolean => a[0] < b[2] && b[0] < a[2] && a[1] < b[3] && b[1] < a[3];
const square = (x: number, y: number, half: number): Box => [x - half, y - half, x + half, y + half];

/** Middles of a letter beside its ring, the usual side first. */
const beside = ({ radius, letter }: RingSpot): readonly Off[] => {
  // the user's own on the right: it may stand where a marked one has its letter on the left
  const usual = letter === "E" ? 1 : -1;
  return [radius + 5, radius + 17, radius + 29].flatMap((from): Off[] => {
    const d = from + LETTER / 2;
    return [
      [usual * d, 0],
      [-usual * d, 0],
      [0, -d],
      [0, d],
      [usual * d * 0.8, -d * 0.8],
      [usual * d * 0.8, d * 0.8],
    ];
  });
};

/** Letters and words of the front at the first of their places where they cover no ring and none of each other. */
export const frontWords = (
  rings: readonly RingSpot[],
  ends: readonly StairEnd[],
  paper: Box,
): {
  /** Middle of each ring's letter from the ring; null where it has none. */
  readonly letters: readonly (Off | null)[];
  readonly labels: readonly { readonly text: string; readonly dy: number }[];
} => {
  const taken: Box[] = rings.map(({ x, y, radius }) => square(x, y, radius + 1));
  const free = (box: Box): boolean =>
    box[0] >= paper[0] &&
    box[1] >= paper[1] &&
    box[2] <= paper[2] &&
    box[3] <= paper[3] &&
    !taken.some((other) => meet(box, other));
  const letters = rings.map((ring): Off | null => {
    if (ring.letter === null) return null;
    const at = ([dx, dy]: Off) => square(ring.x + dx, ring.y + dy, LETTER / 2);
    const offs = beside(ring);
    const off = offs.find((one) => free(at(one))) ?? offs[0];
    taken.push(at(off));
    return off;
  });
  const labels = ends.map(({ x, y, words, under }) => {
    const wide = under ? HEAVY : LIGHT;
    const box = (text: string, dy: number): Box => [x - text.length * wide, y + dy - 11, x, y + dy + 3];
    const [near, far] = under ? [17, -7] : [-7, 17];
    const places = [near, far, near + Math.sign(near) * 14].flatMap((dy) =>
      words.map((text) => ({ text, dy })),
    );
    const label = places.find(({ text, dy }) => free(box(text, dy))) ?? { text: words[1], dy: near };
    taken.push(box(label.text, label.dy));
    return label;
  });
  return { letters, labels };
};

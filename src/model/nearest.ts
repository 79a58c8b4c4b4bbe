/** Edits (insert, delete, replace) between two words. */
const distance = (a: string, b: string): number => {
  let row = Array.from({ length: b.length + 1 }, (_, index) => index);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++)
      next[j] = Math.min(row[j] + 1, next[j - 1] + 1, row[j - 1] + (a[i - 1] === b[j - 1] ? 0 : 1));
    row = next;
  }
  return row[b.length];
};

/** The known word that was most likely meant; undefined where nothing is known. Long words are cut to 60. */
export const nearest = (word: string, known: readonly string[]): string | undefined => {
  const short = word.slice(0, 60);
  let best: string | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const candidate of known) {
    const edits = distance(short, candidate);
    if (edits < least) [best, least] = [candidate, edits];
  }
  return best;
};

/** As `nearest`, but only where the slip is a slip of the pen: half of the word still stands. */
export const nearlySame = (word: string, known: readonly string[]): string | undefined => {
  const near = nearest(word, known);
  return near !== undefined && distance(word.slice(0, 60), near) <= word.length / 2 ? near : undefined;
};

/** One way to give in: of several of a kind (two steps of less height) a set has one at most. */
export interface Way {
  readonly kind: string;
}

/** What an exact search said of a study with a set of ways taken: safe or not, or no word within its time. */
export type Word = "safe" | "none-safe" | "no word";

export interface Relaxed<W extends Way> {
  /** How many must give way together: every smaller set is known not to be enough, or had no word. */
  readonly size: number;
  /** Sets of that size that are enough. */
  readonly enough: readonly (readonly W[])[];
  /** Sets of that size still to be asked, in the order of the ways. */
  readonly open: readonly (readonly W[])[];
  /** Smaller sets without a word: where there are some, that none of them is enough is not proven. */
  readonly silent: number;
}

/**
 * The fewest ways that must be taken together until something is safe, from what is known so far; asked again after
 * every answer it goes on where it was. Sizes are taken in turn and no set is guessed from another: a lower mast or a
 * smaller antenna may fail where the larger stands.
 * @param most sets larger than this are not asked about
 * @param word what is known of a set; undefined where it was not asked yet
 */
export function fewest<W extends Way>(
  ways: readonly W[],
  most: number,
  word: (set: readonly W[]) => Word | undefined,
): Relaxed<W> {
  let silent = 0;
  for (let size = 1; size <= most; size++) {
    const sets = setsOf(ways, size);
    const said = sets.map(word);
    const enough = sets.filter((_, i) => said[i] === "safe");
    const open = sets.filter((_, i) => said[i] === undefined);
    if (enough.length > 0 || open.length > 0 || size === most) return { size, enough, open, silent };
    silent += said.filter((one) => one === "no word").length;
  }
  throw new Error("asked for sets of no ways");
}

/** Every set of so many ways of unlike kinds. */
function setsOf<W extends Way>(ways: readonly W[], size: number): (readonly W[])[] {
  if (size === 0) return [[]];
  return ways.flatMap((way, i) =>
    setsOf(
      ways.slice(i + 1).filter(({ kind }) => kind !== way.kind),
      size - 1,
    ).map((rest) => [way, ...rest]),
  );
}

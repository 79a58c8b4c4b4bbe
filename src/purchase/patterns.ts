/** Kinds of stock and of cuts, in whole units of length, longest cut first. */
export interface Lengths {
  readonly stock: readonly {
    readonly length: number;
    readonly cents: number;
    /** Infinite where there is any number. */
    readonly have: number;
  }[];
  readonly cuts: readonly number[];
  /** How many of each cut. */
  readonly demand: readonly number[];
}

/** One way to cut one piece of stock: how many of each cut. */
export interface Pattern {
  readonly stock: number;
  readonly counts: readonly number[];
}

/**
 * The ways to cut one piece of stock that an optimum needs: those that leave no room for another cut, and that don't
 * also fit on stock which costs no more and never runs out. Null where there are more than `most`.
 */
export function patternsOf({ stock, cuts, demand }: Lengths, most: number): readonly Pattern[] | null {
  const patterns: Pattern[] = [];
  const counts = cuts.map(() => 0);
  // all that is wanted of a cut and those after it
  const beyond = cuts.map((_, i) => cuts.slice(i).reduce((sum, cut, k) => sum + cut * demand[i + k], 0));
  stock.forEach(({ length, cents, have }, s) => {
    if (have === 0) return;
    const instead = stock.reduce((longest, other, o) => {
      const noDearer = other.cents < cents || (other.cents === cents && o < s);
      return other.have === Number.POSITIVE_INFINITY && noDearer ? Math.max(longest, other.length) : longest;
    }, 0);
    /** `spared`: the shortest cut of which fewer are taken than wanted. */
    const go = (i: number, left: number, spared: number) => {
      // room for the spared cut will stay, whatever follows
      if (patterns.length > most || left - (beyond[i] ?? 0) >= spared) return;
      if (i === cuts.length) {
        if (length - left > instead) patterns.push({ stock: s, counts: [...counts] });
        return;
      }
      for (let n = Math.min(demand[i], Math.floor(left / cuts[i])); n >= 0; n--) {
        counts[i] = n;
        go(i + 1, left - n * cuts[i], n < demand[i] ? cuts[i] : spared);
      }
      counts[i] = 0;
    };
    go(0, length, Number.POSITIVE_INFINITY);
  });
  return patterns.length > most ? null : patterns;
}

/**
 * The least money for the cuts, pattern by pattern; null where the stock runs out. Bellman's recursion over what is
 * still to cut (k) and what is left of stock that runs out (h):
 *   least(0, h) = 0,  least(k, h) = min over patterns p that hold k's longest cut of cents(p) + least(k - p, h - 1 of p's).
 * Some piece of stock holds that cut, and no other order need be tried. Hot.
 */
export function cheapest(lengths: Lengths, patterns: readonly Pattern[]): readonly Pattern[] | null {
  const { stock, demand } = lengths;
  const n = demand.length;
  const { placeOf, states, stockPlaceOf, stockStates } = radix(lengths);
  // the same patterns as flat tables
  const counts = Int32Array.from(patterns.flatMap((pattern) => pattern.counts));
  const cents = Float64Array.from(patterns, (pattern) => stock[pattern.stock].cents);
  const place = Int32Array.from(patterns, (pattern) => stockPlaceOf[pattern.stock]);
  const size = Int32Array.from(patterns, (pattern) => Math.min(stock[pattern.stock].have, 1e6) + 1);
  const holding = demand.map((_, i) => patterns.flatMap((pattern, p) => (pattern.counts[i] > 0 ? [p] : [])));
  const least = new Float64Array(states * stockStates).fill(Number.POSITIVE_INFINITY);
  const choice = new Int32Array(states * stockStates).fill(-1);
  least.fill(0, 0, stockStates);
  const still = new Int32Array(n);
  const after = (p: number) => {
    let rest = 0;
    for (let i = 0; i < n; i++) {
      const kept = still[i] - counts[p * n + i];
      if (kept > 0) rest += kept * placeOf[i];
    }
    return rest;
  };
  const read = (k: number) => {
    for (let i = 0; i < n; i++) still[i] = Math.floor(k / placeOf[i]) % (demand[i] + 1);
    return still.findIndex((count) => count > 0);
  };
  for (let k = 1; k < states; k++) {
    for (const p of holding[read(k)]) {
      const rest = after(p) * stockStates;
      for (let h = 0; h < stockStates; h++) {
        // stock that never runs out has no place of its own
        if (place[p] > 0 && Math.floor(h / place[p]) % size[p] === 0) continue;
        const total = cents[p] + least[rest + h - place[p]];
        if (total < least[k * stockStates + h]) {
          least[k * stockStates + h] = total;
          choice[k * stockStates + h] = p;
        }
      }
    }
  }
  const taken: Pattern[] = [];
  let h = stockStates - 1;
  for (let k = states - 1; k > 0; ) {
    const p = choice[k * stockStates + h];
    if (p < 0) return null;
    taken.push(patterns[p]);
    read(k);
    k = after(p);
    h -= place[p];
  }
  return taken;
}

/** What is still to cut, and what is left of stock that runs out, each as one number. */
export function radix({ stock, demand }: Lengths) {
  let states = 1;
  const placeOf = demand.map((count) => {
    const place = states;
    states *= count + 1;
    return place;
  });
  let stockStates = 1;
  const stockPlaceOf = stock.map(({ have }) => {
    if (have === Number.POSITIVE_INFINITY) return 0;
    const place = stockStates;
    stockStates *= have + 1;
    return place;
  });
  return { placeOf, states, stockPlaceOf, stockStates };
}

import geneticAlgorithm from "geneticalgorithm";
import simulatedAnnealing from "simulated-annealing";
import { verify } from "../../src/checks/verify.ts";
import type { Design } from "../../src/model/design.ts";
import { starOf } from "../../src/problem/star.ts";
import type { Problem, StackModel } from "../../src/problem/types.ts";

// Two general-purpose global optimisers from the registry on the same designs and the same judge.

/** A design as numbers from 0 to 1, one a choice: what such libraries are given. */
type Genes = readonly number[];

const MOST_LEVELS = 3;
const GENES = 9 + 3 * MOST_LEVELS;

/** What a design that fails is charged for each unit of utilisation beyond what is allowed, cents. */
const PENALTY = 1_000_000;
/** No failed check counts for more than this many units. */
const MOST_BEYOND = 10;

const uniform = (seed: number) => {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
};

/** The design that genes stand for: each picks from the study's own lists, those with a price cheapest first. */
function decoder(problem: Problem): (genes: Genes) => Design | null {
  const { parts } = problem.study;
  const stacks: StackModel[] = problem.stacks.flat().sort((a, b) => a.cents - b.cents);
  return (genes) => {
    let next = 0;
    const pick = <T>(from: readonly T[]): T =>
      from[Math.min(from.length - 1, Math.floor(genes[next++] * from.length))];
    const pack = pick(problem.packages);
    const stack = pick(stacks);
    const footing = pick(problem.footings).choice;
    const support = pick(parts.supports);
    const design = {
      package: pack.row.id,
      height: stack.height,
      stack: stack.parts.map(({ section, length }) => ({ section: section.row.id, length })),
      guys: null,
      footing,
    };
    if (support === "freestanding") return design;
    const anchor = pick(problem.anchors);
    const perLevel = pick(parts.guysPerLevel);
    const count = pick(parts.levelCounts);
    const heights = problem.levelHeights.filter((z) => z <= stack.height + 1e-9);
    const star = { perLevel, radius: pick(problem.radii), rotation: pick(problem.rotations) };
    const levels = [];
    for (let i = 0; i < MOST_LEVELS; i++)
      levels.push({ height: pick(heights), strand: pick(problem.strands).id, tension: pick(parts.tensions) });
    const chosen = levels.slice(0, count).sort((a, b) => a.height - b.height);
    if (new Set(chosen.map(({ height }) => height)).size < count) return null;
    const highest = Math.max(...starOf(problem.study.lot, star, anchor.head).anchors.map((a) => a.elevation));
    if (chosen[0].height <= highest) return null;
    const [{ tension }] = chosen;
    return {
      ...design,
      guys: {
        ...star,
        tension,
        levels: chosen.map(({ height, strand, tension: own }) => ({
          height,
          strand,
          ...(own === tension ? {} : { tension: own }),
        })),
        anchor: anchor.choice,
      },
    };
  };
}

/** What an optimiser found in its time. */
export interface Found {
  /** Of the cheapest safe design that it met, cents; null where it met none. */
  readonly cents: number | null;
  readonly verified: number;
}

class OutOfTime extends Error {}

/** Penalised cost of genes, which ends the run when time is up. */
function pricing(problem: Problem, milliseconds: number) {
  const decode = decoder(problem);
  const until = performance.now() + milliseconds;
  let best: number | null = null;
  let verified = 0;
  return {
    found: (): Found => ({ cents: best, verified }),
    cost(genes: Genes): number {
      if (performance.now() > until) throw new OutOfTime();
      const design = decode(genes);
      if (!design) return 2 * MOST_BEYOND * PENALTY;
      verified++;
      const verdict = verify(problem, design);
      const cents = Math.round(100 * verdict.bill.total);
      if (verdict.passes) {
        if (best === null || cents < best) best = cents;
        return cents;
      }
      let beyond = 0;
      for (const { passes, utilisation } of verdict.checks)
        if (!passes) beyond += Math.min(utilisation, MOST_BEYOND);
      return cents + PENALTY * beyond;
    },
  };
}

const annealing = (genes: Genes, cost: (genes: Genes) => number, random: () => number): void => {
  // from accepting most to accepting none: a failed check costs PENALTY, a row of the catalog some dollars
  const steps = 4000;
  const [hot, cold] = [PENALTY, 100];
  for (let start = genes; ; start = anywhere(random))
    simulatedAnnealing({
      initialState: start,
      tempMax: hot,
      tempMin: cold,
      newState: (of: Genes) => mutated(of, random),
      getTemp: (temperature: number) => temperature * (cold / hot) ** (1 / steps),
      getEnergy: cost,
    });
};

const genetic = (genes: Genes, cost: (genes: Genes) => number, random: () => number): void => {
  const known = new Map<string, number>();
  const fitness = (of: Genes) => {
    // it asks for the same again and again
    const key = of.join();
    let value = known.get(key);
    if (value === undefined) known.set(key, (value = -cost(of)));
    return value;
  };
  const evolution = geneticAlgorithm<Genes>({
    mutationFunction: (of) => mutated(of, random),
    crossoverFunction: (a, b) => {
      const takes = a.map(() => random() < 0.5);
      return [a.map((gene, i) => (takes[i] ? gene : b[i])), b.map((gene, i) => (takes[i] ? gene : a[i]))];
    },
    fitnessFunction: fitness,
    population: Array.from({ length: 100 }, (_, i) => (i === 0 ? genes : anywhere(random))),
    populationSize: 100,
  });
  for (;;) evolution.evolve();
};

const anywhere = (random: () => number): Genes => Array.from({ length: GENES }, random);

/** One choice anew, or one moved a little along its list. */
const mutated = (of: Genes, random: () => number): Genes => {
  const at = Math.floor(random() * GENES);
  const near = of[at] + 0.2 * (random() - 0.5);
  const gene = random() < 0.5 ? random() : Math.min(0.999999, Math.max(0, near));
  return of.map((old, i) => (i === at ? gene : old));
};

/** The packages, by their names in the registry. */
export const optimisers = { "simulated-annealing": annealing, geneticalgorithm: genetic } as const;

/** The cheapest safe design that an optimiser meets in its time, from a seeded start. */
export function optimise(
  name: keyof typeof optimisers,
  problem: Problem,
  milliseconds: number,
  seed: number,
): Found {
  const random = uniform(seed);
  const { cost, found } = pricing(problem, milliseconds);
  // the packages draw from the one source that there is
  const drawn = Math.random;
  Math.random = random;
  try {
    optimisers[name](anywhere(random), cost, random);
  } catch (error) {
    if (!(error instanceof OutOfTime)) throw error;
  } finally {
    Math.random = drawn;
  }
  return found();
}

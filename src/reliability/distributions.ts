import { normalAt, normalBelow } from "./normal.ts";

/** A variable by its distribution, mean and standard deviation, in the unit that its reader knows. */
export interface Distribution {
  readonly distribution: "normal" | "lognormal" | "gumbel";
  readonly mean: number;
  readonly deviation: number;
}

/** A variable as the standard normal u turns it out. */
export interface Variable {
  /** Its value where a standard normal has u: `F^-1(Phi(u))`, rising. */
  at(u: number): number;
}

/** Euler's constant, between the mean and the mode of a Gumbel distribution. */
const EULER = 0.5772156649015329;

/**
 * The transformation to standard normal space, `F(x) = Phi(u)`. Gumbel's is that of the greatest value (type I).
 * @param years the greatest of so many independent draws is meant, not one
 * @throws RangeError where mean or deviation make no such distribution
 */
export function variable({ distribution, mean, deviation }: Distribution, years = 1): Variable {
  if (!(deviation > 0 && Number.isFinite(mean) && years >= 1))
    throw new RangeError(
      `distribution: found mean ${mean}, deviation ${deviation}, of ${years}, expected a deviation above 0 and the greatest of 1 or more`,
    );
  const one = quantile({ distribution, mean, deviation });
  if (years === 1) return { at: one.ofNormal };
  return {
    at(u) {
      // F(x)^years = Phi(u); near 1 what is above counts, not what is below
      const above = normalBelow(-u);
      const aboveOne =
        above < 0.5 ? -Math.expm1(Math.log1p(-above) / years) : 1 - normalBelow(u) ** (1 / years);
      return one.ofNormal(-normalAt(Math.min(Math.max(aboveOne, Number.MIN_VALUE), 1 - Number.EPSILON / 2)));
    },
  };
}

function quantile({ distribution, mean, deviation }: Distribution): { ofNormal: (u: number) => number } {
  switch (distribution) {
    case "normal":
      return { ofNormal: (u) => mean + deviation * u };
    case "lognormal": {
      if (!(mean > 0)) throw new RangeError(`lognormal: found mean ${mean}, expected one above 0`);
      const zeta = Math.sqrt(Math.log1p((deviation / mean) ** 2));
      const lambda = Math.log(mean) - 0.5 * zeta ** 2;
      return { ofNormal: (u) => Math.exp(lambda + zeta * u) };
    }
    case "gumbel": {
      const scale = (deviation * Math.sqrt(6)) / Math.PI;
      const mode = mean - EULER * scale;
      // -log(Phi(u)) from what lies above, where that is little
      return {
        ofNormal: (u) => {
          const minusLog = u > 0 ? -Math.log1p(-normalBelow(-u)) : -Math.log(normalBelow(u));
          return mode - scale * Math.log(minusLog);
        },
      };
    }
  }
}

import type { Catalog, Insulator } from "../model/catalog.ts";
import type { Study } from "../model/study.ts";

export interface Insulation {
  /** What the study may choose from; null where its mast stands on the footing itself. */
  readonly insulators: readonly Insulator[] | null;
  /**
   * Of the mast's foot above its footing, m: what the tallest of them stands. A shorter one is packed up to it, so
   * that the choice among them moves no guy.
   */
  readonly stand: number;
}

export function insulationOf({ wishes, parts }: Study, catalog: Catalog): Insulation {
  if (!wishes.insulatedBase) return { insulators: null, stand: 0 };
  const insulators = catalog.insulators.filter(
    ({ id }) => parts.insulators === "all" || parts.insulators.includes(id),
  );
  return { insulators, stand: Math.max(0, ...insulators.map(({ height }) => height)) };
}

/** Where an antenna hangs; exactly one is stated. */
interface Hung {
  readonly above?: number | undefined;
  readonly at?: number | undefined;
  readonly below?: number | undefined;
}

/** Height of an antenna over the base of a mast of this height, m. */
export const mountHeight = (item: Hung, mast: number): number =>
  item.above === undefined ? (item.at ?? mast - (item.below ?? 0)) : mast + item.above;

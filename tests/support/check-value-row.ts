/** Where each test file leaves its rows; the run's teardown makes docs/validation.md of them. */
export const ROWS_FOLDER = "node_modules/.cache/mastwright-validation";

/**
 * How far the number is known: a published page says it, it is recalled from the named source, it follows by
 * arithmetic from the named formula, it is the trade's habit without a source, or another program computed it.
 */
type SourceTag = "published" | "from memory" | "arithmetic" | "common practice, no source" | "side by side";

export interface CheckValue {
  /** What is checked, by the words of the trade: "wind: Kz, ASCE 7-16 B at 30 ft". */
  readonly subject: string;
  /** Standard or book, edition, clause or table. */
  readonly source: string;
  readonly tag: SourceTag;
  readonly expected: number;
  readonly computed: number;
  /** Relative, unless `absolute` is set. */
  readonly tolerance: number;
  readonly absolute?: boolean;
  /** Of expected and computed; "" for a plain number. */
  readonly unit: string;
}

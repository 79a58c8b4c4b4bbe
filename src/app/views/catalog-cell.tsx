import type { Table } from "../../model/catalog.ts";
import { readCell, writeCell } from "../../model/csv-cell.ts";
import type { Column } from "../../model/csv-columns.ts";
import { Given } from "../parts/given.tsx";
import { type Reading, useBook } from "../state/book.ts";
import { valueAt } from "../state/path.ts";
import { editRow, writtenRow } from "../state/shelf.ts";
import { columnWords } from "../wording/catalog-words.ts";
import { figure, grouped, type System, unitOf } from "../wording/figures.ts";
import { type Typed, typedPrice, typedQuantity } from "../wording/given.ts";

interface CellProps {
  readonly table: Table;
  readonly id: string;
  readonly column: Column;
  readonly reading: Reading;
  /** Of whom: for the field's name and the words of Undo. */
  readonly title: string;
  readonly empty?: string;
  /** With its unit, where no column head says it. */
  readonly whole?: boolean;
  /** What stands for a long value in the table. */
  readonly brief?: string;
}

/** One editable value of a row: shown rounded, edited as it is written in the file. */
export const CatalogCell = ({
  table,
  id,
  column,
  reading,
  title,
  empty = "–",
  whole = false,
  brief,
}: CellProps) => {
  const system = useBook((state) => state.system);
  const row = reading.catalog[table].find((one) => one.id === id);
  const value = valueAt(row, column.path);
  const raw = valueAt(writtenRow(reading.paper, table, id), column.path);
  const currency = reading.catalog.prices.currency;
  const full =
    typeof value === "boolean" ? (value ? "yes" : "no") : writeCell(column, value, system, currency);
  const words = columnWords(column.name);
  return (
    <Given
      label={`${words} of ${title}`}
      shown={
        brief ??
        (value === undefined || value === ""
          ? empty
          : whole
            ? full
            : asWritten(column, raw, system) || short(column, value, system) || full)
      }
      start={typeof raw === "string" ? raw : full}
      read={(text) => reads(column, text, system)}
      write={({ text }) =>
        editRow(
          table,
          id,
          column.path,
          text.trim() === "" ? undefined : readCell(column, text.trim()),
          `${title}: ${words.toLowerCase()} ${text.trim() || "taken away"}`,
        )
      }
      width={column.kind === "text" || column.kind === "pieces" ? 220 : 110}
    />
  );
};

const reads = (column: Column, text: string, system: System): Typed => {
  if (text.trim() === "") return { ok: true, text: "", si: 0 };
  if (column.kind === "quantity") return typedQuantity(text, column.dimension, system);
  if (column.kind === "price") return typedPrice(text, column.per);
  // Anything else is judged by the schema when it is written, and refused there in words.
  return { ok: true, text, si: 0 };
};

/** The digits of the file, where it has them in the unit of the column's head: 0.060 says more than 0.06. */
const asWritten = (column: Column, raw: unknown, system: System): string => {
  if (column.kind !== "quantity" || typeof raw !== "string") return "";
  const [, digits, unit] = /^\s*(\d*\.?\d+)\s*(\S+)\s*$/.exec(raw) ?? [];
  return unit === unitOf(column.dimension, system) ? digits : "";
};

/** The number alone, for a column whose head names the unit. */
const short = (column: Column, value: unknown, system: System): string => {
  if (column.kind === "quantity" && typeof value === "number") return figure(value, column.dimension, system);
  if (column.kind === "price" && typeof value === "number" && column.per === "each")
    return grouped(value, 0, system);
  return "";
};

export const columnUnit = (column: Column, system: System, currency: string): string => {
  if (column.kind === "quantity") return unitOf(column.dimension, system);
  if (column.kind === "price" && column.per === "each") return currency;
  return "";
};

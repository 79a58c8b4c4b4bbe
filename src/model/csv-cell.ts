import type { UnitSystem } from "../quantity/dimensions.ts";
import { writeQuantity } from "../quantity/format.ts";
import { writePrice } from "../quantity/price.ts";
import type { Section } from "./catalog.ts";
import type { Column } from "./csv-columns.ts";

type Piece = Section["pieces"][number];
type Sizes =
  | number
  | readonly number[]
  | { readonly from: number; readonly to: number; readonly step: number };

const listed = (text: string): string[] =>
  text
    .split(";")
    .map((part) => part.trim())
    .filter((part) => part !== "");

/** "10 ft: $218: 9" is ten feet at 218 dollars, nine to be had. */
const readPiece = (text: string): Record<string, unknown> => {
  const [length, price, have, ...rest] = text.split(":").map((part) => part.trim());
  const piece: Record<string, unknown> = { length };
  if (price !== undefined) piece.price = price;
  if (have !== undefined) piece.have = readNumber([have, ...rest].join(":"));
  return piece;
};

const readSizes = (text: string): unknown => {
  const range = /^(.+?) to (.+?) by (.+)$/.exec(text);
  if (range) return { from: range[1], to: range[2], step: range[3] };
  const list = listed(text);
  return list.length > 1 ? list : text;
};

// what is no number stays text, for the schema to refuse with the right words
const readNumber = (text: string): unknown =>
  text !== "" && Number.isFinite(Number(text)) ? Number(text) : text;

/** "from=4 ft, bearing=3000 psf, digging=hard" is one layer; a name that no field has is left for the schema. */
const readFields = (text: string, of: readonly Column[]): Record<string, unknown> =>
  Object.fromEntries(
    text.split(/,\s*(?=[A-Za-z.]+=)/).map((pair) => {
      const [name, ...rest] = pair.split("=");
      const value = rest.join("=").trim();
      const column = of.find((one) => one.name === name.trim());
      return [name.trim(), column ? readCell(column, value) : value];
    }),
  );

const BOOLEANS: Readonly<Record<string, boolean>> = { true: true, yes: true, false: false, no: false };

/** The value that a cell's text stands for, as a catalog file has it. */
export const readCell = (column: Column, text: string): unknown => {
  switch (column.kind) {
    case "number":
      return readNumber(text);
    case "numbers":
      return listed(text).map(readNumber);
    case "boolean":
      return BOOLEANS[text.toLowerCase()] ?? text;
    case "sizes":
      return readSizes(text);
    case "pieces":
      return listed(text).map(readPiece);
    case "fields":
      return listed(text).map((one) => readFields(one, column.of));
    default:
      return text;
  }
};

/** The text of a value as it is computed with; reads back as the same value. */
export const writeCell = (column: Column, value: unknown, system: UnitSystem, currency: string): string => {
  if (value === undefined) return "";
  switch (column.kind) {
    case "quantity":
      return writeQuantity(value as number, column.dimension, system);
    case "price":
      return writePrice(value as number, column.per, system, currency);
    case "sizes": {
      const sizes = value as Sizes;
      const write = (size: number) => writeQuantity(size, column.dimension, system);
      if (typeof sizes === "number") return write(sizes);
      if ("from" in sizes) return `${write(sizes.from)} to ${write(sizes.to)} by ${write(sizes.step)}`;
      return sizes.map(write).join("; ");
    }
    case "numbers":
      return (value as readonly number[]).join("; ");
    case "pieces":
      return (value as readonly Piece[])
        .map(({ length, price, have }) =>
          [
            writeQuantity(length, "length", system),
            writePrice(price, "each", system, currency),
            ...(have === undefined ? [] : [String(have)]),
          ].join(": "),
        )
        .join("; ");
    case "fields":
      return (value as readonly Record<string, unknown>[])
        .map((one) =>
          column.of
            .filter(({ name }) => one[name] !== undefined)
            .map((field) => `${field.name}=${writeCell(field, one[field.name], system, currency)}`)
            .join(", "),
        )
        .join("; ");
    default:
      return String(value);
  }
};

import type { Dimension } from "../../quantity/dimensions.ts";
import { formatPrice, type Per, writePrice } from "../../quantity/price.ts";
import { Given } from "../parts/given.tsx";
import { type Reading, useBook } from "../state/book.ts";
import { valueAt } from "../state/path.ts";
import { changePrices, writtenPrices } from "../state/shelf.ts";
import { type System, said } from "../wording/figures.ts";
import { typedPercent, typedPrice, typedQuantity } from "../wording/given.ts";

export type Line = {
  readonly path: readonly (string | number)[];
  readonly name: string;
  readonly gloss: string;
} & ({ readonly per: Per } | { readonly dimension: Dimension } | { readonly share: true });
export const PriceRow = ({ line, reading }: { line: Line; reading: Reading }) => (
  <tr>
    <td>{line.name}</td>
    <td className="quiet">{line.gloss}</td>
    <td className="num">
      <PriceCell line={line} reading={reading} />
    </td>
  </tr>
);

/** One price or rate of the book: shown in the units of the page, edited as it is written. */
export const PriceCell = ({ line, reading }: { line: Line; reading: Reading }) => {
  const system = useBook((state) => state.system);
  const { prices } = reading.catalog;
  const value = valueAt(prices, line.path) as number;
  const raw = valueAt(writtenPrices(reading.paper), line.path);
  const write = (next: unknown, text: string) =>
    changePrices(line.path, next, `${line.name.toLowerCase()} ${text}`);
  if ("per" in line)
    return (
      <Given
        label={`Price of ${line.name.toLowerCase()}`}
        shown={priceWords(value, line.per, system, prices.currency)}
        start={typeof raw === "string" ? raw : writePrice(value, line.per, system, prices.currency)}
        read={(text) => typedPrice(text, line.per)}
        write={({ text }) => write(text, text)}
      />
    );
  if ("dimension" in line)
    return (
      <Given
        label={line.name}
        shown={amount(value, line.dimension, system)}
        start={typeof raw === "string" ? raw : said(value, line.dimension, system)}
        read={(text) => typedQuantity(text, line.dimension, system, { min: 0 })}
        write={({ text }) => write(text, text)}
      />
    );
  return (
    <Given
      label={line.name}
      shown={`${Math.round(value * 1000) / 10} %`}
      start={`${Math.round(value * 1000) / 10} %`}
      read={(text) => typedPercent(text, 100)}
      write={({ text, si }) => write(si, `${text} %`)}
    />
  );
};

/** What a bag makes is no share of a yard to read. */
const amount = (value: number, dimension: Dimension, system: System): string => {
  if (dimension !== "volume" || value >= 0.1) return said(value, dimension, system);
  return system === "us" ? `${(value / 0.3048 ** 3).toFixed(2)} ft³` : `${(value * 1000).toFixed(1)} l`;
};

const priceWords = (value: number, per: Per, system: System, currency: string): string => {
  // cents of a bag count: forty make a footing
  if (per === "each" && value < 100 && !Number.isInteger(value)) return `${currency}${value.toFixed(2)}`;
  const shown = formatPrice(value, per, system, currency);
  const [sign, unit] = shown.unit.split("/");
  return unit ? `${sign}${shown.value} a ${unit}` : `${sign}${shown.value}`;
};

import type { Dimension } from "../../quantity/dimensions.ts";
import { formatPrice, type Per, writePrice } from "../../quantity/price.ts";
import { Given } from "../parts/given.tsx";
import { changeCatalog, type Reading, useBook } from "../state/book.ts";
import { valueAt } from "../state/path.ts";
import { said } from "../wording/figures.ts";
import { typedPercent, typedPrice, typedQuantity } from "../wording/given.ts";

type Line = { readonly path: readonly string[]; readonly name: string; readonly gloss: string } & (
  | { readonly per: Per }
  | { readonly dimension: Dimension }
  | { readonly share: true }
);
const lines: readonly Line[] = [
  { path: ["concrete"], name: "Concrete", gloss: "brought and poured", per: "volume" },
  { path: ["concreteWaste"], name: "Concrete to spare", gloss: "ordered beyond what stands", share: true },
  { path: ["forms"], name: "Forms", gloss: "where concrete stands above ground", per: "area" },
  { path: ["rebar"], name: "Bars", gloss: "steel in the concrete", per: "mass" },
  { path: ["rebarPerVolume"], name: "Bars in concrete", gloss: "how much", dimension: "density" },
  { path: ["digging", "easy"], name: "Digging, easy", gloss: "a spade goes in", per: "volume" },
  { path: ["digging", "firm"], name: "Digging, firm", gloss: "a spade and a foot", per: "volume" },
  { path: ["digging", "hard"], name: "Digging, hard", gloss: "a pick or a machine", per: "volume" },
  { path: ["digging", "rock"], name: "Digging, rock", gloss: "a breaker", per: "volume" },
  { path: ["baseHardware"], name: "Base steel", gloss: "plate, pin or bolts", per: "each" },
  { path: ["guyBracket"], name: "Guy bracket", gloss: "takes the guys of one level", per: "each" },
  { path: ["raising"], name: "Raising", gloss: "work, for each length of mast", per: "length" },
  {
    path: ["termination"],
    name: "Strand for ends",
    gloss: "cut beyond each guy’s length",
    dimension: "length",
  },
  { path: ["permit"], name: "Permit", gloss: "once", per: "each" },
];

export const PricesTable = ({ reading }: { reading: Reading }) => {
  const system = useBook((state) => state.system);
  const { prices } = reading.catalog;
  return (
    <table className="cat prices" aria-label="Prices">
      <thead>
        <tr>
          <th>For</th>
          <th>What it is</th>
          <th className="num">Price</th>
        </tr>
      </thead>
      <tbody>
        {lines.map((line) => {
          const value = valueAt(prices, line.path) as number;
          const raw = valueAt(reading.paper.catalog.prices, line.path);
          const write = (next: unknown, text: string) =>
            changeCatalog(["prices", ...line.path], next, `${line.name.toLowerCase()} ${text}`);
          return (
            <tr key={line.name}>
              <td>{line.name}</td>
              <td className="quiet">{line.gloss}</td>
              <td className="num">
                {"per" in line && (
                  <Given
                    label={`Price of ${line.name.toLowerCase()}`}
                    shown={priceWords(value, line.per, system, prices.currency)}
                    start={
                      typeof raw === "string" ? raw : writePrice(value, line.per, system, prices.currency)
                    }
                    read={(text) => typedPrice(text, line.per)}
                    write={({ text }) => write(text, text)}
                  />
                )}
                {"dimension" in line && (
                  <Given
                    label={line.name}
                    shown={said(value, line.dimension, system)}
                    start={typeof raw === "string" ? raw : said(value, line.dimension, system)}
                    read={(text) => typedQuantity(text, line.dimension, system, { min: 0 })}
                    write={({ text }) => write(text, text)}
                  />
                )}
                {"share" in line && (
                  <Given
                    label={line.name}
                    shown={`${Math.round(value * 1000) / 10} %`}
                    start={`${Math.round(value * 1000) / 10} %`}
                    read={(text) => typedPercent(text, 100)}
                    write={({ text, si }) => write(si, `${text} %`)}
                  />
                )}
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
};

const priceWords = (value: number, per: Per, system: "us" | "si", currency: string): string => {
  const shown = formatPrice(value, per, system, currency);
  const [sign, unit] = shown.unit.split("/");
  return unit ? `${sign}${shown.value} a ${unit}` : `${sign}${shown.value}`;
};

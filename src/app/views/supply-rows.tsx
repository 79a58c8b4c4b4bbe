import { Choice } from "../parts/given.tsx";
import type { Reading } from "../state/book.ts";
import { changePrices, writtenPrices } from "../state/shelf.ts";
import { type Line, PriceCell, PriceRow } from "./price-cell.tsx";

const bag: readonly Line[] = [
  {
    path: ["concreteSupply", "bag", "price"],
    name: "Bag of concrete",
    gloss: "dry, mixed here",
    per: "each",
  },
  { path: ["concreteSupply", "bag", "yield"], name: "A bag makes", gloss: "in place", dimension: "volume" },
];
const truck: readonly Line[] = [
  { path: ["concreteSupply", "truck", "price"], name: "Concrete by truck", gloss: "poured", per: "volume" },
  {
    path: ["concreteSupply", "truck", "shortLoadBelow"],
    name: "Short load",
    gloss: "less than this pays the charge",
    dimension: "volume",
  },
  {
    path: ["concreteSupply", "truck", "shortLoadCharge"],
    name: "Short-load charge",
    gloss: "once for such a load",
    per: "each",
  },
  {
    path: ["concreteSupply", "truck", "largest"],
    name: "A truck brings",
    gloss: "at most",
    dimension: "volume",
  },
];
/** What a way of selling starts from; the figures are invented, and edited at once. */
const starts = {
  bag: { yield: "0.60 ft3", price: "$6.40" },
  truck: { price: "$180/yd3", shortLoadBelow: "4 yd3", shortLoadCharge: "$140", largest: "10 yd3" },
} as const;
type Way = keyof typeof starts;

const sizes = ["#3", "#4", "#5", "#6", "#7", "#8", "#9", "#10", "#11"];

/** How concrete and bars are sold here: each way is there or not, and is edited like any price. */
export const SupplyRows = ({ reading }: { reading: Reading }) => {
  const supply = writtenPrices(reading.paper).concreteSupply;
  const stock = writtenPrices(reading.paper).barStock ?? [];
  /** Without either way concrete is bought by volume alone, and the entry goes. */
  const sell = (way: Way, from: (typeof starts)[Way] | undefined, did: string) => {
    const next = { ...supply, [way]: from };
    if (!from) delete next[way];
    return changePrices(["concreteSupply"], next.bag || next.truck ? next : undefined, did);
  };
  const stockTo = (next: readonly object[], did: string) =>
    changePrices(["barStock"], next.length ? next : undefined, did);
  return (
    <tbody>
      <Head
        title="Concrete by the bag"
        act={supply?.bag ? "take out" : "put in"}
        does={() =>
          supply?.bag
            ? sell("bag", undefined, "no concrete by the bag")
            : sell("bag", starts.bag, "concrete by the bag")
        }
      />
      {supply?.bag && bag.map((line) => <PriceRow key={line.name} line={line} reading={reading} />)}
      <Head
        title="Concrete by the truck"
        act={supply?.truck ? "take out" : "put in"}
        does={() =>
          supply?.truck
            ? sell("truck", undefined, "no concrete by the truck")
            : sell("truck", starts.truck, "concrete by the truck")
        }
      />
      {supply?.truck && truck.map((line) => <PriceRow key={line.name} line={line} reading={reading} />)}
      <Head
        title="Bars are sold in"
        act="add a length"
        does={() => stockTo([...stock, { length: "20 ft", perMass: "$1.05/lb" }], "added a length of bar")}
      />
      {stock.map((one, at) => {
        const name = `Bar length ${at + 1}`;
        const path = ["barStock", at] as const;
        const put = (next: object, did: string) =>
          stockTo(
            stock.map((other, n) => (n === at ? next : other)),
            did,
          );
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: a length is known by its place
          <tr key={at}>
            <td>
              <PriceCell
                line={{ path: [...path, "length"], name, gloss: "", dimension: "length" }}
                reading={reading}
              />
            </td>
            <td>
              <Choice
                label={`Size of bar length ${at + 1}`}
                value={one.bar ?? ""}
                options={[
                  { value: "", name: "every size, by weight" },
                  ...sizes.map((size) => ({ value: size, name: size })),
                ]}
                write={(size) =>
                  put(
                    size === ""
                      ? { length: one.length, perMass: one.perMass ?? "$1.05/lb" }
                      : { length: one.length, bar: size, price: one.price ?? "$10" },
                    `bar length ${at + 1}: ${size || "every size"}`,
                  )
                }
              />{" "}
              <button
                type="button"
                className="link"
                aria-label={`Bar length ${at + 1}: take out`}
                onClick={() =>
                  stockTo(
                    stock.filter((_, n) => n !== at),
                    `took bar length ${at + 1} out`,
                  )
                }
              >
                take out
              </button>
            </td>
            <td className="num">
              <PriceCell
                line={
                  one.bar === undefined
                    ? { path: [...path, "perMass"], name: `bar length ${at + 1}`, gloss: "", per: "mass" }
                    : { path: [...path, "price"], name: `bar length ${at + 1}`, gloss: "", per: "each" }
                }
                reading={reading}
              />
            </td>
          </tr>
        );
      })}
    </tbody>
  );
};

const Head = ({ title, act, does }: { title: string; act: string; does: () => unknown }) => (
  <tr className="grp">
    <th colSpan={2} scope="rowgroup">
      {title}
    </th>
    <td className="num">
      <button type="button" className="link" aria-label={`${title}: ${act}`} onClick={() => void does()}>
        {act}
      </button>
    </td>
  </tr>
);

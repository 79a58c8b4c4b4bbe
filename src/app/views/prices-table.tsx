import type { Reading } from "../state/book.ts";
import { type Line, PriceRow } from "./price-cell.tsx";
import { SupplyRows } from "./supply-rows.tsx";

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
  ...(
    [
      ["setUp", "Work: setting up", "once, fetching and clearing up with it", "work"],
      ["pouring", "Work: pouring", "forms, bars and concrete, one pair of hands", "workPerVolume"],
      ["anchor", "Work: an anchor", "its rod, screw or post set and lined up", "work"],
      ["guy", "Work: a guy", "cut, made up, hung and drawn", "work"],
      ["raising", "Work: raising", "for each length of mast", "workPerLength"],
      ["antennas", "Work: antennas", "pipe, antennas and cables", "work"],
      ["curing", "Concrete hardens", "before guys pull at it", "work"],
    ] as const
  ).map(([key, name, gloss, dimension]): Line => ({ path: ["work", key], name, gloss, dimension })),
  ...(["easy", "firm", "hard", "rock"] as const).map(
    (kind): Line => ({
      path: ["work", "digging", kind],
      name: `Work: digging, ${kind}`,
      gloss: "one pair of hands",
      dimension: "workPerVolume",
    }),
  ),
];

export const PricesTable = ({ reading }: { reading: Reading }) => (
  <table className="cat prices" aria-label="Prices">
    <thead>
      <tr>
        <th>For</th>
        <th>What it is</th>
        <th className="num">Price</th>
      </tr>
    </thead>
    <tbody>
      {lines.map((line) => (
        <PriceRow key={line.name} line={line} reading={reading} />
      ))}
    </tbody>
    <SupplyRows reading={reading} />
  </table>
);

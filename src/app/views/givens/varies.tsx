import type { Ranges, Uncertain } from "../../../model/ranges.ts";
import { type Part, Stated, type Values } from "../../parts/stated.tsx";
import { book, changeStudy, useBook } from "../../state/book.ts";
import { type System, said } from "../../wording/figures.ts";
import { typedPercent } from "../../wording/given.ts";
import { Plain, useQuantityPart, useReading } from "./fields.tsx";

/** What may vary, how it is said, and an entry of each as it may be written. */
const VARIES = [
  { key: "soilStrength", of: "soil’s strength", unit: "share", low: "70 %", high: "120 %", spread: "20 %" },
  { key: "windSpeed", of: "wind", unit: "speed", low: "80 mph", high: "115 mph", spread: "10 mph" },
  {
    key: "wallLoss",
    of: "rust off the walls",
    unit: "size",
    low: "0 in",
    high: "0.01 in",
    spread: "0.005 in",
  },
  { key: "tension", of: "initial tension", unit: "share", low: "85 %", high: "115 %", spread: "10 %" },
] as const;
type Varying = (typeof VARIES)[number];
type Whole = "ranges" | "uncertain";

const DISTRIBUTIONS = [
  { value: "normal", name: "normal" },
  { value: "lognormal", name: "lognormal" },
  { value: "gumbel", name: "Gumbel" },
] as const;

/** Safety over ranges, and what is uncertain. */
export const Varies = () => {
  const { ranges, uncertain } = useReading().study;
  return (
    <>
      <h3>Safe over ranges of</h3>
      {VARIES.map((one) => (
        <Range key={one.key} one={one} stated={ranges?.[one.key]} />
      ))}
      {ranges && (
        <Plain
          path={["ranges", "between"]}
          label="Further points tried between the ends of a range, 0 to 4"
          shown={ranges.between === 1 ? "1 point between" : `${ranges.between} points between`}
        />
      )}
      <h3>Uncertain, with a mean and a spread</h3>
      {VARIES.map((one) => (
        <Chance key={one.key} one={one} stated={uncertain?.[one.key]} />
      ))}
      {uncertain && (
        <>
          <Plain
            path={["uncertain", "years"]}
            label="Years that the chance is for"
            shown={uncertain.years === 1 ? "in one year" : `in ${uncertain.years} years`}
          />
          <p className="quiet">
            The search takes no heed of what is uncertain: under the proven answer’s checks the page works out
            how probable it is that it misses one.
          </p>
        </>
      )}
    </>
  );
};

const Range = ({ one, stated }: { one: Varying; stated: Ranges[Varying["key"]] }) => {
  const { words, part } = useFields("ranges", one);
  return (
    <Stated
      label={`Range of ${one.of}`}
      shown={stated ? `${one.of} ${words(stated.from)} to ${words(stated.to)}` : `${one.of} as stated`}
      parts={[part("from", "From", one.low, stated?.from), part("to", "To", one.high, stated?.to)]}
      note={one.unit === "share" ? "Percent of what is stated, 20 % to 300 %." : undefined}
      remove={stated && "No range of it"}
      write={(values) => put("ranges", one, values)}
    />
  );
};

const Chance = ({ one, stated }: { one: Varying; stated: Uncertain[Varying["key"]] }) => {
  const { words, part } = useFields("uncertain", one);
  return (
    <Stated
      label={`Chance of ${one.of}`}
      shown={
        stated
          ? `${one.of} ${words(stated.mean)}, spread ${words(stated.deviation)}, ${distributionName(stated.distribution)}`
          : `${one.of} certain`
      }
      parts={[
        {
          key: "distribution",
          label: "Distribution",
          start: stated?.distribution ?? usual[one.key],
          options: DISTRIBUTIONS,
        },
        part(
          "mean",
          one.key === "windSpeed" ? "Mean of each year’s greatest" : "Mean",
          one.low,
          stated?.mean,
        ),
        part("deviation", "Standard deviation", one.spread, stated?.deviation),
      ]}
      remove={stated && "It is certain"}
      write={(values) => put("uncertain", one, values)}
    />
  );
};
const distributionName = (id: string) => DISTRIBUTIONS.find(({ value }) => value === id)?.name;
/** As the file takes it where it names none. */
const usual: Readonly<Record<Varying["key"], string>> = {
  soilStrength: "lognormal",
  windSpeed: "gumbel",
  wallLoss: "lognormal",
  tension: "normal",
};

/** How a value of this kind is said, and the field it is typed in. */
const useFields = (whole: Whole, one: Varying) => {
  const system = useBook((state) => state.system);
  const quantity = useQuantityPart([whole, one.key]);
  const words = (si: number) => valueWords(si, one, system);
  const part = (key: string, label: string, example: string, si: number | undefined): Part =>
    one.unit === "share"
      ? {
          key,
          label,
          example,
          start: si === undefined ? "" : words(si),
          read: (text) => typedPercent(text, 500),
          as: "number",
        }
      : quantity(key, label, one.unit, example);
  return { words, part };
};
const valueWords = (si: number, { unit }: Varying, system: System): string =>
  unit === "share" ? `${+(100 * si).toFixed(1)} %` : said(si, unit, system, unit === "size" ? 3 : undefined);

/** Writes one of them; with the last of its kind the whole is no longer stated. */
const put = (whole: Whole, { key, of }: Varying, values: Values | undefined) => {
  const { [key]: _, ...others } = book.get().history.present.study[whole] ?? {};
  const next = values ? { ...others, [key]: values } : others;
  const any = VARIES.some((one) => one.key in next);
  const did = whole === "ranges" ? "range" : "chance";
  return changeStudy([whole], any ? next : undefined, values ? `${did} of ${of}` : `no ${did} of ${of}`);
};

import type { Bill, BillLine } from "../../model/verdict.ts";
import { useWidth } from "../parts/measured.ts";
import { useBook } from "../state/book.ts";
import { grouped, money, type System, said } from "../wording/figures.ts";
import { billItem } from "../wording/parts.ts";

const looks: Readonly<Record<BillLine["group"], { name: string; fill: string }>> = {
  sections: { name: "Sections", fill: "url(#cut)" },
  anchors: { name: "Anchors", fill: "url(#conc)" },
  footing: { name: "Footing", fill: "url(#conc)" },
  guys: { name: "Guys", fill: "url(#hor)" },
  antennas: { name: "Antennas", fill: "url(#ver)" },
  digging: { name: "Dig", fill: "url(#clay)" },
  raising: { name: "Raise", fill: "url(#dots)" },
  other: { name: "Other", fill: "none" },
};
const NARROWEST_LABEL = 48;

export const billParts = (bill: Bill): readonly { group: BillLine["group"]; amount: number }[] => {
  const sums = new Map<BillLine["group"], number>();
  for (const line of bill.lines) sums.set(line.group, (sums.get(line.group) ?? 0) + line.amount);
  return [...sums].map(([group, amount]) => ({ group, amount })).sort((a, b) => b.amount - a.amount);
};

/** One bar: materials hatched as in the drawing, words and money under each part. */
export const BillBar = ({ bill, levels }: { bill: Bill; levels: number }) => {
  const system = useBook((state) => state.system);
  const catalog = useBook((state) => state.reading?.catalog);
  const [ref, width] = useWidth<HTMLDivElement>(530);
  const parts = billParts(bill).filter((part) => part.amount > 0);
  const whole = parts.reduce((sum, part) => sum + part.amount, 0) || 1;
  let from = 0;
  const placed = parts.map((part) => {
    const share = (part.amount / whole) * Math.max(width - 1, 0);
    const box = { ...part, x: from, width: share };
    from += share;
    return box;
  });
  const worded = bill.lines.map((line) => ({
    line,
    words: catalog ? billItem(line, catalog, system, levels) : line.item,
  }));
  const slim = placed.filter((part) => part.width < NARROWEST_LABEL);
  // Amounts are whole cents in the bill; the page shows whole dollars of the same total.
  const dollars = (amount: number) => grouped((amount / whole) * bill.total, 0, system);
  return (
    <div className="sec">
      <h2>
        Where the money goes<small>dollars</small>
      </h2>
      <div ref={ref}>
        <svg
          width={width}
          height="54"
          viewBox={`0 0 ${width} 54`}
          role="img"
          aria-label={spoken(parts, dollars)}
        >
          {placed.map((part) => (
            <g key={part.group}>
              <rect
                x={part.x + 0.5}
                y="2"
                width={part.width}
                height="16"
                fill={looks[part.group].fill}
                style={{ stroke: "var(--ink)", strokeWidth: 1 }}
              />
              {part.width >= NARROWEST_LABEL && (
                <>
                  <text x={part.x + 1} y="34">
                    {looks[part.group].name}
                  </text>
                  <text x={part.x + 1} y="49" className="s">
                    {dollars(part.amount)}
                  </text>
                </>
              )}
            </g>
          ))}
        </svg>
        {slim.length > 0 && (
          <p className="quiet slim">
            then{" "}
            {slim.map((part) => `${looks[part.group].name.toLowerCase()} ${dollars(part.amount)}`).join(", ")}
          </p>
        )}
      </div>
      <details className="how">
        <summary className="link">Every line</summary>
        <table aria-label="Bill">
          <tbody>
            {worded.map(({ line, words }) => (
              <tr key={line.group + words}>
                <td>{words}</td>
                <td className="num quiet">{quantity(line, system)}</td>
                <td className="num">{dollars(line.amount)}</td>
              </tr>
            ))}
            <tr>
              <td>
                <b>All in</b>
              </td>
              <td />
              <td className="num">
                <b>{money(bill.total, "$", system)}</b>
              </td>
            </tr>
          </tbody>
        </table>
      </details>
    </div>
  );
};

const quantity = (line: BillLine, system: System): string => {
  if (line.unit === "m") return said(line.quantity, "length", system);
  if (line.unit === "m2") return said(line.quantity, "area", system);
  if (line.unit === "m3") return said(line.quantity, "volume", system);
  if (line.unit === "kg") return said(line.quantity, "mass", system);
  return grouped(line.quantity, 2, system);
};

const spoken = (parts: ReturnType<typeof billParts>, dollars: (amount: number) => string) =>
  `Where the money goes: ${parts.map((part) => `${looks[part.group].name} ${dollars(part.amount)}`).join(", ")}`;

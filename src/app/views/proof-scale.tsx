import { useWidth } from "../parts/measured.ts";
import { grouped, money, type System } from "../wording/figures.ts";
import { proofScale } from "../wording/proof.ts";

const LETTERS = 165;

/** Hatched up to the bound, a tick at the best safe design, the open gap dimensioned between them. */
export const ProofScale = ({ bound, best, system }: { bound: number; best: number; system: System }) => {
  const [ref, width] = useWidth<HTMLDivElement>(530);
  const { from, to, ticks } = proofScale(bound, best);
  const left = 10;
  const x = (value: number) => left + ((value - from) / (to - from)) * (width - 2 * left);
  const gap = x(best) - x(bound);
  // Lettering is some 165 px long; where the two would meet, the second goes a line down.
  const boundRight = x(bound) > LETTERS ? x(bound) - 4 : left + LETTERS;
  const bestLine = x(best) + 4 < boundRight + 6 ? 25 : 10;
  const words = `open: ${money(best - bound, "$", system)}`;
  return (
    <div ref={ref} className="proof-scale">
      <svg
        width={width}
        height="70"
        viewBox={`0 0 ${width} 70`}
        role="img"
        aria-label={`Proof so far: nothing safe below ${money(bound, "$", system)}, best safe ${money(best, "$", system)}`}
      >
        <path d={`M${left} 44H${width - left}`} className="l2" />
        {ticks.map((value) => (
          <g key={value}>
            <path d={`M${x(value)} 44v6`} className="l1" />
            <text x={x(value)} y="65" textAnchor="middle" className="s">
              {grouped(value, 0, system)}
            </text>
          </g>
        ))}
        <rect x={left} y="20" width={Math.max(0, x(bound) - left)} height="24" fill="url(#unsafe)" />
        <path d={`M${x(bound)} 14V50M${x(best)} 14V50`} className="l4" />
        <text
          x={x(bound) > LETTERS ? x(bound) - 4 : left}
          y="10"
          textAnchor={x(bound) > LETTERS ? "end" : "start"}
          className="halo"
        >
          nothing safe below <tspan className="b">{money(bound, "$", system)}</tspan>
        </text>
        {gap > 30 && (
          <path
            d={`M${x(bound)} 33H${x(best)}`}
            className="l1"
            markerStart="url(#tick)"
            markerEnd="url(#tick)"
          />
        )}
        {gap > 90 ? (
          <text x={x(bound) + gap / 2} y="29" textAnchor="middle" className="halo">
            {words}
          </text>
        ) : (
          <text x={x(best) + 8} y="40" className="halo">
            {words}
          </text>
        )}
        <text x={x(best) + 5} y={bestLine} className="halo">
          safe at <tspan className="b">{money(best, "$", system)}</tspan>
        </text>
      </svg>
    </div>
  );
};

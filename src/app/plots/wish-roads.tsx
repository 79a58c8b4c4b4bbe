import type { CostMap } from "../../search/types.ts";
import { money, type System, said } from "../wording/figures.ts";
import { costBetween, roadSteps } from "./map-axes.ts";
import type { Sheet } from "./map-sheet.ts";

export interface Wished {
  readonly height: number;
  readonly area: number;
  readonly cost: number | null;
  /** Mean power over low angles at a height, dB; null where no band is stated. */
  readonly air: ((height: number) => number) | null;
}

interface Props {
  readonly map: CostMap;
  readonly wish: Wished;
  readonly sheet: Sheet;
  readonly system: System;
  readonly currency: string;
}
/** The wish as a ring and the two roads from it, each with what it costs. */
export const WishRoads = ({ map, wish, sheet, system, currency }: Props) => {
  const { taller, bigger } = roadSteps(system);
  const here = wish.cost ?? costBetween(map, wish.height, wish.area);
  // Both ends of a difference are read from the map, so that one way of reckoning stands behind it.
  const from = costBetween(map, wish.height, wish.area);
  const up = costBetween(map, wish.height + taller, wish.area);
  const wide = costBetween(map, wish.height, wish.area + bigger);
  const [x, y] = [sheet.ofArea(wish.area), sheet.ofHeight(wish.height)];
  const words = (cost: number | null) => {
    if (from !== null && cost !== null) return money(cost - from, currency, system);
    return map.done ? "not safe" : null;
  };
  const [upWords, wideWords] = [words(up), words(wide)];
  const onAir = up !== null && from !== null ? airWords(wish.air, taller, up - from, currency, system) : null;
  const [upEnd, wideEnd] = [sheet.ofHeight(wish.height + taller), sheet.ofArea(wish.area + bigger)];
  const left = x > sheet.right - 170;
  return (
    <g>
      <path d={`M${x} ${y - 6}V${upEnd}`} className="l4" markerEnd="url(#arb)" />
      <path d={`M${x + 6} ${y}H${wideEnd}`} className="l4" markerEnd="url(#arb)" />
      <circle cx={x} cy={y} r="6" className="p" style={{ stroke: "var(--ink)", strokeWidth: 2.6 }} />
      <text x={x - 10} y={y + 18} textAnchor="end" className="b halo">
        {`your wish${here === null ? "" : `: ${money(here, currency, system)}`}`}
      </text>
      {upWords && (
        <text x={x - 10} y={upEnd + 8} textAnchor="end" className="b halo">
          {`taller by ${said(taller, "length", system, 0)}: ${upWords}`}
        </text>
      )}
      {onAir && (
        <text x={x - 10} y={upEnd + 23} textAnchor="end" className="s halo">
          {onAir}
        </text>
      )}
      {wideWords && (
        <text
          x={left ? sheet.right : x + 14}
          y={y + 18}
          textAnchor={left ? "end" : "start"}
          className="b halo"
        >
          {`bigger by ${said(bigger, "area", system)}: ${wideWords}`}
        </text>
      )}
    </g>
  );
};

/** What a taller mast buys on the air; how much more gain a bigger antenna has, nobody has stated. */
const airWords = (
  air: Wished["air"],
  taller: number,
  cost: number,
  currency: string,
  system: System,
): string | null => {
  if (!air) return null;
  const gained = air(taller) - air(0);
  const sign = gained < 0 ? "−" : "+";
  const each = gained > 0.05 && cost > 0 ? `, ${money(cost / gained, currency, system)} a dB` : "";
  return `${sign} ${Math.abs(gained).toFixed(1)} dB${each}`;
};

import { memo, useMemo } from "react";
import type { CostMap, MapCell } from "../../search/types.ts";
import { lowerFirst } from "../wording/check.ts";
import { figure, grouped, inUnits, money, type System, said, unitOf } from "../wording/figures.ts";
import { contour, contourLevels, type Edge, safeEdge } from "./contour.ts";
import { cellAt, costBetween, stopper } from "./map-axes.ts";
import { roundScale } from "./stairs.ts";

interface Props {
  readonly map: CostMap;
  readonly wish: Wished;
  readonly width: number;
  readonly system: System;
  readonly currency: string;
  readonly take: (cell: MapCell) => void;
}
export interface Wished {
  readonly height: number;
  readonly area: number;
  readonly cost: number | null;
  /** Mean power over low angles at a height, dB; null where no band is stated. */
  readonly air: ((height: number) => number) | null;
}
interface Sheet {
  readonly x: (i: number) => number;
  readonly y: (j: number) => number;
  readonly ofArea: (area: number) => number;
  readonly ofHeight: (height: number) => number;
  readonly right: number;
  readonly bottom: number;
}
const MARGIN = { left: 44, right: 14, top: 8, bottom: 36 };

/** Cheapest safe cost over height and antenna area: contours where it is safe, a stepped edge where that ends. */
export const MapPlot = memo(({ map, wish, width, system, currency, take }: Props) => {
  const height = Math.min(430, Math.max(320, width * 0.62));
  const sheet = useMemo(() => sheetOf(map, width, height), [map, width, height]);
  const lines = useMemo(() => levelLines(map), [map]);
  const edges = useMemo(() => edgesOf(map), [map]);
  const unsafe = map.cells.filter((cell) => cell.cost === null);
  const at = cellAt(map);
  return (
    <svg
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label="Cheapest safe cost over height and antenna area, with the edge of what is safe"
    >
      <Axes map={map} sheet={sheet} system={system} />
      <g>
        {unsafe.map((cell) => (
          <CellBox
            key={`${cell.height}/${cell.area}`}
            cell={cell}
            map={map}
            sheet={sheet}
            fill="url(#unsafe)"
          />
        ))}
        {!map.done && <KnownSafe map={map} sheet={sheet} />}
        <Contours lines={lines} sheet={sheet} system={system} />
        <EdgeLine edges={edges} sheet={sheet} />
        <UnsafeWords map={map} sheet={sheet} />
      </g>
      {map.areas.map((_, i) =>
        map.heights.map((__, j) => {
          const cell = at(i, j);
          return cell?.design ? (
            <CellBox
              key={`${cell.height}|${cell.area}`}
              cell={cell}
              map={map}
              sheet={sheet}
              fill="transparent"
              label={cellWords(cell, system, currency)}
              take={take}
            />
          ) : null;
        }),
      )}
      <Wish {...{ map, wish, sheet, system, currency }} />
    </svg>
  );
});

const sheetOf = (map: CostMap, width: number, height: number): Sheet => {
  const right = width - MARGIN.right;
  const bottom = height - MARGIN.bottom;
  const x = (i: number) => MARGIN.left + (i / map.areas.length) * (right - MARGIN.left);
  const y = (j: number) => bottom - (j / map.heights.length) * (bottom - MARGIN.top);
  const along = (values: readonly number[], value: number) =>
    (value - values[0]) / Math.max(values[1] - values[0], 1e-9) + 0.5;
  return {
    x,
    y,
    ofArea: (area) => x(along(map.areas, area)),
    ofHeight: (value) => y(along(map.heights, value)),
    right,
    bottom,
  };
};

const Axes = ({ map, sheet, system }: { map: CostMap; sheet: Sheet; system: System }) => {
  const half = (values: readonly number[]) => (values[1] - values[0]) / 2;
  const range = (values: readonly number[], measure: "length" | "area") =>
    roundScale(
      inUnits(values[0] - half(values), measure, system),
      inUnits(values.at(-1)! + half(values), measure, system),
      8,
    );
  const perUnit = { length: inUnits(1, "length", system), area: inUnits(1, "area", system) };
  return (
    <g>
      {range(map.heights, "length").map((value) => {
        const level = sheet.ofHeight(value / perUnit.length);
        return level > MARGIN.top - 1 && level < sheet.bottom + 1 ? (
          <g key={value}>
            <path d={`M${MARGIN.left} ${level}H${sheet.right}`} className="l0" />
            <text x={MARGIN.left - 8} y={level + 4} textAnchor="end" className="s">
              {grouped(value, 1, system)}
            </text>
          </g>
        ) : null;
      })}
      {range(map.areas, "area").map((value) => {
        const across = sheet.ofArea(value / perUnit.area);
        return across > MARGIN.left - 1 && across < sheet.right + 1 ? (
          <g key={value}>
            <path d={`M${across} ${MARGIN.top}V${sheet.bottom}`} className="l0" />
            <text x={across} y={sheet.bottom + 16} textAnchor="middle" className="s">
              {grouped(value, 1, system)}
            </text>
          </g>
        ) : null;
      })}
      <path d={`M${MARGIN.left} ${MARGIN.top}V${sheet.bottom}H${sheet.right}`} className="l2 n" />
      <text x={sheet.right} y={sheet.bottom + 32} textAnchor="end" className="s">
        antenna area, {unitOf("area", system)}
      </text>
      <text x={MARGIN.left - 8} y={sheet.bottom + 16} textAnchor="end" className="s">
        {unitOf("length", system)}
      </text>
    </g>
  );
};

const levelLines = (map: CostMap) => {
  const at = cellAt(map);
  const costs = map.cells.flatMap((cell) => (cell.cost === null ? [] : [cell.cost]));
  if (costs.length < 4) return [];
  const { every, levels } = contourLevels(Math.min(...costs), Math.max(...costs));
  return levels.map((level) => ({
    level,
    thick: level % (every === 250 ? 1000 : every * 5) === 0,
    runs: contour(map.areas.length, map.heights.length, (i, j) => at(i, j)?.cost ?? null, level),
  }));
};

/** While the map fills, a dot stands for each cell known to be safe; lines need all cells around them. */
const KnownSafe = ({ map, sheet }: { map: CostMap; sheet: Sheet }) => (
  <g>
    {map.cells
      .filter((cell) => cell.cost !== null)
      .map((cell) => (
        <circle
          key={`${cell.height}/${cell.area}`}
          cx={sheet.ofArea(cell.area)}
          cy={sheet.ofHeight(cell.height)}
          r="1.6"
          className="k"
        />
      ))}
  </g>
);

const edgesOf = (map: CostMap): readonly Edge[] => {
  const at = cellAt(map);
  return safeEdge(map.areas.length, map.heights.length, (i, j) => {
    const cell = at(i, j);
    if (!cell) return "unknown";
    return cell.cost === null ? "unsafe" : "safe";
  });
};

const Contours = ({
  lines,
  sheet,
  system,
}: {
  lines: ReturnType<typeof levelLines>;
  sheet: Sheet;
  system: System;
}) => {
  // Contours run through cell middles, hence the half.
  const path = (run: readonly (readonly [number, number])[]) =>
    run
      .map(([i, j], n) => `${n ? "L" : "M"}${sheet.x(i + 0.5).toFixed(1)} ${sheet.y(j + 0.5).toFixed(1)}`)
      .join("");
  return (
    <g>
      {lines.map(({ level, thick, runs }) => {
        const longest = [...runs].sort((a, b) => b.length - a.length)[0];
        const middle = longest?.[Math.floor(longest.length * 0.3)];
        return (
          <g key={level}>
            <path d={runs.map(path).join("")} className={`n ${thick ? "l3" : "lq"}`} />
            {middle && longest.length > 4 && (thick || lines.length < 8) && (
              <text
                x={sheet.x(middle[0] + 0.5)}
                y={sheet.y(middle[1] + 0.5) + 4}
                textAnchor="middle"
                className={thick ? "b halo" : "s halo"}
              >
                {grouped(level, 0, system)}
              </text>
            )}
          </g>
        );
      })}
    </g>
  );
};

const EdgeLine = ({ edges, sheet }: { edges: readonly Edge[]; sheet: Sheet }) => {
  const { x, y } = sheet;
  const border = edges.map(({ from, to }) => `M${x(from[0])} ${y(from[1])}L${x(to[0])} ${y(to[1])}`).join("");
  const hachures = edges
    .flatMap(({ from, to, away }) =>
      [0.25, 0.5, 0.75].map((share) => {
        const px = x(from[0] + (to[0] - from[0]) * share);
        const py = y(from[1] + (to[1] - from[1]) * share);
        return `M${px} ${py}L${px + away[0] * 7} ${py - away[1] * 7}`;
      }),
    )
    .join("");
  return (
    <g className="n">
      <path d={border} className="lg" style={{ strokeLinecap: "square" }} />
      <path d={hachures} style={{ stroke: "var(--govern)", strokeWidth: 0.9 }} />
    </g>
  );
};

const UnsafeWords = ({ map, sheet }: { map: CostMap; sheet: Sheet }) => {
  const unsafe = map.cells.filter((cell) => cell.cost === null);
  const why = stopper(map);
  if (unsafe.length < 12 || !why) return null;
  // In the middle of what is not safe, inside the paper.
  const mean = (pick: (cell: MapCell) => number) =>
    unsafe.reduce((sum, cell) => sum + pick(cell), 0) / unsafe.length;
  const x = Math.min(Math.max(sheet.ofArea(mean((cell) => cell.area)), MARGIN.left + 84), sheet.right - 84);
  const y = Math.min(
    Math.max(sheet.ofHeight(mean((cell) => cell.height)), MARGIN.top + 30),
    sheet.bottom - 40,
  );
  return (
    <g>
      <rect x={x - 80} y={y - 20} width="160" height="44" className="p" />
      <text x={x} y={y - 3} textAnchor="middle" className="b">
        nothing is safe here
      </text>
      <text x={x} y={y + 14} textAnchor="middle">
        most stopped by {lowerFirst(why)}
      </text>
    </g>
  );
};

interface BoxProps {
  readonly cell: MapCell;
  readonly map: CostMap;
  readonly sheet: Sheet;
  readonly fill: string;
  readonly label?: string;
  readonly take?: (cell: MapCell) => void;
}
const CellBox = ({ cell, map, sheet, fill, label, take }: BoxProps) => {
  const i = map.areas.findIndex((area) => Math.abs(area - cell.area) < 1e-6);
  const j = map.heights.findIndex((height) => Math.abs(height - cell.height) < 1e-6);
  const box = {
    x: sheet.x(i),
    y: sheet.y(j + 1),
    width: sheet.x(i + 1) - sheet.x(i) + 0.5,
    height: sheet.y(j) - sheet.y(j + 1) + 0.5,
  };
  if (!take) return <rect {...box} fill={fill} />;
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the table behind "as figures" is the keyboard's way to a cell
    <rect {...box} fill={fill} style={{ cursor: "pointer" }} onClick={() => take(cell)}>
      <title>{label}</title>
    </rect>
  );
};

const cellWords = (cell: MapCell, system: System, currency: string) =>
  `${said(cell.height, "length", system)} up with ${said(cell.area, "area", system)}: ${money(cell.cost!, currency, system)}`;

/** The wish as a ring and the two roads from it, each with what it costs. */
const Wish = ({ map, wish, sheet, system, currency }: Omit<Props, "width" | "take"> & { sheet: Sheet }) => {
  const us = system === "us";
  const taller = us ? 3.048 : 3;
  const bigger = us ? 0.4645152 : 0.5;
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
        your wish{here === null ? "" : `: ${money(here, currency, system)}`}
      </text>
      {upWords && (
        <text x={x - 10} y={upEnd + 8} textAnchor="end" className="b halo">
          taller by {figure(taller, "length", system, 0)} {unitOf("length", system)}: {upWords}
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
          bigger by {said(bigger, "area", system)}: {wideWords}
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

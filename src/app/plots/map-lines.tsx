import type { CostMap } from "../../search/types.ts";
import { grouped, type System } from "../wording/figures.ts";
import { contour, contourLevels, type Edge, safeEdge } from "./contour.ts";
import { cellAt } from "./map-axes.ts";
import type { Sheet } from "./map-sheet.ts";

export const levelLines = (map: CostMap) => {
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

export const edgesOf = (map: CostMap): readonly Edge[] => {
  const at = cellAt(map);
  return safeEdge(map.areas.length, map.heights.length, (i, j) => {
    const cell = at(i, j);
    if (!cell) return "unknown";
    return cell.cost === null ? "unsafe" : "safe";
  });
};

/** While the map fills, a dot stands for each cell known to be safe; lines need all cells around them. */
export const KnownSafe = ({ map, sheet }: { map: CostMap; sheet: Sheet }) => (
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

export const Contours = ({
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

export const EdgeLine = ({ edges, sheet }: { edges: readonly Edge[]; sheet: Sheet }) => {
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

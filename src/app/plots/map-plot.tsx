import { memo, useMemo, useRef } from "react";
import { designKey } from "../../model/design-key.ts";
import { lowerFirst } from "../../report/names.ts";
import type { CostMap, MapCell } from "../../search/types.ts";
import { SaveSvg } from "../parts/save-svg.tsx";

import { grouped, inUnits, money, type System, said, unitOf } from "../wording/figures.ts";
import { cellAt, stopper } from "./map-axes.ts";
import { Contours, EdgeLine, edgesOf, KnownSafe, levelLines } from "./map-lines.tsx";
import { MARGIN, type Sheet, sheetOf } from "./map-sheet.ts";
import { roundScale } from "./stairs.ts";
import { type Wished, WishRoads } from "./wish-roads.tsx";

interface Props {
  readonly map: CostMap;
  readonly wish: Wished;
  readonly width: number;
  readonly system: System;
  readonly currency: string;
  readonly take: (cell: MapCell) => void;
  /** The cell that the user took a design from. */
  readonly taken: { readonly height: number; readonly area: number } | null;
}

/** Cheapest safe cost over height and antenna area: contours where it is safe, a stepped edge where that ends. */
export const MapPlot = memo(({ map, wish, width, system, currency, take, taken }: Props) => {
  const height = Math.min(430, Math.max(320, width * 0.62));
  const sheet = useMemo(() => sheetOf(map, width, height), [map, width, height]);
  const lines = useMemo(() => levelLines(map), [map]);
  const edges = useMemo(() => edgesOf(map), [map]);
  const unsafe = map.cells.filter((cell) => cell.cost === null);
  const at = cellAt(map);
  const paper = useRef<SVGSVGElement>(null);
  return (
    <>
      <svg
        ref={paper}
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
        {taken && <TakenMark at={taken} sheet={sheet} />}
        <WishRoads {...{ map, wish, sheet, system, currency }} />
      </svg>
      <SaveSvg svg={paper} name="map" />
    </>
  );
});

/** The same letter as on the front, in the list and on the card. */
const TakenMark = ({ at, sheet }: { at: { height: number; area: number }; sheet: Sheet }) => (
  <g style={{ pointerEvents: "none" }}>
    <rect
      x={sheet.ofArea(at.area) - 8.5}
      y={sheet.ofHeight(at.height) - 8.5}
      width="17"
      height="17"
      className="k"
    />
    <text
      x={sheet.ofArea(at.area)}
      y={sheet.ofHeight(at.height) + 4.5}
      textAnchor="middle"
      style={{ fill: "var(--paper)", fontWeight: 600 }}
    >
      E
    </text>
  </g>
);

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

const UnsafeWords = ({ map, sheet }: { map: CostMap; sheet: Sheet }) => {
  const unsafe = map.cells.filter((cell) => cell.cost === null);
  const why = stopper(map);
  if (unsafe.length < 12 || !why) return null;
  // In the middle of what is not safe, inside the paper.
  const mean = (pick: (cell: MapCell) => number) =>
    unsafe.reduce((sum, cell) => sum + pick(cell), 0) / unsafe.length;
  const x = Math.min(Math.max(sheet.ofArea(mean((cell) => cell.area)), MARGIN.left + 98), sheet.right - 98);
  const y = Math.min(
    Math.max(sheet.ofHeight(mean((cell) => cell.height)), MARGIN.top + 30),
    sheet.bottom - 40,
  );
  return (
    <g>
      <rect x={x - 96} y={y - 20} width="192" height="44" className="p" />
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
    <rect
      {...box}
      fill={fill}
      className="cell"
      data-design={cell.design ? designKey(cell.design) : undefined}
      style={{ cursor: "pointer" }}
      onClick={() => take(cell)}
    >
      <title>{label}</title>
    </rect>
  );
};

const cellWords = (cell: MapCell, system: System, currency: string) =>
  `${said(cell.height, "length", system)} up with ${said(cell.area, "area", system)}: ${money(cell.cost!, currency, system)}`;

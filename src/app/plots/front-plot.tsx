import { memo, useMemo, useRef } from "react";
import {
  Area,
  CartesianGrid,
  ComposedChart,
  Line,
  Scatter,
  useXAxisScale,
  useYAxisScale,
  XAxis,
  YAxis,
} from "recharts";
import { designKey } from "../../model/design-key.ts";
import type { FrontPoint } from "../../search/types.ts";
import { SaveSvg } from "../parts/save-svg.tsx";
import { grouped, inUnits, money, type System, said, unitOf } from "../wording/figures.ts";
import { frontWords, LETTER } from "./front-words.ts";
import { FLOORS, type Marked, marginOf, roundScale, stair } from "./stairs.ts";

interface Props {
  readonly points: readonly FrontPoint[];
  /** Designs that another beats in cost and concrete: drawn faint, without a ring. */
  readonly faint: readonly FrontPoint[];
  /** Cost below which the safe edge is proven; null where all of it is. */
  readonly certain: number | null;
  readonly marked: readonly Marked[];
  readonly width: number;
  readonly system: System;
  readonly currency: string;
  readonly take: (point: FrontPoint) => void;
}

/** Rows are named by what they are: a row's own x, y, width or height would be overwritten with pixels. */
interface Row {
  readonly concrete: number;
  readonly edge?: number;
  readonly [floor: `floor${number}`]: number;
}
interface Ring {
  readonly concrete: number;
  readonly cost: number;
  readonly point: FrontPoint;
  readonly letter: string | null;
  /** Middle of its letter from the ring, px; null where it has none. */
  readonly off: readonly [dx: number, dy: number] | null;
  readonly words: string;
  readonly take: (point: FrontPoint) => void;
}

const dashes: Readonly<Record<number, string | undefined>> = {
  0: undefined,
  0.1: "9 3",
  0.25: "4 3",
  0.5: "1.5 3",
};
const quiet = { fill: "var(--ink2)", fontSize: 12, fontFamily: "var(--letter)" };

/** Around the paper of the plot, px: letters and words find their places before the chart is drawn. */
const MARGIN = { top: 8, right: 16, bottom: 22, left: 4 } as const;
const AXIS = { across: 30, up: 52 } as const;

/** Cost against concrete: one stair for each margin, every corner a judged design. */
export const FrontPlot = memo((props: Props) => {
  const { points, faint, certain, marked, width, system, currency, take } = props;
  const height = Math.min(430, Math.max(320, width * 0.7));
  const built = useMemo(
    () => build(points, certain, marked, system, currency, take, [width, height]),
    [points, certain, marked, system, currency, take, width, height],
  );
  const paper = useRef<SVGSVGElement>(null);
  return (
    <>
      <ComposedChart
        ref={paper}
        role="group"
        aria-label={`Cost against concrete in place: ${built.rings.length} corners of stairs, one for each margin`}
        width={width}
        height={height}
        data={built.rows as Row[]}
        margin={MARGIN}
        accessibilityLayer={false}
      >
        <CartesianGrid stroke="var(--rule)" strokeWidth={0.75} />
        <XAxis
          type="number"
          dataKey="concrete"
          domain={[built.across[0], built.across.at(-1)!]}
          ticks={built.across as number[]}
          tickFormatter={(value: number) => grouped(value, 2, system)}
          tick={quiet}
          tickLine={false}
          stroke="var(--ink)"
          height={AXIS.across}
          label={{
            value: `concrete in place, ${unitOf("volume", system)}`,
            position: "insideBottomRight",
            offset: -14,
            ...quiet,
          }}
        />
        <YAxis
          type="number"
          domain={[built.up[0], built.up.at(-1)!]}
          ticks={built.up as number[]}
          tickFormatter={(value: number) => grouped(value, 0, system)}
          tick={quiet}
          tickLine={false}
          stroke="var(--ink)"
          width={AXIS.up}
          allowDataOverflow
        />
        <Area
          dataKey="edge"
          type="stepAfter"
          stroke="none"
          fill="url(#unsafe)"
          fillOpacity={1}
          connectNulls
          isAnimationActive={false}
        />
        {built.floors.map(({ floor, last, label }) => (
          <Line
            key={floor}
            dataKey={`floor${floor * 100}`}
            type="stepAfter"
            stroke={floor === 0 ? "var(--govern)" : "var(--ink)"}
            strokeWidth={floor === 0 ? 2.6 : 1.2}
            strokeDasharray={dashes[floor]}
            dot={false}
            connectNulls
            isAnimationActive={false}
            label={(props) => endLabel(props, last, floor, label)}
          />
        ))}
        <FaintDots points={faint} system={system} />
        <Scatter data={built.rings as Ring[]} dataKey="cost" shape={ringShape} isAnimationActive={false} />
      </ComposedChart>
      <SaveSvg svg={paper} name="front" />
    </>
  );
});

/** All in one path: thousands of dots cost the page one element. */
const FaintDots = ({ points, system }: { points: readonly FrontPoint[]; system: System }) => {
  const across = useXAxisScale();
  const up = useYAxisScale();
  if (!across || !up || points.length === 0) return null;
  const dots = points.map(
    ({ concrete, cost }) => `M${across(inUnits(concrete, "volume", system))} ${up(cost)}h0`,
  );
  return <path className="faint" d={dots.join("")} data-count={points.length} />;
};

const build = (
  points: readonly FrontPoint[],
  certain: number | null,
  marked: readonly Marked[],
  system: System,
  currency: string,
  take: (point: FrontPoint) => void,
  [width, height]: readonly [number, number],
) => {
  const stairs = FLOORS.map((floor) => ({ floor, corners: stair(points, floor) })).filter(
    (one) => one.corners.length,
  );
  const corners = [...new Set([...stairs.flatMap((one) => one.corners), ...marked.map((one) => one.point)])];
  const volume = (point: FrontPoint) => inUnits(point.concrete, "volume", system);
  const across = roundScale(Math.min(...corners.map(volume)) * 0.9, Math.max(...corners.map(volume)) * 1.25);
  const up = roundScale(
    Math.min(...corners.map((c) => c.cost)) * 0.97,
    Math.max(...corners.map((c) => c.cost)) * 1.02,
  );
  const end = across.at(-1)!;
  const top = up.at(-1)!;
  const rows: Row[] = stairs.flatMap(({ floor, corners: found }) => {
    const name = `floor${floor * 100}` as const;
    const steps = found.map((point) => ({ concrete: volume(point), [name]: point.cost }) as Row);
    // Up the left side: with less concrete than the first corner nothing is safe at any price.
    const wall = { concrete: volume(found[0]), [name]: top } as Row;
    return [wall, ...steps, { concrete: end, [name]: found.at(-1)!.cost } as Row];
  });
  // hatched only where it is proven that nothing safe is so cheap
  const proven = (cost: number) => Math.max(up[0], Math.min(cost, certain ?? cost));
  const lowest = stairs[0]?.floor === 0 ? stairs[0].corners : [];
  const hatch: Row[] = lowest.length
    ? [
        { concrete: across[0], edge: proven(top) },
        ...lowest.map((point) => ({ concrete: volume(point), edge: proven(point.cost) })),
        { concrete: end, edge: proven(lowest.at(-1)!.cost) },
      ]
    : [];
  const all = [...rows, ...hatch].sort((a, b) => a.concrete - b.concrete);
  const letterOf = (point: FrontPoint) => marked.find((one) => one.point === point)?.letter ?? null;
  const [left, right] = [MARGIN.left + AXIS.up, width - MARGIN.right];
  const [roof, foot] = [MARGIN.top, height - MARGIN.bottom - AXIS.across];
  const x = (value: number) => left + ((value - across[0]) / (end - across[0])) * (right - left);
  const y = (value: number) => foot - ((value - up[0]) / (top - up[0])) * (foot - roof);
  const { letters, labels } = frontWords(
    corners.map((point) => ({
      x: x(volume(point)),
      y: y(point.cost),
      radius: radiusOf(point),
      letter: letterOf(point),
    })),
    stairs.map(({ floor, corners: found }) => ({
      x: right - 4,
      y: y(found.at(-1)!.cost),
      words:
        floor === 0
          ? ["safe edge: margin 0 % or more", "safe edge"]
          : [`margin ${floor * 100} % or more`, `margin ${floor * 100} %`],
      under: floor === 0,
    })),
    [left, roof, right, foot],
  );
  const rings: Ring[] = corners.map((point, i) => ({
    concrete: volume(point),
    cost: point.cost,
    point,
    letter: letterOf(point),
    off: letters[i],
    words: `${money(point.cost, currency, system)}, ${said(point.concrete, "volume", system)} of concrete, margin ${marginOf(point, " %")}: see this design`,
    take,
  }));
  const floors = stairs.map(({ floor }, i) => ({
    floor,
    last: lastIndex(all, `floor${floor * 100}`),
    label: labels[i],
  }));
  return { rows: all, rings, across, up, floors };
};

const lastIndex = (rows: readonly Row[], name: `floor${number}`): number =>
  rows.reduce((last, row, index) => (row[name] === undefined ? last : index), -1);

/** Recharts hands its own types to a label; only these are used. */
interface LabelProps {
  readonly x?: number | string;
  readonly y?: number | string;
  readonly index?: number;
}
const endLabel = (
  props: LabelProps,
  last: number,
  floor: number,
  { text, dy }: { readonly text: string; readonly dy: number },
) => {
  if (props.index !== last) return <g />;
  return (
    <text
      x={Number(props.x) - 4}
      y={Number(props.y) + dy}
      textAnchor="end"
      className={floor === 0 ? "g halo" : "halo"}
    >
      {text}
    </text>
  );
};

const radiusOf = ({ margin }: FrontPoint): number => 3 + 13 * Math.min(margin, 0.8);

/** Module-level, so that its identity never changes: a new shape remounts every ring. */
const ringShape = (props: unknown) => {
  const { cx, cy, payload } = props as { cx: number; cy: number; payload: Ring };
  const radius = radiusOf(payload.point);
  const [lx, ly] = [cx + (payload.off?.[0] ?? 0), cy + (payload.off?.[1] ?? 0)];
  const seen = () => payload.take(payload.point);
  return (
    <g>
      {/* biome-ignore lint/a11y/useSemanticElements: a ring in a chart can't be an HTML button */}
      <g
        role="button"
        tabIndex={0}
        aria-label={payload.words}
        className="ring"
        data-design={designKey(payload.point.design)}
        style={{ cursor: "pointer" }}
        onClick={seen}
        onKeyDown={(event) => {
          if (event.key === "Enter" || event.key === " ") {
            event.preventDefault();
            seen();
          }
        }}
      >
        <circle cx={cx} cy={cy} r={Math.max(radius + 5, 12)} fill="transparent" className="halo-ring" />
        <circle cx={cx} cy={cy} r={radius} className="p" />
      </g>
      {payload.letter && (
        <g style={{ pointerEvents: "none" }}>
          <rect x={lx - LETTER / 2} y={ly - LETTER / 2} width={LETTER} height={LETTER} className="k" />
          <text
            x={lx}
            y={ly + 4.5}
            textAnchor="middle"
            style={{ fill: "var(--paper)", fontWeight: 600, fontSize: 13 }}
          >
            {payload.letter}
          </text>
        </g>
      )}
    </g>
  );
};

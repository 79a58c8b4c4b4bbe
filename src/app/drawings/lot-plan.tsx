import type { Study } from "../../model/study.ts";
import { figure, type System, said } from "../wording/figures.ts";
import type { LotFigures } from "../wording/lot-figures.ts";
import { line } from "./frame.ts";
import { Balloon } from "./loads.tsx";

interface Props {
  readonly study: Study;
  readonly lot: LotFigures;
  readonly width: number;
  readonly system: System;
  readonly crossed: boolean;
}
type Spot = readonly [number, number];

/** North up, one scale: lot, setback, star of anchors, power lines, and the circle a falling mast would reach. */
export const LotPlan = ({ study, lot, width, system, crossed }: Props) => {
  const plan = planOf(study, lot, width);
  const { x, y, scale, height } = plan;
  const { corners, setback, powerLines } = study.lot;
  const path = (points: readonly Spot[]) => line(points.map(([east, north]) => [x(east), y(north)] as const));
  const [mast, ...anchors] = lot.pegs;
  const narrow = width < 520;
  const tightest = lot.lines[0];
  return (
    <svg
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={`Plan of the lot, north up: mast, ${anchors.length} anchors, fall zone of ${said(lot.reach, "length", system)}`}
    >
      <clipPath id="sheet">
        <rect x="0" y="0" width={width} height={height - 30} />
      </clipPath>
      <g clipPath="url(#sheet)">
        <circle cx={x(mast.east)} cy={y(mast.north)} r={lot.reach * scale} className="n l1 df" />
        <path d={`${path(corners)}Z`} className="l4 n" />
        {setback > 0 && <path d={`${path(inset(corners, setback))}Z`} className="n l1 d" />}
        {powerLines.map((power) => (
          <g key={power.name}>
            <path d={path(power.points)} className="l3 n dp" />
            <PowerWords words={power.name} points={power.points} plan={plan} />
          </g>
        ))}
        {anchors.map((peg) => (
          <path
            key={peg.name}
            d={`M${x(mast.east)} ${y(mast.north)}L${x(peg.east)} ${y(peg.north)}`}
            className="l2"
          />
        ))}
      </g>
      {tightest && (
        <g>
          <path
            d={`M${x(mast.east)} ${y(mast.north)}L${x(tightest.nearest[0])} ${y(tightest.nearest[1])}`}
            className="lg"
            markerEnd="url(#arb)"
          />
          <text
            x={(x(mast.east) + x(tightest.nearest[0])) / 2 + 20}
            y={(y(mast.north) + y(tightest.nearest[1])) / 2 - 8}
            textAnchor="middle"
            className="g halo"
          >
            {said(tightest.distance, "length", system)}
          </text>
        </g>
      )}
      {anchors.map((peg, i) => (
        <g key={peg.name}>
          <rect x={x(peg.east) - 5} y={y(peg.north) - 5} width="10" height="10" className="p l3" />
          <Balloon
            x={x(peg.east) + 20 * Math.sin(((peg.bearing ?? 0) * Math.PI) / 180)}
            y={y(peg.north) - 20 * Math.cos(((peg.bearing ?? 0) * Math.PI) / 180)}
            number={i + 1}
          />
          {!narrow && (
            <text
              x={(x(peg.east) + x(mast.east)) / 2 + 8}
              y={(y(peg.north) + y(mast.north)) / 2}
              className="halo"
            >
              {Math.round(peg.bearing ?? 0)}°
            </text>
          )}
        </g>
      ))}
      <rect x={x(mast.east) - 6} y={y(mast.north) - 6} width="12" height="12" className="p l3" />
      <path d={`M${x(mast.east)} ${y(mast.north) - 4}l4 7h-8z`} className="k" />
      <text x={x(mast.east) + 12} y={y(mast.north) + 20} className="b halo">
        mast
      </text>
      <text
        x={x(mast.east)}
        y={Math.min(y(mast.north) + lot.reach * scale - 6, height - 44)}
        textAnchor="middle"
        className="s halo"
      >
        fall zone, {said(lot.reach, "length", system)}
      </text>
      <North x={24} y={60} />
      <ScaleBar plan={plan} system={system} />
      {crossed && <path d={`M0 0L${width} ${height}M${width} 0L0 ${height}`} className="l4" />}
    </svg>
  );
};

interface Plan {
  readonly x: (east: number) => number;
  readonly y: (north: number) => number;
  readonly scale: number;
  readonly width: number;
  readonly height: number;
}

/** Lot, fall zone and the near ends of power lines all fit; a far line end may leave the sheet. */
const planOf = (study: Study, lot: LotFigures, width: number): Plan => {
  const [mast] = lot.pegs;
  const spots: Spot[] = [
    ...study.lot.corners,
    [mast.east - lot.reach, mast.north - lot.reach],
    [mast.east + lot.reach, mast.north + lot.reach],
    ...lot.lines.filter((one) => one.distance < lot.reach * 2).map((one) => one.nearest),
  ];
  const [west, east] = [Math.min(...spots.map(([e]) => e)), Math.max(...spots.map(([e]) => e))];
  const [south, north] = [Math.min(...spots.map(([, n]) => n)), Math.max(...spots.map(([, n]) => n))];
  const pad = 22;
  const scale = Math.min((width - 2 * pad) / (east - west), 720 / (north - south));
  const left = (width - (east - west) * scale) / 2;
  return {
    x: (value) => left + (value - west) * scale,
    y: (value) => pad + (north - value) * scale,
    scale,
    width,
    height: (north - south) * scale + 2 * pad + 34,
  };
};

/** The setback line: each side moved in, met with its neighbours. Corners come either way round. */
const inset = (corners: readonly Spot[], by: number): readonly Spot[] => {
  const area = corners.reduce((sum, [e, n], i) => {
    const [e2, n2] = corners[(i + 1) % corners.length];
    return sum + e * n2 - e2 * n;
  }, 0);
  const turn = area > 0 ? 1 : -1;
  const sides = corners.map(([e, n], i) => {
    const [e2, n2] = corners[(i + 1) % corners.length];
    const length = Math.hypot(e2 - e, n2 - n) || 1;
    const [dx, dy] = [(e2 - e) / length, (n2 - n) / length];
    return { e: e - dy * by * turn, n: n + dx * by * turn, dx, dy };
  });
  return sides.map((side, i) => {
    const before = sides[(i + sides.length - 1) % sides.length];
    const cross = before.dx * side.dy - before.dy * side.dx;
    if (Math.abs(cross) < 1e-9) return [side.e, side.n] as const;
    const share = ((side.e - before.e) * side.dy - (side.n - before.n) * side.dx) / cross;
    return [before.e + before.dx * share, before.n + before.dy * share] as const;
  });
};

const PowerWords = ({ words, points, plan }: { words: string; points: readonly Spot[]; plan: Plan }) => {
  const [a, b] = [points[0], points[points.length - 1]];
  const turn = (Math.atan2(plan.y(b[1]) - plan.y(a[1]), plan.x(b[0]) - plan.x(a[0])) * 180) / Math.PI;
  const readable = turn > 90 ? turn - 180 : turn < -90 ? turn + 180 : turn;
  const [px, py] = [plan.x((a[0] + b[0]) / 2), plan.y((a[1] + b[1]) / 2)];
  return (
    <g transform={`translate(${px} ${py}) rotate(${readable})`}>
      <text x="-70" y="-7" textAnchor="middle" className="b halo">
        {words}
      </text>
    </g>
  );
};

const North = ({ x, y }: { x: number; y: number }) => (
  <g>
    <path d={`M${x} ${y}V${y - 44}`} className="l3" markerEnd="url(#arb)" />
    <text x={x} y={y - 49} textAnchor="middle" className="b">
      N
    </text>
  </g>
);

const ScaleBar = ({ plan, system }: { plan: Plan; system: System }) => {
  const unit = system === "us" ? 3.048 : 5;
  const [from, level] = [plan.width - 2 * unit * plan.scale - 44, plan.height - 14];
  return (
    <g>
      <path
        d={`M${from} ${level}h${2 * unit * plan.scale}M${from} ${level - 5}v5M${from + unit * plan.scale} ${level - 5}v5M${from + 2 * unit * plan.scale} ${level - 5}v5`}
        className="l2"
      />
      {(plan.width < 520 ? [0, 2] : [0, 1, 2]).map((n) => (
        <text key={n} x={from + n * unit * plan.scale} y={level - 8} textAnchor="middle" className="s">
          {n === 2 ? said(n * unit, "length", system, 0) : figure(n * unit, "length", system, 0)}
        </text>
      ))}
    </g>
  );
};

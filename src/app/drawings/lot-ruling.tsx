import type { Spot } from "../state/lot-edits.ts";
import { figure, type System, said } from "../wording/figures.ts";

/** From the ground to the paper, north up. */
export interface Plan {
  readonly x: (east: number) => number;
  readonly y: (north: number) => number;
  /** Back from the paper to the ground. */
  readonly spot: (x: number, y: number) => Spot;
  readonly scale: number;
  readonly width: number;
  readonly height: number;
}

/** Numbers of the corners outside the lot, and lengths of its edges: inside where the paper is narrow. */
export const EdgeWords = ({
  corners,
  plan,
  system,
}: {
  corners: readonly Spot[];
  plan: Plan;
  system: System;
}) => {
  const middle: Spot = [
    corners.reduce((sum, [east]) => sum + east, 0) / corners.length,
    corners.reduce((sum, [, north]) => sum + north, 0) / corners.length,
  ];
  const out = ([east, north]: Spot, by: number): Spot => {
    const [dx, dy] = [plan.x(east) - plan.x(middle[0]), plan.y(north) - plan.y(middle[1])];
    const length = Math.hypot(dx, dy) || 1;
    return [plan.x(east) + (dx / length) * by, plan.y(north) + (dy / length) * by];
  };
  return (
    <g>
      {corners.map((corner, i) => {
        const next = corners[(i + 1) % corners.length];
        const length = Math.hypot(next[0] - corner[0], next[1] - corner[1]);
        const [lx, ly] = out(corner, 16);
        const half: Spot = [(corner[0] + next[0]) / 2, (corner[1] + next[1]) / 2];
        const [wx, wy] = out(half, plan.width < 520 ? -14 : 24);
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: a corner has no other name than its number
          <g key={i}>
            <text x={lx} y={ly + 4} textAnchor="middle" className="b halo">
              {i + 1}
            </text>
            {length * plan.scale > 60 && (
              <text x={wx} y={wy + 4} textAnchor="middle" className="s halo">
                {said(length, "length", system)}
              </text>
            )}
          </g>
        );
      })}
    </g>
  );
};

/** Every ten feet or five metres: the grid is the scale. */
export const Grid = ({ plan, system }: { plan: Plan; system: System }) => {
  const unit = system === "us" ? 6.096 : 5;
  const [low, high] = [plan.spot(0, plan.height - 30), plan.spot(plan.width, 0)];
  const ticks = (from: number, to: number) =>
    Array.from(
      { length: Math.floor(to / unit) - Math.ceil(from / unit) + 1 },
      (_, i) => (Math.ceil(from / unit) + i) * unit,
    );
  return (
    <g>
      {ticks(low[0], high[0]).map((east) => (
        <path key={`e${east}`} d={`M${plan.x(east)} 0V${plan.height - 30}`} className="l0" />
      ))}
      {ticks(low[1], high[1]).map((north) => (
        <path key={`n${north}`} d={`M0 ${plan.y(north)}H${plan.width}`} className="l0" />
      ))}
    </g>
  );
};

export const PowerWords = ({
  words,
  points,
  plan,
}: {
  words: string;
  points: readonly Spot[];
  plan: Plan;
}) => {
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

export const North = ({ x, y }: { x: number; y: number }) => (
  <g>
    <path d={`M${x} ${y}V${y - 44}`} className="l3" markerEnd="url(#arb)" />
    <text x={x} y={y - 49} textAnchor="middle" className="b">
      N
    </text>
  </g>
);

export const ScaleBar = ({ plan, system }: { plan: Plan; system: System }) => {
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

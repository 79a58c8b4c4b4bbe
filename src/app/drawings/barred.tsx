import type { BarredArc } from "../wording/barred.ts";
import type { Plan } from "./lot-ruling.tsx";

type Spot = readonly [x: number, y: number];

interface Props {
  readonly arcs: readonly BarredArc[];
  /** m. */
  readonly radius: number;
  readonly mast: { readonly east: number; readonly north: number };
  readonly plan: Plan;
  /** What it shows, for who can't see it. */
  readonly words: string;
}

/** Half the width of the band, px. */
const HALF = 7;

/** Middles of the words inside the circle, one an arc that is long enough for them, px. */
export const barredSpots = ({ arcs, radius, mast, plan }: Omit<Props, "words">): readonly Spot[] => {
  const far = radius * plan.scale;
  if (plan.width < 520) return [];
  return arcs
    .filter(({ from, to }) => ((to - from) * Math.PI * far) / 180 > 60)
    .map(({ from, to }) => {
      const angle = ((from + to) * Math.PI) / 360;
      return [
        plan.x(mast.east) + (far - 30) * Math.sin(angle),
        plan.y(mast.north) - (far - 30) * Math.cos(angle),
      ];
    });
};

/** Barred ground on the circle of the anchors, crossed as all that is not allowed. */
export const Barred = ({ arcs, radius, mast, plan, words }: Props) => {
  if (arcs.length === 0) return null;
  const [cx, cy] = [plan.x(mast.east), plan.y(mast.north)];
  const far = radius * plan.scale;
  const at = (bearing: number, r: number) => {
    const angle = (bearing * Math.PI) / 180;
    return `${(cx + r * Math.sin(angle)).toFixed(1)} ${(cy - r * Math.cos(angle)).toFixed(1)}`;
  };
  const band = ({ from, to }: BarredArc): string => {
    // an arc of a whole turn would begin where it ends, and be none
    const end = Math.min(to, from + 359.9);
    const large = end - from > 180 ? 1 : 0;
    const [out, into] = [far + HALF, far - HALF];
    return `M${at(from, out)}A${out} ${out} 0 ${large} 1 ${at(end, out)}L${at(end, into)}A${into} ${into} 0 ${large} 0 ${at(from, into)}Z`;
  };
  return (
    <g className="barred">
      <title>{words}</title>
      <circle cx={cx} cy={cy} r={far} className="n l1 d" />
      {arcs.map((arc) => (
        <path key={arc.from} d={band(arc)} fill="url(#unsafe)" className="l1" />
      ))}
      {barredSpots({ arcs, radius, mast, plan }).map(([x, y]) => (
        <text key={`${x} ${y}`} x={x} y={y} textAnchor="middle" className="s halo">
          no anchor
        </text>
      ))}
    </g>
  );
};

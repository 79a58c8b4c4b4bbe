import { useRef, useState } from "react";
import type { Study } from "../../model/study.ts";
import { upperFirst } from "../../report/names.ts";
import { SaveSvg } from "../parts/save-svg.tsx";
import { type Hold, holdName, type Spot } from "../state/lot-edits.ts";
import { barredWords } from "../wording/barred.ts";
import { type System, said } from "../wording/figures.ts";
import { type LotFigures, nearestSpot } from "../wording/lot-figures.ts";
import { Barred, barredSpots } from "./barred.tsx";
import { line } from "./frame.ts";
import { Handle } from "./handle.tsx";
import { Balloon } from "./loads.tsx";
import { EdgeWords, Grid, North, type Plan, PowerWords, ScaleBar } from "./lot-ruling.tsx";

interface Props {
  readonly study: Study;
  readonly lot: LotFigures;
  readonly width: number;
  readonly system: System;
  readonly crossed: boolean;
  readonly onDrag: (hold: Hold, from: Spot, to: Spot, fine: boolean, gesture: string) => void;
  readonly onStep: (hold: Hold, from: Spot, arrow: Spot, fine: boolean, gesture: string) => void;
}

/** North up, one scale: lot, setback, star of anchors, power lines, and the circle a falling mast would reach. */
export const LotPlan = ({ study, lot, width, system, crossed, onDrag, onStep }: Props) => {
  const fitted = planOf(study, lot, width);
  // the paper lies still while something is drawn over it
  const [still, setStill] = useState<Plan | null>(null);
  const plan = still ?? fitted;
  const paper = useRef<SVGSVGElement>(null);
  const { x, y, scale, height } = plan;
  const { corners, setback, powerLines, keepOut = [] } = study.lot;
  const path = (points: readonly Spot[]) => line(points.map(([east, north]) => [x(east), y(north)] as const));
  const [mast, ...anchors] = lot.pegs;
  const tightest = lot.lines[0];
  const words = lot.barred ? barredSpots({ ...lot.barred, mast, plan }) : [];
  const handle = (hold: Hold, spot: Spot) => ({
    x: x(spot[0]),
    y: y(spot[1]),
    name: `${upperFirst(holdName(hold))}: ${placeWords(spot, system)}. ${arrowWords(hold, system)}`,
    onDrag: (px: number, py: number, fine: boolean, gesture: string) =>
      onDrag(hold, spot, plan.spot(px, py), fine, gesture),
    onStep: (right: number, up: number, fine: boolean, gesture: string) =>
      onStep(hold, spot, [right, up], fine, gesture),
    onHold: (held: boolean) => setStill(held ? plan : null),
  });
  return (
    <>
      {/* biome-ignore lint/a11y/useSemanticElements: a fieldset can't stand in for a drawing */}
      <svg
        ref={paper}
        width={width}
        height={height}
        viewBox={`0 0 ${width} ${height}`}
        role="group"
        aria-label={`Plan of the lot, north up: mast, ${anchors.length} anchors, fall zone of ${said(lot.reach, "length", system)}`}
      >
        <clipPath id="sheet">
          <rect x="0" y="0" width={width} height={height - 30} />
        </clipPath>
        <Grid plan={plan} system={system} />
        <g clipPath="url(#sheet)">
          <circle cx={x(mast.east)} cy={y(mast.north)} r={lot.reach * scale} className="n l1 df" />
          <path d={`${path(corners)}Z`} className="l4 n" />
          {setback > 0 && <path d={`${path(inset(corners, setback))}Z`} className="n l1 d" />}
          {keepOut.map((plot, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: two plots may bear one name
            <KeptOut key={i} name={plot.name} corners={plot.corners} plan={plan} words={words} />
          ))}
          {powerLines.map((power, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: two lines may bear one name
            <g key={i}>
              <path d={path(power.points)} className="l3 n dp" />
              <PowerWords words={power.name} points={power.points} plan={plan} />
            </g>
          ))}
          {lot.barred && (
            <Barred
              {...lot.barred}
              mast={mast}
              plan={plan}
              words={barredWords(lot.barred.arcs, lot.barred.radius, system)}
            />
          )}
          {anchors.map((peg) => (
            <path
              key={peg.name}
              d={`M${x(mast.east)} ${y(mast.north)}L${x(peg.east)} ${y(peg.north)}`}
              className="l2"
            />
          ))}
        </g>
        <EdgeWords corners={corners} plan={plan} system={system} />
        {tightest && (
          <g>
            <path
              d={`M${x(mast.east)} ${y(mast.north)}L${x(tightest.nearest[0])} ${y(tightest.nearest[1])}`}
              className={tightest.distance < lot.reach ? "lg" : "l2"}
              markerEnd="url(#arb)"
            />
            <text
              x={x(mast.east) * 0.4 + x(tightest.nearest[0]) * 0.6}
              y={y(mast.north) * 0.4 + y(tightest.nearest[1]) * 0.6 - 8}
              textAnchor="middle"
              className={tightest.distance < lot.reach ? "g halo" : "b halo"}
            >
              {said(tightest.distance, "length", system)}
            </text>
          </g>
        )}
        {anchors.map((peg, i) => (
          <Anchor key={peg.name} peg={peg} index={i} plan={plan} mast={mast} handle={handle} />
        ))}
        <text
          x={x(mast.east)}
          y={Math.min(y(mast.north) + lot.reach * scale - 6, height - 44)}
          textAnchor="middle"
          className="s halo"
        >
          {`fall zone, ${said(lot.reach, "length", system)}`}
        </text>
        <North x={24} y={60} />
        <ScaleBar plan={plan} system={system} />
        {corners.map((corner, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a corner has no other name than its number
          <Handle key={i} {...handle({ kind: "corner", index: i }, corner)}>
            <circle cx={x(corner[0])} cy={y(corner[1])} r="4.6" className="p l3" />
          </Handle>
        ))}
        {keepOut.flatMap((plot, i) =>
          spotsOn(plan, plot.corners).map(({ spot, index }) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: corners have no other name
            <Handle key={`${i}/${index}`} {...handle({ kind: "plot", plot: i, index }, spot)}>
              <circle cx={x(spot[0])} cy={y(spot[1])} r="4.6" className="p l2" />
            </Handle>
          )),
        )}
        {powerLines.flatMap((power, i) =>
          spotsOn(plan, power.points).map(({ spot, index }) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: points of a line have no other name
            <Handle key={`${i}/${index}`} {...handle({ kind: "line", line: i, index }, spot)}>
              <circle cx={x(spot[0])} cy={y(spot[1])} r="4.6" className="k" />
            </Handle>
          )),
        )}
        {powerLines.map((power, i) => (
          <WholeLine
            // biome-ignore lint/suspicious/noArrayIndexKey: two lines may bear one name
            key={i}
            points={power.points}
            line={i}
            from={study.lot.mast}
            plan={plan}
            handle={handle}
          />
        ))}
        <Handle {...handle({ kind: "mast" }, [mast.east, mast.north])}>
          <rect x={x(mast.east) - 6} y={y(mast.north) - 6} width="12" height="12" className="p l3" />
          <path d={`M${x(mast.east)} ${y(mast.north) - 4}l4 7h-8z`} className="k" />
          <text x={x(mast.east) + 12} y={y(mast.north) + 20} className="b halo">
            mast
          </text>
        </Handle>
        {crossed && (
          <path
            d={`M0 0L${width} ${height}M${width} 0L0 ${height}`}
            className="l4"
            style={{ pointerEvents: "none" }}
          />
        )}
      </svg>
      <SaveSvg svg={paper} name="plan" />
    </>
  );
};

/** A plot where nothing may be dug for an anchor, its name in its middle. */
const KeptOut = ({ name, corners, plan, words }: KeptOutProps) => {
  const middle = (at: 0 | 1) => corners.reduce((sum, corner) => sum + corner[at], 0) / corners.length;
  const [mx, my] = [plan.x(middle(0)), plan.y(middle(1)) + 4];
  // a line of lettering away from the words of the barred circle
  const under = words.find(([x, y]) => Math.abs(x - mx) < 90 && Math.abs(y - my) < LINE);
  return (
    <g>
      <title>{`${name}: no anchor here`}</title>
      <path
        d={`${line(corners.map(([east, north]) => [plan.x(east), plan.y(north)] as const))}Z`}
        className="l2 d"
        fill="url(#dots)"
      />
      {plan.width >= 520 && (
        <text x={mx} y={under ? under[1] + LINE : my} textAnchor="middle" className="s halo">
          {name}
        </text>
      )}
    </g>
  );
};
const LINE = 16;
interface KeptOutProps {
  readonly words: ReturnType<typeof barredSpots>;
  readonly name: string;
  readonly corners: readonly Spot[];
  readonly plan: Plan;
}

const placeWords = ([east, north]: Spot, system: System): string =>
  `${said(east, "length", system)} east, ${said(north, "length", system)} north`;
const arrowWords = (hold: Hold, system: System): string =>
  hold.kind === "anchor"
    ? "Up and down arrow keys move the anchors out and in, left and right turn them"
    : `Arrow keys move it by ${system === "us" ? "1 ft" : "0.25 m"}, with Shift by a quarter of that`;

type HandleOf = (hold: Hold, spot: Spot) => Omit<Parameters<typeof Handle>[0], "children">;
type Peg = LotFigures["pegs"][number];

const Anchor = ({ peg, index, plan, mast, handle }: AnchorProps) => {
  const [px, py] = [plan.x(peg.east), plan.y(peg.north)];
  const angle = ((peg.bearing ?? 0) * Math.PI) / 180;
  return (
    <>
      <Handle {...handle({ kind: "anchor", index }, [peg.east, peg.north])}>
        <rect x={px - 5} y={py - 5} width="10" height="10" className="p l3" />
        <Balloon x={px + 20 * Math.sin(angle)} y={py - 20 * Math.cos(angle)} number={index + 1} />
      </Handle>
      {/* outside what is taken hold of: it is no part of its name */}
      {plan.width >= 520 && (
        <text
          x={(px + plan.x(mast.east)) / 2 + 8}
          y={(py + plan.y(mast.north)) / 2}
          className="halo"
          style={{ pointerEvents: "none" }}
        >
          {`${Math.round(peg.bearing ?? 0)}°`}
        </text>
      )}
    </>
  );
};
interface AnchorProps {
  readonly peg: Peg;
  readonly index: number;
  readonly plan: Plan;
  readonly mast: Peg;
  readonly handle: HandleOf;
}

const onSheet = (plan: Plan, spot: Spot): boolean => {
  const [px, py] = [plan.x(spot[0]), plan.y(spot[1])];
  return px >= 4 && px <= plan.width - 4 && py >= 4 && py <= plan.height - 34;
};

/** Points that are on the paper, with their numbers. */
const spotsOn = (plan: Plan, spots: readonly Spot[]) =>
  spots.map((spot, index) => ({ spot, index })).filter(({ spot }) => onSheet(plan, spot));

/** A whole line is moved by the pole that stands nearest to the mast. */
const WholeLine = ({ points, line: index, from, plan, handle }: WholeLineProps) => {
  const { spot } = nearestSpot(from, points, false);
  const there = points.some((point) => Math.hypot(point[0] - spot[0], point[1] - spot[1]) < 1e-6);
  if (there || !onSheet(plan, spot)) return null;
  const [px, py] = [plan.x(spot[0]), plan.y(spot[1])];
  return (
    <Handle {...handle({ kind: "whole-line", line: index }, spot)}>
      <path d={`M${px} ${py - 8}l6 8l-6 8l-6 -8Z`} className="p l3" />
    </Handle>
  );
};
interface WholeLineProps {
  readonly points: readonly Spot[];
  readonly line: number;
  readonly from: Spot;
  readonly plan: Plan;
  readonly handle: HandleOf;
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
    spot: (px, py) => [west + (px - left) / scale, north - (py - pad) / scale],
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

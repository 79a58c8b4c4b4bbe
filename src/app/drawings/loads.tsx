import type { Check } from "../../model/verdict.ts";
import { figure, type System, said, unitOf } from "../wording/figures.ts";
import { around, type Spot } from "./clear.ts";
import { type Frame, line } from "./frame.ts";
import { holdX } from "./ground.tsx";
import { momentLine, type Place, type Scene } from "./scene.ts";

interface Props {
  readonly scene: Scene;
  readonly frame: Frame;
  readonly system: System;
}

/** Pressure of the wind over the height, as arrows that all point to one dashed line. */
export const Wind = ({ scene, frame, system }: Props) => {
  const pressures = scene.load?.pressure ?? [];
  const most = Math.max(0, ...pressures.map((point) => point.q));
  if (most <= 0) return null;
  const length = frame.narrow ? 30 : 68;
  const reach = (q: number) => frame.windX + (q / most) * length;
  const top = Math.max(...pressures.map((point) => point.z));
  const at = (z: number): number => {
    const above = pressures.findIndex((point) => point.z >= z);
    if (above <= 0) return pressures[Math.max(above, 0)].q;
    const [a, b] = [pressures[above - 1], pressures[above]];
    return a.q + ((b.q - a.q) * (z - a.z)) / Math.max(b.z - a.z, 1e-9);
  };
  const count = frame.narrow ? 4 : 7;
  const heights = Array.from({ length: count }, (_, i) => top * (0.2 + (0.78 * i) / (count - 1)));
  const low = heights[0];
  const outline = pressures
    .filter((point) => point.z >= low)
    .map((point) => [reach(point.q), frame.y(point.z)] as const);
  return (
    <g>
      {heights.map((z) => (
        <path
          key={z}
          d={`M${frame.windX} ${frame.y(z)}H${reach(at(z))}`}
          className="l2"
          markerEnd="url(#ar)"
        />
      ))}
      {!frame.narrow && (
        <>
          <path d={`M${frame.windX} ${frame.y(low)}V${frame.y(top)}`} className="l1" />
          <path d={line([[reach(at(low)), frame.y(low)], ...outline])} className="l1 n d" />
          <text x={frame.windX} y={15}>
            <tspan className="b">Wind</tspan>
            <tspan className="s" dx="8">
              {said(most, "pressure", system)} at the top
              {scene.windBearing === null ? "" : `, toward ${Math.round(scene.windBearing)}°`}
            </tspan>
          </text>
        </>
      )}
    </g>
  );
};

/** Resultant moment beside the mast, on the mast's own heights. */
export const Moment = ({ scene, frame, system, number }: Props & { number: number | null }) => {
  if (!scene.load) return null;
  const values = momentLine(scene.load);
  const peak = values.reduce((a, b) => (Math.abs(b[1]) > Math.abs(a[1]) ? b : a), values[0] ?? [0, 0]);
  const least = Math.min(0, ...values.map(([, m]) => m));
  const most = Math.max(1e-9, ...values.map(([, m]) => m));
  const perMoment = frame.moment.width / (most - least);
  const zero = frame.moment.zero - least * perMoment;
  const x = (m: number) => zero + m * perMoment;
  const points = values.map(([z, m]) => [x(m), frame.y(z)] as const);
  const governsHere = momentGoverns(scene);
  // beside the axis, away from the diagram; on a phone over its end, where the paper stops beside the axis
  const cramped = peak[1] < 0 && frame.moment.right - zero < 64;
  const peakPlace = cramped
    ? { x: frame.moment.right, textAnchor: "end" as const }
    : { x: zero + (peak[1] < 0 ? 8 : -8), textAnchor: peak[1] < 0 ? ("start" as const) : ("end" as const) };
  return (
    <g>
      {ordinates(values, frame).map(([z, m]) => (
        <path key={z} d={`M${zero} ${frame.y(z)}H${x(m)}`} className="l1" />
      ))}
      <path
        d={`${line(points)}L${zero} ${points.at(-1)?.[1]}V${frame.y(values[0]?.[0] ?? 0)}Z`}
        className="l3 n"
      />
      <path
        d={`M${zero} ${frame.y(peak[0])}H${x(peak[1])}`}
        className={governsHere ? "lg" : "l4"}
        style={{ strokeWidth: 3.2 }}
      />
      <text
        {...peakPlace}
        y={frame.y(peak[0]) + (cramped ? -6 : 4)}
        className={`halo ${governsHere ? "g" : "b"}`}
      >
        {figure(peak[1], "moment", system)}
      </text>
      {governsHere && number !== null && !frame.narrow && (
        <Balloon x={x(peak[1]) + 18} y={frame.y(peak[0])} number={number} governs />
      )}
      {!frame.narrow ? (
        <text x={zero - 26} y={15}>
          <tspan className="b">Moment</tspan>
          <tspan className="s" dx="8">
            {unitOf("moment", system)}
          </tspan>
        </text>
      ) : (
        <text x={frame.width} y={frame.y(0) - 4} textAnchor="end" className="s halo">
          {`moment, ${unitOf("moment", system)}`}
        </text>
      )}
    </g>
  );
};

/** Does the mast's governing check stand where the moment is greatest? */
const momentGoverns = (scene: Scene): boolean => {
  if (!scene.load || scene.governs?.at === undefined) return false;
  const peak = momentLine(scene.load).reduce((a, b) => (Math.abs(b[1]) > Math.abs(a[1]) ? b : a), [0, 0]);
  return Math.abs(scene.governs.at - peak[0]) < 0.6;
};

/** One hatch line each foot or so: the area of the diagram, not a second scale. */
const ordinates = (values: readonly (readonly [number, number])[], frame: Frame) => {
  const step = Math.max(0.3048, 8 / frame.scale);
  const top = values.at(-1)?.[0] ?? 0;
  const lines: [number, number][] = [];
  let i = 0;
  for (let z = step; z < top; z += step) {
    while (i < values.length - 2 && values[i + 1][0] < z) i++;
    const [a, b] = [values[i], values[i + 1]];
    lines.push([z, a[1] + ((b[1] - a[1]) * (z - a[0])) / Math.max(b[0] - a[0], 1e-9)]);
  }
  return lines;
};

export const Balloon = ({ x, y, number, governs = false }: BalloonProps) => (
  <g className="balloon">
    <circle
      cx={x}
      cy={y}
      r="9.5"
      className={`p ${governs ? "lg" : "l2"}`}
      style={governs ? { strokeWidth: 1.8 } : undefined}
    />
    <text x={x} y={y + 4} textAnchor="middle" className={governs ? "g" : ""} style={{ fontSize: 12 }}>
      {number}
    </text>
  </g>
);
interface BalloonProps {
  readonly x: number;
  readonly y: number;
  readonly number: number;
  readonly governs?: boolean;
}

/** What the ground feels, as arrows with their size. */
export const Reactions = ({ scene, frame, system }: Props) => {
  if (frame.narrow || !scene.load) return null;
  const ground = frame.y(0);
  const force = unitOf("force", system);
  const windward = scene.anchors.length
    ? scene.anchors.reduce((a, b) => (b.along < a.along ? b : a))
    : undefined;
  const pull = windward && scene.load.anchors[windward.number - 1];
  const eye = windward && frame.x(windward.along);
  const grade = frame.y(windward?.elevation ?? 0);
  const right = frame.x(0) + 44;
  return (
    <g>
      {pull && eye !== undefined && windward && (
        <>
          <path d={`M${eye - 18} ${grade - 12}v-48`} className="l3" markerEnd="url(#arb)" />
          <text x={eye - 24} y={grade - 66} className="halo b">
            {figure(pull.uplift, "force", system)}
            <tspan className="s" style={{ fontWeight: 400 }}>
              {` ${force} up`}
            </tspan>
          </text>
          <path d={`M${eye + 10} ${grade + 9}h36`} className="l3" markerEnd="url(#arb)" />
          <text x={eye + 50} y={grade + 13} className="halo b">
            {figure(pull.lateral, "force", system)}
            <tspan className="s" style={{ fontWeight: 400 }}>
              {` ${force} in`}
            </tspan>
          </text>
        </>
      )}
      <path d={`M${right} ${ground - 62}V${ground - 8}`} className="l3" markerEnd="url(#arb)" />
      <text x={right + 8} y={ground - 26} className="halo b">
        {figure(scene.load.base.compression, "force", system)}
        <tspan className="s" style={{ fontWeight: 400 }}>
          {` ${force} down`}
        </tspan>
      </text>
      {scene.load.base.moment > 1 && (
        <text x={right + 8} y={ground - 44} className="halo b">
          {figure(scene.load.base.moment, "moment", system)}
          <tspan className="s" style={{ fontWeight: 400 }}>
            {` ${unitOf("moment", system)}`}
          </tspan>
        </text>
      )}
    </g>
  );
};

/** Where each check's number would stand in the drawing, best first; what governs chooses first. */
export const balloonSpots = (scene: Scene, frame: Frame) => {
  const windward = scene.anchors.length
    ? scene.anchors.reduce((a, b) => (b.along < a.along ? b : a))
    : undefined;
  const axis = frame.x(0);
  function* spotsOf(check: Check, place: Place): Generator<Spot> {
    if (place === "mast") {
      const z = frame.y(check.at ?? scene.design.height / 2);
      // beside its height, left or right of the mast, before anywhere else
      for (let dx = 26; dx < 26 + 11 * 12; dx += 11) {
        yield [axis - dx, z];
        yield [axis + dx, z];
      }
      yield* around(axis, z, (_, dy) => Math.abs(dy), 26);
    } else if (place === "pipe") {
      for (const spot of around(axis, frame.y(scene.design.height), (dx, dy) => dy - dx, 20))
        if (Math.abs(spot[0] - axis) > 18) yield spot;
    } else if (place === "base") {
      // under the footing and beside it, not on the mast
      for (const spot of around(axis, frame.y(-scene.design.footing.depth), (_, dy) => -dy, 16))
        if (spot[1] > frame.y(0) + 12 || Math.abs(spot[0] - axis) > 18) yield spot;
    } else if (windward && place === "anchor")
      yield* around(
        holdX(windward, scene, frame),
        frame.y(windward.elevation - windward.depth),
        (dx) => dx,
        20,
      );
    else if (windward) {
      const level = scene.levels.findIndex(
        (l) => check.at !== undefined && Math.abs(l.height - check.at) < 0.05,
      );
      const height = scene.levels[level < 0 ? scene.levels.length - 1 : level]?.height ?? 0;
      const on = (share: number): Spot => [
        frame.x(windward.along * (1 - share)),
        frame.y(windward.elevation + (height - windward.elevation) * share),
      ];
      for (let i = 0; i < 40; i++) yield on(0.72 + (i % 2 ? 1 : -1) * 0.016 * Math.ceil(i / 2));
      yield* around(...on(0.72), (dx) => dx, 20);
    }
  }
  return (
    scene.numbered
      .filter(({ number, place }) => number !== null && place !== "none")
      .filter(({ number }) => !frame.narrow || number! <= 2)
      // on the desk the moment diagram carries the number of what governs beside it
      .filter(
        ({ check, place }) =>
          frame.narrow || place !== "mast" || check !== scene.governs || !momentGoverns(scene),
      )
      .flatMap(({ check, number, place }) => {
        const spots = () => spotsOf(check, place);
        const { value: first } = spots().next();
        return first
          ? [{ id: check.id, number: number!, governs: check === scene.governs, first, spots }]
          : [];
      })
  );
};

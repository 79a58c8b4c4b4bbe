import { type System, used } from "../wording/figures.ts";
import { faceLines } from "./face-lines.ts";
import { type Frame, line } from "./frame.ts";
import { joints, type Scene, type StackPart } from "./scene.ts";

/** Greatest share used of any strength check that stands in this stretch of the mast. */
const shareIn = (scene: Scene, from: number, to: number): number | null => {
  const shares = scene.numbered
    .filter(({ check, place }) => place === "mast" && check.at !== undefined)
    .filter(({ check }) => check.at! > from + 1e-6 && check.at! <= to + 1e-6)
    .map(({ check }) => check.utilisation)
    .filter(Number.isFinite);
  return shares.length ? Math.max(...shares) : null;
};

/** Legs, bracing and joints; a leg's weight of line tells how hard it works. */
export const MastLines = ({ scene, frame }: { scene: Scene; frame: Frame }) => {
  const { x, y } = frame;
  const cuts = joints(scene.parts);
  const stretches = cuts.map((to, i) => ({ from: i ? cuts[i - 1] : 0, to }));
  const half = (part: StackPart) => Math.max((part.section?.face ?? 0.25) * frame.scale * 0.5, 3);
  const at = (z: number) => scene.parts.find((part) => z <= part.to + 1e-6) ?? scene.parts[0];
  return (
    <g>
      {scene.parts.map((part) => (
        <path key={part.from} d={bracing(part, half(part), frame)} className="l1 n" />
      ))}
      {stretches.map(({ from, to }) => {
        const wide = half(at((from + to) / 2));
        const share = shareIn(scene, from, to);
        const weight = 0.7 + 2 * Math.min(share ?? 0.3, 1.2);
        const style = { strokeWidth: weight, stroke: "var(--ink)" };
        return (
          <g key={from}>
            <path
              d={`M${x(0) - wide} ${y(from)}V${y(to)}M${x(0) + wide} ${y(from)}V${y(to)}`}
              style={style}
            />
            <path d={`M${x(0) - wide - 4} ${y(to)}H${x(0) + wide + 4}`} className="l3" />
            {share !== null && !frame.narrow && (
              <text x={x(0) - wide - 7} y={y((from + to) / 2) + 4} textAnchor="end" className="s halo">
                {used(share)}
              </text>
            )}
          </g>
        );
      })}
    </g>
  );
};

const bracing = (part: StackPart, half: number, { x, y, scale }: Frame): string => {
  const panel = (part.section?.panel ?? 0.4) * scale;
  const high = y(part.from) - y(part.to);
  // Closer than three pixels the bracing is a grey smear: draw every so many bays instead.
  const bays = Math.max(1, Math.round(high / (panel * Math.max(1, Math.ceil(8 / panel)))));
  return faceLines(part.section?.bracing ?? { pattern: "single" }, {
    left: x(0) - half,
    right: x(0) + half,
    top: y(part.to),
    panel: high / bays,
    bays,
  })
    .map(line)
    .join("");
};

/** The stretch that governs, in the one colour. */
export const GoverningStretch = ({ scene, frame }: { scene: Scene; frame: Frame }) => {
  const { governs } = scene;
  const row = scene.numbered.find(({ check }) => check === governs);
  if (!governs || governs.at === undefined || row?.place !== "mast") return null;
  const cuts = [0, ...joints(scene.parts)];
  const index = Math.max(
    1,
    cuts.findIndex((z) => z >= governs.at! - 1e-6),
  );
  const part = scene.parts.find((p) => governs.at! <= p.to + 1e-6) ?? scene.parts[0];
  const half = Math.max((part.section?.face ?? 0.25) * frame.scale * 0.5, 3);
  const { x, y } = frame;
  return (
    <g>
      <path
        d={`M${x(0) + half} ${y(cuts[index - 1])}V${y(cuts[index] ?? governs.at)}`}
        style={{ stroke: "var(--govern)", strokeWidth: 3.4 }}
      />
      <path d={`M${x(0) - half - 9} ${y(governs.at)}H${x(0) + half + 9}`} className="lg" />
    </g>
  );
};

/** Antennas on their pipe or beside the mast, booms to scale, elements as dots on the boom. */
export const Antennas = ({ scene, frame, label }: { scene: Scene; frame: Frame; label: Label }) => {
  const { x, y, scale } = frame;
  const top = scene.design.height;
  const lines = apart(scene.items.map((item) => y(item.height) + 4));
  const piped = scene.items.some((item) => item.beside === 0);
  return (
    <g>
      {piped && <path d={`M${x(0)} ${y(top - 1)}V${y(scene.pipeTop) - 7}`} className="l3" />}
      {scene.items.map((item, i) => {
        const level = y(item.height);
        const middle = x(item.beside);
        const half = Math.max(((item.antenna?.boom ?? 0) * scale) / 2, 12);
        const elements = item.antenna?.elements ?? 0;
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: two antennas of one kind may share a height
          <g key={i}>
            {item.beside > 0 && <path d={`M${x(0)} ${level}H${middle}`} className="l2" />}
            <path
              d={`M${middle - half} ${level}H${middle + half}`}
              className={item.area > 0.6 ? "l3 keep" : "l2 keep"}
            />
            {Array.from({ length: elements }, (_, n) => (
              <circle
                // biome-ignore lint/suspicious/noArrayIndexKey: elements along a boom have no other name
                key={n}
                cx={middle + (elements === 1 ? 0 : -half + (2 * half * n) / (elements - 1))}
                cy={level}
                r={item.area > 0.6 ? 3.1 : 2}
                className="p l2"
              />
            ))}
            {!frame.narrow && (
              <text x={middle + half + 10} y={lines[i]} className="halo">
                {label(item, item.height)}
              </text>
            )}
          </g>
        );
      })}
    </g>
  );
};
/** Lines of lettering kept a line apart, upward, so that antennas close together can be read. */
const apart = (wanted: readonly number[]): readonly number[] => {
  const order = [...wanted.keys()].sort((a, b) => wanted[b] - wanted[a]);
  const placed = [...wanted];
  order.forEach((index, n) => {
    if (n > 0) placed[index] = Math.min(placed[index], placed[order[n - 1]] - 15);
  });
  return placed;
};
type Label = (item: Scene["items"][number], height: number) => string;

/** The bent shape under the governing wind, enlarged by a stated factor. */
export const Sway = ({ scene, frame, factor, words }: SwayProps) => {
  const load = scene.load;
  if (!load) return null;
  const points = load.z.map((z, i) => [frame.x(load.along[i] * factor), frame.y(z)] as const);
  const tip = points.at(-1);
  return (
    <g>
      <path d={line(points)} className="l1 n d" style={{ strokeWidth: 1 }} />
      {tip && !frame.narrow && (
        <text x={tip[0] + 10} y={clearOf(scene, frame, tip[1] + 34)} className="s halo">
          {words}
        </text>
      )}
    </g>
  );
};
/** Below the lettering of a guy level that stands in the way. */
const clearOf = (scene: Scene, frame: Frame, y: number): number =>
  scene.levels.some(({ height }) => Math.abs(frame.y(height) + 6 - y) < 26) ? y + 34 : y;

interface SwayProps {
  readonly scene: Scene;
  readonly frame: Frame;
  readonly factor: number;
  readonly words: string;
  readonly system: System;
}

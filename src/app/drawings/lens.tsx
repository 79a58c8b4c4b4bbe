import { footingAcross } from "../../model/footing-size.ts";
import type { System } from "../wording/figures.ts";
import type { Frame } from "./frame.ts";
import { holdX } from "./ground.tsx";
import type { Scene } from "./scene.ts";

interface Props {
  readonly scene: Scene;
  readonly frame: Frame;
  readonly system: System;
  readonly words: string;
}
const RADIUS = 58;

/** Where the lens lies, or null where there is none. */
export const lensMiddle = (scene: Scene, frame: Frame): readonly [number, number] | null => {
  const row = scene.numbered.find(({ check }) => check === scene.governs);
  const spot = row && frame.width >= 680 ? placeIn(scene, frame, row.place) : null;
  if (!spot) return null;
  // Between mast and moment, where the leeward guys leave the most paper; low governors get a high lens.
  const cx = Math.max(
    frame.x(0) + RADIUS + 60,
    frame.moment.zero - RADIUS - (frame.moment.zero - frame.x(0) > 330 ? 34 : 64),
  );
  return [cx, Math.min(Math.max(spot[1] + 150, 150), frame.y(0) - 2 * RADIUS - 60)];
};

/** A circle that enlarges the place that governs, with demand of capacity in words. */
export const Lens = ({ scene, frame, words }: Props) => {
  const row = scene.numbered.find(({ check }) => check === scene.governs);
  const { governs } = scene;
  if (!governs || !row) return null;
  const spot = placeIn(scene, frame, row.place);
  const middle = lensMiddle(scene, frame);
  if (!spot || !middle) return null;
  const [fromX, fromY] = spot;
  const [cx, cy] = middle;
  const away = Math.atan2(fromY - cy, fromX - cx);
  return (
    <g>
      <path
        d={`M${fromX} ${fromY}L${cx + RADIUS * Math.cos(away)} ${cy + RADIUS * Math.sin(away)}`}
        style={{ stroke: "var(--govern)", strokeWidth: 0.9 }}
      />
      <circle cx={cx} cy={cy} r={RADIUS} className="p l2 keep" />
      <Enlarged scene={scene} place={row.place} cx={cx} cy={cy} />
      <text x={cx} y={cy + RADIUS + 17} textAnchor="middle" className="g halo">
        {words}
      </text>
      <text x={cx} y={cy + RADIUS + 32} textAnchor="middle" className="s halo">
        {governs.title.toLowerCase()}, where it governs
      </text>
    </g>
  );
};

const placeIn = (scene: Scene, frame: Frame, place: string): [number, number] | null => {
  if (place === "mast") return [frame.x(0) + 6, frame.y(scene.governs?.at ?? scene.design.height / 2)];
  if (place === "pipe") return [frame.x(0) + 2, frame.y(scene.design.height)];
  if (place === "base")
    return [
      frame.x(0) + (footingAcross(scene.design.footing) * frame.scale) / 2,
      frame.y(-scene.design.footing.depth / 2),
    ];
  const windward = scene.anchors.length
    ? scene.anchors.reduce((a, b) => (b.along < a.along ? b : a))
    : undefined;
  if (!windward) return null;
  if (place === "anchor") return [holdX(windward, scene, frame) + 6, frame.y(-windward.depth)];
  const height = scene.levels.at(-1)?.height ?? 0;
  return place === "guy" ? [frame.x(windward.along * 0.5), frame.y(height * 0.5)] : null;
};

const Enlarged = ({ scene, place, cx, cy }: { scene: Scene; place: string; cx: number; cy: number }) => {
  const kind = scene.design.guys?.anchor.kind;
  const buried = kind === "deadman" || kind === "post";
  const red = { stroke: "var(--govern)", strokeWidth: 5.5 };
  if (place === "mast") {
    const atGuys = scene.levels.some((level) => Math.abs(level.height - (scene.governs?.at ?? -1)) < 0.7);
    return (
      <g>
        <path d={`M${cx - 18} ${cy - 55}V${cy + 55}M${cx + 18} ${cy - 55}V${cy + 55}`} className="l4" />
        <path
          d={`M${cx - 18} ${cy - 46}L${cx + 18} ${cy - 24}L${cx - 18} ${cy - 2}L${cx + 18} ${cy + 20}L${cx - 18} ${cy + 42}`}
          className="l1 n"
        />
        {atGuys && (
          <path
            d={`M${cx - 24} ${cy - 4}H${cx + 24}M${cx - 24} ${cy - 4}L${cx - 42} ${cy + 40}M${cx + 24} ${cy - 4}L${cx + 33} ${cy + 47}`}
            className="l3 n"
          />
        )}
        <path d={`M${cx + 18} ${cy - 4}V${cy + 54}`} style={red} />
      </g>
    );
  }
  if (place === "anchor" || place === "base") {
    const box =
      place === "anchor"
        ? { x: cx - 24, y: cy - 4, width: 40, height: 36 }
        : { x: cx - 26, y: cy - 20, width: 52, height: 58 };
    const surface = place === "anchor" ? cy - 34 : cy - 14;
    const half = Math.sqrt(RADIUS ** 2 - (surface - cy) ** 2);
    return (
      <g>
        <path d={`M${cx - half} ${surface}H${cx + half}`} className="l3" />
        {(place === "base" || buried) && (
          <>
            <rect {...box} className="p" />
            <rect {...box} fill="url(#conc)" className="l3" />
          </>
        )}
        {place === "anchor" ? (
          <path
            d={
              buried
                ? `M${cx - 4} ${cy + 12}L${cx + 26} ${cy - 48}`
                : `M${cx - 18} ${cy + 40}L${cx + 26} ${cy - 48}`
            }
            style={red}
          />
        ) : (
          <path d={`M${cx - 26} ${cy + 38}H${cx + 26}`} style={red} />
        )}
      </g>
    );
  }
  return (
    <g>
      {[-9, -3, 3, 9].map((offset) => (
        <path
          key={offset}
          d={`M${cx - 40} ${cy + 36 + offset}L${cx + 40} ${cy - 36 + offset}`}
          className="l2"
        />
      ))}
      <path d={`M${cx - 40} ${cy + 36}L${cx + 40} ${cy - 36}`} style={red} />
    </g>
  );
};

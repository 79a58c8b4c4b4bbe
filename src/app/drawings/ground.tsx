import { footingAcross, footingReach } from "../../model/footing-size.ts";
import { anchorSize, footingSize } from "../../report/part-names.ts";
import { type System, said, unitOf } from "../wording/figures.ts";
import { lengthsIn } from "../wording/parts.ts";
import type { Frame } from "./frame.ts";
import { groundHatch } from "./hatches.tsx";
import type { Scene, SceneAnchor } from "./scene.ts";

interface Props {
  readonly scene: Scene;
  readonly frame: Frame;
  readonly system: System;
}

export const Soil = ({ scene, frame, system }: Props) => {
  const { left, right, bottom } = frame.ground;
  const level = frame.y(0);
  const frost = frame.y(-scene.frostDepth);
  /** Grade, or what lies parallel to it at a height, from edge to edge. */
  const edge = (height: number): string => {
    const at = (x: number) => height - scene.rise * (x - frame.x(0));
    return `M${left} ${at(left)}L${right} ${at(right)}`;
  };
  const below = (height: number): string => `${edge(height)}L${right} ${bottom}L${left} ${bottom}Z`;
  const words = scene.soil && `${scene.soil.name}, bears ${said(scene.soil.bearing, "pressure", system, 0)}`;
  return (
    <g>
      <path d={below(level)} fill={groundHatch(scene.soil?.digging)} />
      {scene.soil?.layers
        ?.map((layer) => ({ layer, top: frame.y(-layer.from) }))
        .filter(({ top }) => top < bottom)
        .map(({ layer, top }) => (
          <g key={layer.from}>
            <path d={below(top)} className="p" />
            <path d={below(top)} fill={groundHatch(layer.digging)} />
            <path d={edge(top)} className="l1" />
          </g>
        ))}
      <path d={edge(level)} className="l3" />
      {scene.frostDepth > 0 && <path d={edge(frost)} className="l1 dd n" />}
      <text x={left - 8} y={level + 4} textAnchor="end" className="s">
        0{frame.narrow ? "" : ` ${unitOf("length", system)}`}
      </text>
      {!frame.narrow && scene.frostDepth > 0 && (
        <text x={right + 8} y={Math.max(frost + 4, level + 14)} className="s">
          frost to {said(scene.frostDepth, "length", system)}
        </text>
      )}
      {!frame.narrow && (
        <text x={frame.width} y={Math.max(bottom - 6, frost + 24)} textAnchor="end" className="s halo">
          {words}
        </text>
      )}
    </g>
  );
};

export const Footing = ({ scene, frame, system }: Props) => {
  const { footing } = scene.design;
  const { x, y, scale } = frame;
  const half = Math.max((footingAcross(footing) * scale) / 2, 5);
  const underside = y(-footing.depth);
  // a pad lies at the bottom of its hole and carries a pedestal up to grade; the rest reach grade themselves
  const slab = "thickness" in footing ? footing.thickness * scale : null;
  const top = slab === null ? y(0) - 4 : underside - slab;
  return (
    <g>
      {slab !== null && (
        <Concrete
          x={x(0) - Math.max(half * 0.22, 4)}
          y={y(0) - 4}
          width={Math.max(half * 0.44, 8)}
          height={top - y(0) + 4}
        />
      )}
      <Concrete x={x(0) - half} y={top} width={half * 2} height={underside - top} />
      {"dowels" in footing &&
        [-0.7, 0.7].map((side) => (
          <path
            key={side}
            d={`M${x(0) + side * half} ${top + 6}V${y(-footingReach(footing))}`}
            className="l3"
          />
        ))}
      <path d={`M${x(0) - 4} ${y(0) - 4}L${x(0)} ${y(0) - 8}L${x(0) + 4} ${y(0) - 4}`} className="k" />
      {!frame.narrow && (
        <text x={x(0) + half + 8} y={underside + 12} className="halo">
          {footingSize(footing, lengthsIn(system))}
        </text>
      )}
    </g>
  );
};

const Concrete = (box: { x: number; y: number; width: number; height: number }) => (
  <g className="keep">
    <rect {...box} className="p" />
    <rect {...box} fill="url(#conc)" className="l3" />
  </g>
);

/** Buried block, screw or rod, its rod in the line of the steepest guy. */
export const Anchors = ({ scene, frame, system }: Props) => {
  const guys = scene.design.guys;
  if (!guys) return null;
  const windward = scene.anchors.reduce((a, b) => (b.along < a.along ? b : a));
  return (
    <g>
      {scene.anchors.map((anchor) => (
        <Anchor key={anchor.number} anchor={anchor} scene={scene} frame={frame} />
      ))}
      {!frame.narrow && (
        <text
          x={holdX(windward, scene, frame) + 16}
          y={frame.y(windward.elevation - windward.depth) + 20}
          className="halo"
        >
          {anchorSize(guys.anchor, lengthsIn(system))}
        </text>
      )}
    </g>
  );
};

/** A rod leans away from the mast as the guys pull. */
export const holdX = (anchor: SceneAnchor, scene: Scene, { x }: Frame): number => {
  const guys = scene.design.guys!;
  if (guys.anchor.kind === "post") return x(anchor.along);
  const upper = guys.levels.at(-1)!.height - anchor.elevation;
  const lean = (anchor.depth * anchor.radius) / upper;
  return x(anchor.along * (1 + Math.min(lean, anchor.depth * 1.5) / anchor.radius));
};

const Anchor = ({ anchor, scene, frame }: { anchor: SceneAnchor; scene: Scene; frame: Frame }) => {
  const choice = scene.design.guys!.anchor;
  const eyeX = frame.x(anchor.along);
  const eyeY = frame.y(anchor.elevation) - 4;
  const holdAt = holdX(anchor, scene, frame);
  const ground = anchor.elevation - anchor.head;
  const holdY = frame.y(ground - anchor.depth);
  const side = choice.kind === "deadman" ? Math.max(choice.height * frame.scale, 8) : 0;
  return (
    <g>
      {choice.kind === "post" && (
        <Concrete
          x={eyeX - Math.max((choice.width * frame.scale) / 2, 4)}
          y={frame.y(ground)}
          width={Math.max(choice.width * frame.scale, 8)}
          height={choice.depth * frame.scale}
        />
      )}
      <path d={`M${eyeX} ${eyeY}L${holdAt} ${holdY}`} className={choice.kind === "post" ? "l4" : "l3"} />
      {choice.kind === "deadman" && (
        <Concrete x={holdAt - side / 2} y={holdY - side / 2} width={side} height={side} />
      )}
      {choice.kind === "screw" && (
        <path d={`M${holdAt - 7} ${holdY - 3}L${holdAt + 7} ${holdY + 3}`} className="l3" />
      )}
      {choice.kind === "rock-rod" && (
        <path d={`M${(eyeX + holdAt) / 2} ${(eyeY + holdY) / 2}L${holdAt} ${holdY}`} className="l4" />
      )}
      <circle cx={eyeX} cy={eyeY} r="2.6" className="p l2" />
    </g>
  );
};

export const RadiusDimension = ({ scene, frame, system }: Props) => {
  const guys = scene.design.guys;
  if (!guys) return null;
  const windward = scene.anchors.reduce((a, b) => (b.along < a.along ? b : a));
  const level = frame.ground.bottom + 16;
  const [from, to] = [frame.x(windward.along), frame.x(0)];
  // Only an anchor in the plane of the wind shows its whole radius.
  const inPlane = Math.abs(Math.abs(windward.along) - windward.radius) < 1e-6;
  const out = said(windward.radius, "length", system);
  const words = inPlane
    ? `${frame.narrow ? "" : "anchor radius "}${out}${frame.narrow ? "" : `, toward ${Math.round(windward.bearing)}°`}`
    : `anchor radius ${out}, seen aslant`;
  return (
    <g>
      <path d={`M${from} ${level}H${to}`} className="l1" markerStart="url(#tick)" markerEnd="url(#tick)" />
      <path
        d={`M${from} ${frame.ground.bottom - 4}V${level + 5}M${to} ${frame.ground.bottom - 4}V${level + 5}`}
        className="lq"
      />
      <text x={(from + to) / 2} y={level + 16} textAnchor="middle">
        {words}
      </text>
    </g>
  );
};

import { figure, type System, said, unitOf } from "../wording/figures.ts";
import { strandName } from "../wording/parts.ts";
import { overlap, type Quad, turnedBox } from "./clear.ts";
import type { Frame } from "./frame.ts";
import { lensMiddle } from "./lens.tsx";
import type { Scene, SceneAnchor } from "./scene.ts";

interface Props {
  readonly scene: Scene;
  readonly frame: Frame;
  readonly system: System;
}

/**
 * Tension at the anchor of one guy under the drawn wind, of two on a torque arm the tauter; levels and anchors are
 * numbered from 1 in a response.
 */
export const guyForce = (scene: Scene, level: number, anchor: number): number | undefined => {
  const pulls = (scene.load?.guys ?? [])
    .filter((guy) => guy.level === level + 1 && guy.anchor === anchor)
    .map((guy) => guy.tensionAnchor);
  return pulls.length > 0 ? Math.max(...pulls) : undefined;
};

/** Where the guys of an anchor meet a level, along the wind from the axis, m: its tips, 60 degrees to either side. */
const headsOf = (arm: number, anchor: SceneAnchor): readonly number[] => {
  if (arm === 0) return [0];
  const toward = Math.atan2(anchor.across, anchor.along);
  return [-1, 1].map((side) => arm * Math.cos(toward + (side * Math.PI) / 3));
};

/** The frame of a torque arm, as wide as its tips are seen apart. */
const Arm = ({ scene, frame, level }: { scene: Scene; frame: Frame; level: number }) => {
  const { arm, height } = scene.levels[level];
  const tips = arm === 0 ? [] : scene.anchors.flatMap((anchor) => headsOf(arm, anchor));
  if (tips.length === 0) return null;
  const [from, to] = [Math.min(...tips), Math.max(...tips)];
  return <path d={`M${frame.x(from)} ${frame.y(height)}H${frame.x(to)}`} className="l4" />;
};

const initial = (scene: Scene, level: number): number | undefined => {
  const strand = scene.levels[level]?.strand;
  const { guys } = scene.design;
  return strand && guys ? strand.breakingStrength * (guys.levels[level].tension ?? guys.tension) : undefined;
};

export const Guys = ({ scene, frame, system }: Props) => {
  const { x, y } = frame;
  const windward = scene.anchors.reduce<SceneAnchor | null>(
    (a, b) => (a && a.along <= b.along ? a : b),
    null,
  );
  const leeward = scene.anchors.reduce<SceneAnchor | null>((a, b) => (a && a.along >= b.along ? a : b), null);
  const shares = windward ? wordShares(scene, frame, windward) : [];
  return (
    <g>
      {scene.levels.map(({ height, arm }, level) =>
        scene.anchors.flatMap((anchor) =>
          headsOf(arm, anchor).map((head, side) => (
            <GuyLine
              key={`${height}/${anchor.number}/${side === 0 ? "right" : "left"}`}
              {...{ scene, frame, level, anchor, head }}
            />
          )),
        ),
      )}
      {scene.levels.map(({ height }, level) => (
        <Arm key={height} {...{ scene, frame, level }} />
      ))}
      {scene.levels.map(({ height, strand }, level) => {
        if (!windward) return null;
        const force = guyForce(scene, level, windward.number);
        if (force === undefined) return null;
        const started = initial(scene, level);
        const length = Math.hypot(height - windward.elevation, windward.radius);
        const [ax, ay, bx, by] = [x(windward.along), y(windward.elevation), x(0), y(height)];
        return (
          <Along key={height} from={[ax, ay]} to={[bx, by]} share={shares[level]}>
            <text y={-6} textAnchor="middle" className="halo">
              {`${said(force, "force", system)}${
                started !== undefined && !frame.narrow
                  ? `, starts at ${figure(started, "force", system)}`
                  : ""
              }`}
            </text>
            {!frame.narrow && strand && (
              <text y={15} textAnchor="middle" className="s halo">
                {`${strandName(strand, system)}, ${said(length, "length", system)}`}
              </text>
            )}
          </Along>
        );
      })}
      {!frame.narrow && leeward && leeward !== windward && (
        <LeewardWords scene={scene} frame={frame} system={system} anchor={leeward} />
      )}
    </g>
  );
};

const LeewardWords = ({ scene, frame, system, anchor }: Props & { anchor: SceneAnchor }) => {
  const level = scene.levels.length - 1;
  const force = guyForce(scene, level, anchor.number);
  const started = initial(scene, level);
  if (force === undefined || anchor.along * frame.scale < 40) return null;
  const slack = started !== undefined && force < started * 0.1 ? ", nearly slack" : "";
  const words = `${said(force, "force", system)}${slack}`;
  const [from, to] = [
    [frame.x(0), frame.y(scene.levels[level].height)],
    [frame.x(anchor.along), frame.y(anchor.elevation)],
  ] as const;
  const share = clearOfLens(scene, frame, from, to, words.length * 6.4);
  return share === undefined ? null : (
    <Along from={from} to={to} share={share}>
      <text y={-9} textAnchor="middle" className="halo">
        {words}
      </text>
    </Along>
  );
};

/** How far along a line there is room for words beside the lens and what is written under it. */
const clearOfLens = (
  scene: Scene,
  frame: Frame,
  [ax, ay]: readonly [number, number],
  [bx, by]: readonly [number, number],
  width: number,
): number | undefined => {
  const lens = lensMiddle(scene, frame);
  const turn = (Math.atan2(by - ay, bx - ax) * 180) / Math.PI;
  const covered = lens && turnedBox(lens[0], lens[1] + 20, 170, 164, 0);
  return [0.66, 0.74, 0.58, 0.82, 0.5, 0.42, 0.34, 0.26].find((share) => {
    const [x, y] = [ax + (bx - ax) * share, ay + (by - ay) * share];
    return !covered || !overlap(covered, turnedBox(x + 8, y - 8, width, 20, turn));
  });
};

const GuyLine = ({
  scene,
  frame,
  level,
  anchor,
  head,
}: {
  scene: Scene;
  frame: Frame;
  level: number;
  anchor: SceneAnchor;
  head: number;
}) => {
  const { x, y } = frame;
  const height = scene.levels[level].height;
  const force = guyForce(scene, level, anchor.number);
  const started = initial(scene, level);
  // A guy that the wind has slackened hangs; how far is drawn for the eye, not to scale.
  const slack = force !== undefined && started !== undefined ? Math.max(0, 1 - force / started) : 0;
  const [ax, ay, bx, by] = [x(head), y(height), x(anchor.along), y(anchor.elevation) - 4];
  const bow = slack * 0.035 * Math.hypot(bx - ax, by - ay);
  const path = `M${ax} ${ay}Q${(ax + bx) / 2 - Math.sign(anchor.along) * bow * 0.4} ${(ay + by) / 2 + bow} ${bx} ${by}`;
  const weight = force !== undefined && started !== undefined && force > started ? 1.5 : 1;
  return <path d={path} className="n" style={{ stroke: "var(--ink)", strokeWidth: weight }} />;
};

/** How far up each guy its words stand, so that they meet neither each other nor those of the level above. */
const wordShares = (scene: Scene, { x, y, narrow }: Frame, anchor: SceneAnchor): readonly number[] => {
  const [ax, ay] = [x(anchor.along), y(anchor.elevation)];
  const [width, height] = narrow ? [54, 17] : [136, 38];
  const boxes: Quad[] = [];
  const shares = [...scene.levels.keys()].map(() => 0.42);
  for (const level of [...scene.levels.keys()].reverse()) {
    const [bx, by] = [x(0), y(scene.levels[level].height)];
    const turn = (Math.atan2(by - ay, bx - ax) * 180) / Math.PI;
    const boxAt = (share: number): Quad => {
      // words lie a little above the line, a second row of them below it
      const off = narrow ? 11 : 1;
      const normal = (turn * Math.PI) / 180 - Math.PI / 2;
      return turnedBox(
        ax + (bx - ax) * share + off * Math.cos(normal),
        ay + (by - ay) * share + off * Math.sin(normal),
        width,
        height,
        turn,
      );
    };
    const wanted = Array.from({ length: 21 }, (_, i) => 0.42 + (i % 2 ? 1 : -1) * 0.02 * Math.ceil(i / 2));
    const share = wanted.find((one) => boxes.every((box) => !overlap(box, boxAt(one)))) ?? 0.42;
    shares[level] = share;
    boxes.push(boxAt(share));
  }
  return shares;
};

/** A group turned to run along a line, reading left to right. */
export const Along = ({
  from,
  to,
  share,
  children,
}: {
  from: readonly [number, number];
  to: readonly [number, number];
  share: number;
  children: React.ReactNode;
}) => {
  const turn = (Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI;
  const readable = turn > 90 ? turn - 180 : turn < -90 ? turn + 180 : turn;
  const [px, py] = [from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share];
  return <g transform={`translate(${px} ${py}) rotate(${readable})`}>{children}</g>;
};

export const LevelLabels = ({ scene, frame, system, names }: Props & { names: readonly string[] }) => (
  <g>
    {scene.levels.map(({ height }, level) => (
      <text
        key={height}
        x={frame.x(0) + 17}
        y={frame.y(height) + (height > scene.design.height - 1 ? 16 : -4)}
        className="halo"
      >
        {frame.narrow
          ? figure(height, "length", system)
          : `${names[level]} ${figure(height, "length", system)} ${unitOf("length", system)}`}
      </text>
    ))}
  </g>
);

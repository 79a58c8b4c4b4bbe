import { footingAcross, footingReach } from "../../model/footing-size.ts";
import type { System } from "../wording/figures.ts";
import type { Scene } from "./scene.ts";

/** From metres to pixels: one scale both ways, the moment sharing the heights. */
export interface Frame {
  readonly width: number;
  readonly height: number;
  readonly narrow: boolean;
  /** Pixels a metre. */
  readonly scale: number;
  readonly x: (along: number) => number;
  readonly y: (z: number) => number;
  readonly ground: { readonly left: number; readonly right: number; readonly bottom: number };
  readonly windX: number;
  readonly moment: { readonly zero: number; readonly width: number; readonly right: number };
  readonly levels: readonly number[];
}

const gridStep = (height: number, system: System, narrow: boolean): number => {
  const foot = 0.3048;
  const steps = system === "us" ? [5, 10, 20, 50].map((feet) => feet * foot) : [1, 2, 5, 10, 20];
  const most = narrow ? 4.5 : 9;
  return steps.find((step) => height / step <= most) ?? steps.at(-1)!;
};

const depthOf = (scene: Scene): number => {
  const { footing, guys } = scene.design;
  const anchor = guys && "depth" in guys.anchor ? guys.anchor.depth : (scene.anchors[0]?.depth ?? 0);
  // where the ground falls away an anchor reaches deeper under the base
  const lowest = Math.max(0, ...scene.anchors.map(({ elevation, head }) => head - elevation));
  return Math.max(footingReach(footing), anchor + lowest, scene.frostDepth);
};

/** Room on both sides of the mast that guys, antennas and footing need, m. */
const reach = (scene: Scene): { left: number; right: number } => {
  const alongs = scene.anchors.map((anchor) => anchor.along);
  const arms = scene.items.map((item) => item.beside + Math.max(item.antenna?.boom ?? 0, 1) / 2);
  const half = Math.max(1, ...arms, footingAcross(scene.design.footing) / 2);
  return { left: Math.max(half, ...alongs.map((v) => -v)), right: Math.max(half, ...alongs) };
};

export const frameOf = (scene: Scene, width: number, system: System): Frame => {
  const narrow = width < 520;
  const axis = narrow ? 26 : 34;
  const momentRoom = narrow ? 92 : Math.min(200, width * 0.26);
  const { left, right } = reach(scene);
  const zoneLeft = axis + (narrow ? 18 : 30);
  const zoneRight = width - momentRoom - (narrow ? 14 : 40);
  const top = narrow ? 26 : 46;
  const target = narrow ? 380 : 740;
  const tall = scene.pipeTop + 0.4;
  const scale = Math.min(target / tall, (zoneRight - zoneLeft) / (left + right));
  const slack = Math.max(0, zoneRight - zoneLeft - (left + right) * scale);
  const mastX = zoneLeft + left * scale + slack / 2;
  // A wide star on a low mast would leave little paper for words: keep some sky.
  const skyline = Math.max(tall * scale, narrow ? 150 : 240);
  const groundY = top + skyline;
  const bottom = groundY + Math.max(depthOf(scene) * scale + 24, narrow ? 44 : 64);
  const step = gridStep(scene.design.height, system, narrow);
  const levels: number[] = [];
  for (let z = step; z <= scene.design.height + 1e-6; z += step) levels.push(z);
  return {
    width,
    height: bottom + (narrow ? 34 : 44),
    narrow,
    scale,
    x: (along) => mastX + along * scale,
    y: (z) => groundY - z * scale,
    ground: { left: axis, right: zoneRight + (narrow ? 8 : 14), bottom },
    windX: axis + 8,
    moment: {
      zero: width - momentRoom + (narrow ? 12 : 34),
      width: momentRoom - (narrow ? 16 : 62),
      right: width,
    },
    levels,
  };
};

/** A round enlargement that makes the greatest sway readable, never less than true. */
export const exaggeration = (greatest: number, scale: number, wanted = 50): number => {
  if (greatest <= 0) return 1;
  const factor = wanted / (greatest * scale);
  return [100, 50, 20, 10, 5, 2].find((round) => round <= factor) ?? 1;
};

export const line = (points: readonly (readonly [number, number])[]): string =>
  points.map(([x, y], i) => `${i ? "L" : "M"}${x.toFixed(2)} ${y.toFixed(2)}`).join("");

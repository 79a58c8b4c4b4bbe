import type { Mast } from "../../physics/mast/solver.ts";

/** Arms as bars so stiff that they do not give: side, m, and modulus, Pa. */
const SIDE = 0.1;
const MODULUS = 2e13;
const FIRST = 9100;

export const number = (value: number): string =>
  Object.is(value, -0) || value === 0 ? "0." : value.toExponential(8);

/** Where two guys meet: node of the deck, level, and place from the mast's axis, m. */
export interface ArmTip {
  readonly node: number;
  readonly level: number;
  readonly x: number;
  readonly y: number;
}

export function armTips(mast: Mast): ArmTip[] {
  const tips: ArmTip[] = [];
  for (const { level, headX: x, headY: y } of mast.guys)
    if (x !== 0 || y !== 0)
      if (!tips.some((tip) => tip.level === level && Math.hypot(tip.x - x, tip.y - y) < 1e-9))
        tips.push({ node: FIRST + tips.length, level, x, y });
  return tips;
}

/** Each tip and the bar that carries it. @param at node of the mast at a level, and its height as drawn */
export function armLines(
  tips: readonly ArmTip[],
  at: (level: number) => { readonly node: number; readonly height: number },
): string[] {
  if (tips.length === 0) return [];
  return [
    "*NODE,NSET=NMAST",
    ...tips.map(({ node, level, x, y }) => `${node},${number(x)},${number(y)},${number(at(level).height)}`),
    "*MATERIAL,NAME=ARM",
    "*ELASTIC",
    `${number(MODULUS)},0.`,
    ...tips.flatMap(({ node, level, x, y }) => [
      `*ELEMENT,TYPE=B31,ELSET=ARM${node}`,
      `${node},${at(level).node},${node}`,
      `*BEAM SECTION,ELSET=ARM${node},MATERIAL=ARM,SECTION=RECT`,
      `${number(SIDE)},${number(SIDE)}`,
      `${number(-y)},${number(x)},0.`,
    ]),
  ];
}

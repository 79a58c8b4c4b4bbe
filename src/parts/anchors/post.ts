import type { AnchorRow } from "../../model/catalog.ts";
import { anchorPostCapacity, postOverturning } from "../../physics/ground/anchor-post.ts";
import { blockTakeOff } from "../../physics/ground/block.ts";
import { postRefusal, postStrength } from "../../physics/steel/post.ts";
import { pricesOf } from "../price.ts";
import { sizesOf } from "../sizes.ts";
import { type AnchorPart, type AnchorReaction, type Ground, used } from "../types.ts";
import { largest } from "./deadman.ts";

type Row = Extract<AnchorRow, { kind: "post" }>;

const up = (r: AnchorReaction) => Math.max(r.uplift, 0);
const side = (r: AnchorReaction) => Math.max(r.lateral, 0);

/** A steel post out of a concrete block, the guys above grade: bending of the post, and the block that holds it. */
export function post(row: Row, choice: { width: number; depth: number }, ground: Ground): AnchorPart {
  const { rules } = ground;
  const geometry = { ...choice, height: row.height };
  const held = anchorPostCapacity(geometry, ground.soil, ground.givens);
  const refused = postRefusal(row.section, row.yield, row.height);
  const steel = refused === null ? postStrength(row.section, row.yield, row.height) : null;
  // lateral bearing of a code's table already holds its safety; an ultimate value does not
  const lateralRule = ground.soil.values === "allowable" ? rules.bearing : rules.anchorLateral;
  const moment = (r: AnchorReaction) => postOverturning(geometry, up(r), side(r));
  /** AISC 360-16 H1.1: the larger of its two lines is the one that governs. */
  const bent = (r: AnchorReaction) => {
    if (!steel) return up(r) + side(r);
    const pull = up(r) / steel.tension;
    const bend = (side(r) * row.height) / steel.moment;
    return Math.max(pull + (8 / 9) * bend, pull / 2 + bend);
  };
  const states = [
    {
      limitState: "anchor-post",
      demand: bent,
      capacity: steel ? 1 : 0,
      rule: rules.anchorPost,
      note: refused ?? "pull and bending at the top of the block together, AISC 360-16 H1",
    },
    { limitState: "anchor-post-shear", demand: side, capacity: steel?.shear ?? 0, rule: rules.anchorPost },
    {
      limitState: "anchor-uplift",
      demand: up,
      capacity: held.uplift,
      rule: rules.uplift,
      note: "held by its weight and the shear of the soil on its sides",
    },
    {
      limitState: "anchor-lateral",
      demand: side,
      capacity: held.lateral,
      rule: lateralRule,
      note: "as a post free at grade, IBC 1807.3.2.1, pulled at the height of the guys",
    },
    {
      limitState: "anchor-overturning",
      demand: moment,
      capacity: held.overturning,
      rule: rules.overturning,
      note: "about the toe on the mast's side: pull above grade and uplift against weight and soil",
    },
  ];
  const use = (r: AnchorReaction) => {
    let most = 0;
    for (const { demand, capacity, rule } of states)
      most = Math.max(most, used(demand(r), capacity, rule.required));
    return most;
  };
  const takeOff = blockTakeOff(choice);
  const extras = [
    {
      item: `${row.name}: post`,
      price: row.post,
      quantity: row.height + choice.depth,
      unit: "m" as const,
    },
    { item: `${row.name}: foot plate and shackles`, price: row.price, quantity: 1, unit: "each" as const },
  ];
  return {
    choice: { kind: "post", row: row.id, ...choice },
    takeOff,
    extras,
    depth: choice.depth,
    head: row.height,
    spread: choice.width,
    ...pricesOf({ takeOff, extras }, ground),
    floor: (uplift, lateral) => use({ uplift, lateral }),
    worst(reactions) {
      let most = 0;
      for (const r of reactions) most = Math.max(most, use(r));
      return most;
    },
    measures: (reactions) =>
      states.map(({ limitState, demand, capacity, rule, note }) => {
        const of = largest(reactions, demand);
        return { limitState, demand: demand(reactions[of]), capacity, ...rule, of, note };
      }),
  };
}

export const postChoices = (row: Row) =>
  sizesOf(row.width).flatMap((width) => sizesOf(row.depth).map((depth) => ({ width, depth })));

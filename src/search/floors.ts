import type { Problem, SectionModel, StackModel } from "../problem/types.ts";

/**
 * What all floors have in common. Each floor is a utilisation that no completion of a partial design can stay below;
 * it has its argument in docs/theory/search.md and a test against thousands of analysed structures. They assume that
 * the lean check passes: a design that leans more fails anyway, so the drift that they allow for is bounded by it.
 */

/** Integrals of the floors and of the solver agree to far better than this; floors give it away. */
export const SLACK = 0.999;

/** Heights nearer than this are one. */
export const TOUCH = 1e-6;

/** Slope that the lean check allows: no node drifts further than this times its height. */
export const leanOf = (problem: Problem): number => Math.tan((problem.rules.tilt.most * Math.PI) / 180);

/** Sections that meet at a height: one, or two at a joint. */
export const sectionsTouching = (stack: StackModel, z: number): SectionModel[] =>
  sectionsBetween(stack, z - TOUCH, z + TOUCH);

export function sectionsBetween(stack: StackModel, from: number, to: number): SectionModel[] {
  const found: SectionModel[] = [];
  let low = 0;
  for (const { section, length } of stack.parts) {
    if (low < to && low + length > from) found.push(section);
    low += length;
  }
  return found;
}

/** The foot of each part of a stack: where rigging presses hardest. */
export function partFeet(stack: StackModel): { z: number; section: SectionModel }[] {
  let low = 0;
  return stack.parts.map(({ section, length }) => {
    const foot = { z: low, section };
    low += length;
    return foot;
  });
}

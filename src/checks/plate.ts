import type { StackModel } from "../problem/types.ts";

/** Side of the base plate, m: the section's outside and two inches all round (common practice, no source). */
export const plateSide = (stack: StackModel): number => stack.parts[0].section.lattice.outerWidth + 0.1016;

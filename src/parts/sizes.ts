import { axisValues } from "../model/axis.ts";

/** Values of a size in a catalog row: one, a list or a range. */
export const sizesOf = axisValues;

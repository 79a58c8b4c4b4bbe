// contract: implemented by the quantity helper
import { z } from "zod";
export type Dimension = "length";
export declare function dimensioned(dimension: string, limits?: { min?: number; above?: number; max?: number }): z.ZodType<number, string | number>;
export declare function priced(per: string): z.ZodType<number, string | number>;

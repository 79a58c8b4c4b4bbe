import type { z } from "zod";

/** A refusal as data: `found` is looked up in the input by path where it is left out. */
export const refuse = (
  context: z.core.$RefinementCtx<unknown>,
  path: (string | number)[],
  expected: string,
  found?: string,
): void => {
  context.addIssue({
    code: "custom",
    path,
    message: `${found === undefined ? "" : `found ${found}, `}expected ${expected}`,
    params: { expected, ...(found === undefined ? {} : { found }) },
  });
};

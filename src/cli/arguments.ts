import { parseArgs } from "node:util";
import { shortCaution } from "../report/caution.ts";

/** Bad input at the command line: said in words, exit 2. */
export class UsageError extends Error {}

export interface Arguments {
  readonly command: string;
  readonly files: readonly string[];
  readonly json: boolean;
  readonly workers: number;
  readonly timeLimit: number;
  readonly exhaustive: boolean;
  readonly audit: boolean;
  readonly map: string | undefined;
  readonly out: string | undefined;
}

export const usage = `mastwright COMMAND ... [--json]

  find STUDY.json             the cheapest safe design, with its proof
       --workers N  --time-limit S  --exhaustive  --audit
  front STUDY.json            cost against concrete against margin: every design that none beats
       --map height,antennaArea   instead: the cheapest safe cost at each height and antenna area
       --workers N  --time-limit S
  verify STUDY.json DESIGN.json   the verdict on a design; exit 1 where a check fails
  rules STUDY.json DESIGN.json    the same design under every rule set: use, factor and clause of each check
  compare STUDY.json [DESIGN.json ...] STUDY.json ...   side by side, difference by difference against the first;
                              a study without a design is answered first
       --workers N  --time-limit S
  reliability STUDY.json DESIGN.json   where the study says what is uncertain: the probability that a check is missed
  sheets STUDY.json DESIGN.json --out DIR   what the crew needs, five pages and a PDF; none for a design that fails
  reference CASE.json ...     outside cases on our own functions, with the differences
  schema                      JSON Schemas of study, design and catalog

Exit: 0 done; 1 nothing safe, or a check fails; 2 bad input.
${shortCaution}`;

/** @throws UsageError naming what was found and what was expected */
export function readArguments(argv: readonly string[], cores: number): Arguments {
  let parsed: ReturnType<typeof parse>;
  try {
    parsed = parse(argv);
  } catch (error) {
    throw new UsageError(`${(error as Error).message}\n\n${usage}`);
  }
  const { values, positionals } = parsed;
  const [command = "help", ...files] = values.help ? ["help"] : positionals;
  return {
    command,
    files,
    json: values.json ?? false,
    workers: number("--workers", values.workers, cores, 1, 64, true),
    timeLimit: number("--time-limit", values["time-limit"], Number.POSITIVE_INFINITY, 0, 1e7, false),
    exhaustive: values.exhaustive ?? false,
    audit: values.audit ?? false,
    map: values.map,
    out: values.out,
  };
}

const parse = (argv: readonly string[]) =>
  parseArgs({
    args: [...argv],
    allowPositionals: true,
    options: {
      json: { type: "boolean" },
      help: { type: "boolean", short: "h" },
      workers: { type: "string" },
      "time-limit": { type: "string" },
      exhaustive: { type: "boolean" },
      audit: { type: "boolean" },
      map: { type: "string" },
      out: { type: "string" },
    },
  });

function number(
  name: string,
  text: string | undefined,
  otherwise: number,
  least: number,
  most: number,
  whole: boolean,
): number {
  if (text === undefined) return otherwise;
  const value = Number(text);
  if (text.trim() === "" || !(value >= least && value <= most) || (whole && !Number.isInteger(value)))
    throw new UsageError(
      `${name}: found "${text}", expected a ${whole ? "whole " : ""}number from ${least} to ${most}`,
    );
  return value;
}

import { createThreads } from "../../workers/node-client.ts";
import type { Job, SearchClient } from "../../workers/protocol.ts";
import { reliability } from "../checks/reliability.ts";
import { underRuleSets } from "../checks/under-rule-sets.ts";
import { verify } from "../checks/verify.ts";
import { defaultCatalog } from "../model/default-catalog.ts";
import { jsonSchemas } from "../model/json-schema.ts";
import { parseCatalog } from "../model/parse.ts";
import { compile } from "../problem/compile.ts";
import { percent } from "../report/names.ts";
import { differences } from "../report/reference/difference.ts";
import { runCase } from "../report/reference/run-case.ts";
import { audit } from "../search/audit.ts";
import { enumerate } from "../search/exhaustive.ts";
import { whyNotCheaper } from "../search/explain.ts";
import { hasAllMargin } from "../search/front-points.ts";
import { Grid } from "../search/grid.ts";
import { leastOfAim, litres, objectiveOf } from "../search/ground.ts";
import { packageArea } from "../search/map.ts";
import { judgedOf } from "../search/outcome.ts";
import type { Judged, Outcome, Rejected } from "../search/types.ts";
import { type Arguments, UsageError } from "./arguments.ts";
import { type OpenStudy, openDesign, openStudy, readText } from "./files.ts";
import { reliabilityText } from "./reliability-text.ts";
import { cautionText, outcomeText, ruleSetsText, verdictText } from "./text.ts";

/** What a command has to say: text for people or data for programs, and how it ends. */
export interface Said {
  readonly text: string;
  readonly data: unknown;
  readonly exit: 0 | 1;
}

const judgedData = (judged: Judged | null) =>
  judged && {
    design: judged.design,
    verdict: {
      passes: judged.verdict.passes,
      smallestMargin: judged.verdict.smallestMargin,
      checks: judged.verdict.checks,
    },
    bill: judged.verdict.bill,
    concreteVolume: judged.verdict.concreteVolume,
    dugVolume: judged.verdict.dugVolume,
    assumptions: judged.verdict.assumptions,
  };

const nothing = { design: null, verdict: null, bill: null, concreteVolume: null };

export function outcomeData(outcome: Outcome, whyNotCheaper: readonly Rejected[]) {
  const { proof } = outcome;
  switch (outcome.status) {
    case "proven":
      return {
        status: outcome.status,
        ...judgedData(outcome.best),
        proof,
        whyNotCheaper,
      };
    case "stopped":
      return { status: outcome.status, ...nothing, ...judgedData(outcome.best), proof, whyNotCheaper };
    case "none-safe":
      return {
        status: outcome.status,
        ...nothing,
        nearest: judgedData(outcome.nearest),
        proof,
        whyNotCheaper,
      };
  }
}

export async function find(args: Arguments): Promise<Said> {
  const open = openStudy(args.files[0]);
  const { outcome, whyNot } = args.exhaustive ? enumerated(open) : await withThreads(open, args, explained);
  const audited = args.audit && outcome.status !== "stopped" ? auditOf(open, outcome) : null;
  const said = audited
    ? `\nAudit: ${audited.verified} cheaper designs looked at again, all fail; the answer holds on ${audited.elementsPerSpan} elements a span.`
    : "";
  return {
    text: `${outcomeText(outcome, open, whyNot)}${said}\n\n${cautionText}`,
    data: { ...outcomeData(outcome, whyNot), ...(audited && { audit: audited }) },
    exit: outcome.status === "none-safe" || (outcome.status === "stopped" && !outcome.best) ? 1 : 0,
  };
}

/** Designs that the audit asks about. */
const AUDIT_SAMPLE = 2000;

/** @throws SearchDefect where the search was wrong: loudly, with the design that shows it */
function auditOf({ study, catalog }: OpenStudy, outcome: Outcome) {
  const problem = compile(study, catalog);
  const best = outcome.status === "proven" ? outcome.best : null;
  return audit(
    problem,
    best && {
      design: best.design,
      objective: objectiveOf(problem)({
        cents: Math.round(best.verdict.bill.total * 100),
        concrete: litres(best.verdict.concreteVolume),
        dug: litres(best.verdict.dugVolume),
      }),
    },
    AUDIT_SAMPLE,
  );
}

/** An outcome, and the designs that show why nothing cheaper is safe. */
interface Explained {
  readonly outcome: Outcome;
  readonly whyNot: readonly Rejected[];
}

export const searched = (open: OpenStudy, args: Arguments): Promise<Outcome> =>
  withThreads(open, args, (pool, job) => pool.find(job, () => {}));

async function explained(pool: SearchClient, job: Job): Promise<Explained> {
  const outcome = await pool.find(job, () => {});
  // nobody else asks these workers
  return { outcome, whyNot: (outcome.status === "proven" && (await pool.whyNot())) || [] };
}

async function withThreads<T>(
  { file }: OpenStudy,
  { workers, timeLimit }: Arguments,
  ask: (pool: SearchClient, job: Job) => Promise<T>,
): Promise<T> {
  const pool = createThreads(workers);
  try {
    if (timeLimit < Number.POSITIVE_INFINITY) setTimeout(() => pool.stop(), timeLimit * 1000).unref();
    return await ask(pool, { study: file, catalog: defaultCatalog });
  } finally {
    pool.dispose();
  }
}

/** Every design through `verify`, none passed over: for grids small enough. */
function enumerated({ study, catalog }: OpenStudy): Explained {
  const problem = compile(study, catalog);
  const started = performance.now();
  let result: ReturnType<typeof enumerate>;
  try {
    result = enumerate(problem);
  } catch (error) {
    if (error instanceof RangeError) throw new UsageError(`--exhaustive: ${error.message}`);
    throw error;
  }
  const best = judgedOf(problem, result.best);
  const { designs, structures } = new Grid(problem).total();
  const bound = best
    ? {
        cost: best.verdict.bill.total,
        concrete: best.verdict.concreteVolume,
        digging: best.verdict.dugVolume,
      }[leastOfAim(study.aim)]
    : Number.POSITIVE_INFINITY;
  const proof = {
    gridSize: designs,
    decided: result.designs,
    structures,
    analysed: result.designs,
    pruned: {},
    bound,
    gap: best ? 0 : Number.POSITIVE_INFINITY,
    seconds: (performance.now() - started) / 1000,
    workers: 1,
  };
  return best
    ? { outcome: { status: "proven", best, proof }, whyNot: [...whyNotCheaper(problem, best)] }
    : { outcome: { status: "none-safe", nearest: null, proof }, whyNot: [] };
}

export async function front(args: Arguments): Promise<Said> {
  const open = openStudy(args.files[0]);
  if (args.map !== undefined) {
    if (args.map !== "height,antennaArea")
      throw new UsageError(`--map: found "${args.map}", expected height,antennaArea`);
    const map = await withThreads(open, args, (pool, job) => pool.map(job, mapAxes(open), () => {}));
    const text = map.cells
      .map(
        (c) =>
          `${c.height.toFixed(2)} m  ${c.area.toFixed(2)} m2  ${c.cost === null ? `nothing safe: ${c.stoppedBy}` : `$${c.cost.toFixed(2)}`}`,
      )
      .join("\n");
    return { text, data: map, exit: 0 };
  }
  const found = await withThreads(open, args, (pool, job) => pool.front(job, () => {}));
  const text = found.points
    .map(
      (p) =>
        `$${p.cost.toFixed(2)}  ${p.concrete.toFixed(3)} m3  margin ${percent(p.margin)} %${hasAllMargin(p.margin) ? " or more" : ""}`,
    )
    .join("\n");
  return {
    text: `${found.status === "proven" ? "exact" : "stopped: not all is proven"}: ${found.points.length} designs that none beats\n${text}`,
    data: found,
    exit: found.points.length === 0 ? 1 : 0,
  };
}

/** Heights and areas about the wish. */
function mapAxes({ study, catalog }: OpenStudy) {
  const problem = compile(study, catalog);
  const height = problem.heights[problem.heights.length - 1];
  const area = Math.max(...problem.packages.map(packageArea));
  // whole joints of the shortest piece keep every height buildable
  const step = Math.min(
    ...catalog.sections.flatMap((section) => section.pieces.map((piece) => piece.length)),
  );
  const heights = [-4, -2, -1, 0, 1, 2, 4, 6].map((k) => height + 2 * k * step).filter((h) => h > 3 * step);
  const areas = [0.4, 0.6, 0.8, 1, 1.25, 1.5, 2].map((share) => share * area);
  return { heights, areas };
}

export function verifyCommand(args: Arguments): Said {
  const open = openStudy(args.files[0]);
  const design = openDesign(args.files[1], open);
  const verdict = verify(compile(open.study, open.catalog), design);
  return { text: `${verdictText(verdict)}\n\n${cautionText}`, data: verdict, exit: verdict.passes ? 0 : 1 };
}

/** Exit 1 where the study's own rule set does not pass the design. */
export function rulesCommand(args: Arguments): Said {
  const open = openStudy(args.files[0]);
  const design = openDesign(args.files[1], open);
  const columns = underRuleSets(open.study, open.catalog, design);
  const own = columns.find((column) => column.own);
  return {
    text: `${ruleSetsText(columns)}\n\n${cautionText}`,
    data: columns,
    exit: own?.status === "judged" && own.passes ? 0 : 1,
  };
}

/** Exit 1 where the design does not pass its study as stated: then its probability is of no use. */
export function reliabilityCommand(args: Arguments): Said {
  const open = openStudy(args.files[0]);
  const design = openDesign(args.files[1], open);
  try {
    const found = reliability(open.study, open.catalog, design);
    const { passes } = verify(compile(open.study, open.catalog), design);
    const failing = passes ? "" : "The design fails its study as stated: don't build this.\n";
    return {
      text: `${failing}${reliabilityText(found)}\n\n${cautionText}`,
      data: { passes, ...found },
      exit: passes ? 0 : 1,
    };
  } catch (error) {
    if (error instanceof RangeError) throw new UsageError(`${args.files[0]}: ${error.message}`);
    throw error;
  }
}

export function reference(args: Arguments): Said {
  if (args.files.length === 0) throw new UsageError("expected one or more reference case files");
  const cases = args.files.flatMap((path) => {
    let value: unknown;
    try {
      value = JSON.parse(readText(path, "a reference case file"));
    } catch (error) {
      if (error instanceof UsageError) throw error;
      throw new UsageError(
        `${path}: ${(error as Error).message}; expected a reference case, or an array of them, as JSON`,
      );
    }
    return Array.isArray(value) ? value : [value];
  });
  const read = parseCatalog(defaultCatalog);
  if (!read.ok) throw new Error("the catalog that comes with the program does not parse");
  const results = cases.map((value) => runCase(value, { catalog: read.catalog }));
  const lines = cases.flatMap((value, i) => {
    const result = results[i];
    if ("error" in result) return [`${result.id}  ${result.kind}  refused: ${result.error}`];
    return differences(value, result).map(
      ({ group, largest, at, count }) =>
        `${result.id.padEnd(22)} ${group.padEnd(22)} ${largest.toExponential(1)}  largest of ${count}, at ${at}`,
    );
  });
  return { text: lines.join("\n"), data: results, exit: 0 };
}

export const schema = (): Said => {
  const data = jsonSchemas();
  return { text: JSON.stringify(data, null, 2), data, exit: 0 };
};

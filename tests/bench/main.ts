import { availableParallelism } from "node:os";
import { verify } from "../../src/checks/verify.ts";
import { defaultCatalog } from "../../src/model/default-catalog.ts";
import { startingStudies } from "../../src/model/starting-studies.ts";
import { Mast } from "../../src/physics/mast/solver.ts";
import { enumerate } from "../../src/search/exhaustive.ts";
import { Grid } from "../../src/search/grid.ts";
import { Search } from "../../src/search/search.ts";
import { createThreads } from "../../workers/node-client.ts";
import { benchMast } from "../reference/calculix/masts.ts";
import { PACKAGE } from "../reference/calculix/run-calculix.ts";
import { timeCalculix } from "../reference/calculix/time-calculix.ts";
import { frontOfDemo } from "./front.ts";
import { mapOfDemo } from "./map.ts";
import { HEAP, memoryOf } from "./memory.ts";
import { optimise, optimisers } from "./optimisers.ts";
import { randomStudies } from "./random-studies.ts";
import { type BenchStudy, enumerable, forWorkers, grids, problemOf } from "./studies.ts";
import { judgeThreeLevels } from "./three-levels.ts";
import { whatIf } from "./what-if.ts";

// Ratios side by side in one run, for people to read: nothing is asserted, for a busy machine is no defect.

/** A search that takes longer is stopped and said to be, ms. */
const PATIENCE = 45_000;
/** Studies drawn, and how long each may take, ms. */
const STUDIES = 32;
const SEED = 7;
const STUDY_PATIENCE = 15_000;
/** Of these as many are given to other optimisers as were proven within this, ms; they have ten times as long, or this. */
const FOR_OTHERS = 12;
const LONGEST_FOR_OTHERS = 1500;
const LEAST_FOR_OTHERS = 1000;

const seconds = (work: () => void): number => {
  const started = performance.now();
  work();
  return (performance.now() - started) / 1000;
};
const rounded = (value: number, digits = 3) => Number(value.toPrecision(digits));
const size = (value: number) => (value < 1e5 ? String(value) : value.toExponential(1).replace("e+", "e"));

const run = (search: Search): Search => {
  while (!search.step(1000)) {}
  return search;
};

function againstEnumeration() {
  return enumerable.map(({ name, file }) => {
    const problem = problemOf(file);
    let every: ReturnType<typeof enumerate> | undefined;
    const whole = seconds(() => {
      every = enumerate(problem);
    });
    let search = new Search(problem);
    const exact = seconds(() => {
      search = run(new Search(problem));
    });
    return {
      grid: name,
      designs: every?.designs,
      "enumerated, s": rounded(whole),
      "searched, s": rounded(exact),
      ratio: rounded(whole / exact),
      structures: new Grid(problem).total().structures,
      analysed: search.analysed,
      cost: every?.best ? every.best.cents / 100 : "none safe",
      "same answer": search.best?.key === every?.best?.key,
    };
  });
}

/** One search to its proof, or until patience ends, ms. */
function proven({ name, file }: BenchStudy, patience: number) {
  const problem = problemOf(file);
  const { designs, structures } = new Grid(problem).total();
  const started = performance.now();
  const search = new Search(problem);
  let first = Number.NaN;
  while (!search.step(1) && performance.now() - started < patience)
    if (Number.isNaN(first) && search.best) first = performance.now() - started;
  const taken = performance.now() - started;
  if (Number.isNaN(first) && search.best) first = taken;
  const row = {
    study: name,
    aim: problem.study.aim,
    designs: size(designs),
    structures: size(structures),
    bounded: search.bounded,
    analysed: search.analysed,
    "first safe, ms": search.best ? Math.round(first) : "none safe",
    "proven, ms": search.finished ? Math.round(taken) : `not within ${patience}`,
    cost: search.best ? search.best.cents / 100 : "",
  };
  return { row, problem, search, taken };
}

const growingGrids = () => grids.map((grid) => proven(grid, PATIENCE).row);

/** The whole grids and the hardest, this with two workers as well, and the drawn study with most masts. */
function greatestMemory(drawn: ReturnType<typeof drawnStudies>["rows"]) {
  const most = drawn.reduce((a, b) => (b.analysed > a.analysed ? b : a));
  const greatest = grids.map(({ name }) => name).filter((name) => /whole|hardest/.test(name));
  const alone = [...greatest, most.study].map((name) => memoryOf(name, 0, STUDIES, SEED));
  return [...alone, memoryOf(greatest[greatest.length - 1], 2, STUDIES, SEED)];
}

/** Cents of a proven answer, and how long it took. */
interface Answer {
  readonly name: string;
  readonly file: BenchStudy["file"];
  readonly cents: number;
  readonly milliseconds: number;
}

function drawnStudies() {
  const answers: Answer[] = [];
  const runs = randomStudies(STUDIES, SEED).map((study) => {
    const run = proven(study, STUDY_PATIENCE);
    const { best, finished } = run.search;
    if (best && finished && run.problem.study.aim === "cost")
      answers.push({ ...study, cents: best.cents, milliseconds: run.taken });
    return {
      row: run.row,
      time: finished ? run.taken : Number.POSITIVE_INFINITY,
      noneSafe: finished && !best,
    };
  });
  const times = runs.map(({ time }) => time).sort((a, b) => a - b);
  const at = (share: number) => {
    const time = times[Math.min(times.length - 1, Math.ceil(share * times.length) - 1)];
    return Number.isFinite(time) ? Math.round(time) : `not within ${STUDY_PATIENCE}`;
  };
  const summary = {
    studies: times.length,
    proven: times.filter(Number.isFinite).length,
    "none safe": runs.filter(({ noneSafe }) => noneSafe).length,
    "median, ms": at(0.5),
    "ninth decile, ms": at(0.9),
    "worst, ms": at(1),
  };
  return { rows: runs.map(({ row }) => row), summary, answers };
}

/** How far above the proven answer, per cent, the middle and the worst of those that found something safe. */
const above = (misses: readonly number[]) => {
  const sorted = [...misses].sort((a, b) => a - b);
  return sorted.length === 0
    ? { "by, median": "", "by, worst": "" }
    : {
        "by, median": `${rounded(sorted[Math.floor(sorted.length / 2)])} %`,
        "by, worst": `${rounded(sorted[sorted.length - 1])} %`,
      };
};

function againstOptimisers(answers: readonly Answer[]) {
  const tried = answers.filter(({ milliseconds }) => milliseconds < LONGEST_FOR_OTHERS).slice(0, FOR_OTHERS);
  return (Object.keys(optimisers) as (keyof typeof optimisers)[]).map((name) => {
    const found = tried.map(({ file, cents, milliseconds }, i) => {
      const time = Math.max(10 * milliseconds, LEAST_FOR_OTHERS);
      return { ...optimise(name, problemOf(file), time, i + 1), answer: cents };
    });
    const safe = found.flatMap((run) => (run.cents === null ? [] : [{ ...run, cents: run.cents }]));
    for (const run of safe)
      if (run.cents < run.answer)
        throw new Error(`${name} found ${run.cents} cents, less than the proven ${run.answer}`);
    const missed = safe.filter(({ cents, answer }) => cents > answer);
    return {
      optimiser: name,
      studies: found.length,
      "found the answer": safe.length - missed.length,
      "found nothing safe": found.length - safe.length,
      missed: missed.length,
      ...above(missed.map(({ cents, answer }) => (100 * (cents - answer)) / answer)),
      "designs verified": found.reduce((sum, { verified }) => sum + verified, 0),
    };
  });
}

function threeLevels() {
  const { designs, cases, analysed, threeWinds, ofThreeWinds, verified } = judgeThreeLevels(400);
  const other = timeCalculix();
  const row = (judged: string, rate: number, cases: number) => ({
    judged,
    designs,
    cases,
    "designs a second on one core": Math.round(rate),
    "times CalculiX": other ? Math.round(rate * cases * other.seconds) : "",
    note: "CalculiX: as many runs as cases, each as long as that of the mast below",
  });
  return [
    row("as the search does: the worst of mast, guys, anchor, base", analysed, cases),
    row("the same, three winds with and without ice", ofThreeWinds, threeWinds),
    row("by verify: all responses, factors, bill and words", verified, cases),
  ];
}

function verdicts() {
  return startingStudies.map(({ id, file }) => {
    const problem = problemOf(file);
    const { best } = run(new Search(problem));
    if (!best) throw new Error(`${id}: nothing safe`);
    let count = 0;
    const taken = seconds(() => {
      const until = performance.now() + 2000;
      for (; performance.now() < until; count++) verify(problem, best.design);
    });
    return {
      study: id,
      "guy levels": best.design.guys?.levels.length ?? 0,
      "verdicts a second on one core": Math.round(count / taken),
    };
  });
}

function analysisAgainstCalculix() {
  const solve = () => {
    const mast = new Mast(benchMast.input);
    mast.solve(benchMast.load);
  };
  for (let i = 0; i < 50; i++) solve();
  const count = 500;
  const own = seconds(() => {
    for (let i = 0; i < count; i++) solve();
  });
  const other = timeCalculix();
  return [
    {
      analysis: "24 m mast, two guy levels, one wind",
      "here, ms": rounded((1000 * own) / count),
      "CalculiX, ms": other
        ? rounded(1000 * other.seconds)
        : `not there: install the Debian package ${PACKAGE}`,
      ratio: other ? Math.round((other.seconds * count) / own) : "",
      note: "CalculiX is a general program started anew, with a finer mesh",
    },
  ];
}

/**
 * Each time on new workers, warmed by another wind: those that have answered a study before remember its masts. One
 * worker and two in turn, for a machine that slows down meanwhile.
 */
async function workers() {
  const { file } = forWorkers;
  const wind = { ...file.site.wind, speed: "70 mph" } as typeof file.site.wind;
  const calm = { study: { ...file, site: { ...file.site, wind } }, catalog: defaultCatalog };
  const fastest = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  for (let i = 0; i < 3; i++)
    for (const count of [1, 2]) {
      const pool = createThreads(count);
      try {
        await pool.find(calm, () => {});
        const { proof } = await pool.find({ study: file, catalog: defaultCatalog }, () => {});
        fastest[count - 1] = Math.min(fastest[count - 1], proof.seconds);
      } finally {
        pool.dispose();
      }
    }
  return fastest.map((time, i) => ({
    grid: forWorkers.name,
    workers: i + 1,
    "fastest of three, s": rounded(time),
    "times one worker": rounded(fastest[0] / time),
  }));
}

const show = (title: string, rows: readonly object[]) => {
  console.log(`\n${title}`);
  console.table(rows);
};

console.log(
  `node ${process.version}, ${availableParallelism()} cores; times depend on what else the machine does`,
);
show("Complete three-level guyed designs, each unlike the others", threeLevels());
show("One guyed analysis", analysisAgainstCalculix());
show("Answers of the starting studies verified again and again", verdicts());
show(
  "The search against enumeration: every design judged, a mast once for all ground under it",
  againstEnumeration(),
);
show("Grids from small to whole, one core", growingGrids());
const drawn = drawnStudies();
show("Studies drawn from a seed, one core", drawn.rows);
show("Their times to proof", [drawn.summary]);
show(
  "General-purpose optimisers on such studies: cost plus a penalty for what verify fails, ten times our time",
  againstOptimisers(drawn.answers),
);
show(
  `Greatest memory of a process that searches this study alone, ${HEAP} MB of heap a thread`,
  greatestMemory(drawn.rows),
);
show("One worker and two", await workers());
show("The demo's front over cost, concrete and margin", await frontOfDemo());
show("The demo's map of height and antenna area, each cell proven", await mapOfDemo());
show("The demo answered again after an edit: two workers, warm", await whatIf());

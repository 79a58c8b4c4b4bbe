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
import { enumerable, forWorkers, grids, problemOf } from "./studies.ts";
import { whatIf } from "./what-if.ts";

// Ratios side by side in one run, for people to read: nothing is asserted, for a busy machine is no defect.

/** A search that takes longer is stopped and said to be, ms. */
const PATIENCE = 45_000;

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

function growingGrids() {
  return grids.map(({ name, file }) => {
    const problem = problemOf(file);
    const { designs, structures } = new Grid(problem).total();
    const started = performance.now();
    const search = new Search(problem);
    let first = Number.NaN;
    while (!search.step(1) && performance.now() - started < PATIENCE)
      if (Number.isNaN(first) && search.best) first = performance.now() - started;
    const ended = performance.now() - started;
    if (Number.isNaN(first) && search.best) first = ended;
    return {
      grid: name,
      designs: size(designs),
      structures: size(structures),
      analysed: search.analysed,
      "first safe, ms": search.best ? Math.round(first) : "none safe",
      "proven, ms": search.finished ? Math.round(ended) : `not within ${PATIENCE}`,
      cost: search.best ? search.best.cents / 100 : "",
    };
  });
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

async function workers() {
  const job = { study: forWorkers.file, catalog: defaultCatalog };
  const fastest: number[] = [];
  for (const count of [1, 2]) {
    const pool = createThreads(count);
    try {
      const times: number[] = [];
      for (let i = 0; i < 3; i++) times.push((await pool.find(job, () => {})).proof.seconds);
      fastest.push(Math.min(...times));
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
show("The search against enumeration: every design verified", againstEnumeration());
show("Grids from small to whole, one core", growingGrids());
show("Complete guyed designs verified", verdicts());
show("One guyed analysis", analysisAgainstCalculix());
show("One worker and two", await workers());
show("The demo's front over cost, concrete and margin", await frontOfDemo());
show("The demo answered again after an edit: two workers, warm", await whatIf());
console.log(`\nGreatest memory of the whole run: ${Math.round(process.resourceUsage().maxRSS / 1024)} MB`);

import type { Reliability } from "../src/checks/reliability.ts";
import type { Catalog, CatalogFile } from "../src/model/catalog.ts";
import type { Design } from "../src/model/design.ts";
import { parseCatalog, parseStudy } from "../src/model/parse.ts";
import type { Study } from "../src/model/study.ts";
import { compile } from "../src/problem/compile.ts";
import type { Problem } from "../src/problem/types.ts";
import type { Candidate } from "../src/search/candidate.ts";
import type { Cure } from "../src/search/cures.ts";
import { whyNotCheaper } from "../src/search/explain.ts";
import type { FrontSearch } from "../src/search/front.ts";
import { problemAt } from "../src/search/map.ts";
import { gridSize, judgedOf, outcome } from "../src/search/outcome.ts";
import { Recall } from "../src/search/recall.ts";
import { Search } from "../src/search/search.ts";
import type { Share } from "../src/search/share.ts";
import type { GridSize, ShareReport } from "../src/search/together.ts";
import type { Judged, MapCell, Outcome, Rejected } from "../src/search/types.ts";
import type { Job, JobReading } from "./protocol.ts";

/** Work between two looks at the post, ms: a stop is heard within one of these. */
const SLICE = 20;
/** Time between reports, ms. */
const REPORT = 100;

export interface FrontReport {
  readonly points: readonly Candidate[];
  /** Whole cents below which this share is decided. */
  readonly exactBelow: number;
  readonly analysed: number;
  readonly pruned: Readonly<Record<string, number>>;
  readonly finished: boolean;
}

/** Of a share that another job took the place of before its first step. */
const UNWALKED: FrontReport = { points: [], exactBelow: 0, analysed: 0, pruned: {}, finished: false };

/** Lets messages in; unlike a timer it is not held back in a page that is out of sight. */
const breathe = (): Promise<void> =>
  new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(null);
  });

/**
 * One worker's end: it holds its share of a search between calls. Everything that crosses is plain data; only a
 * defect of the program rejects.
 */
export class ShareWorker {
  private problem: Problem | null = null;
  /** The job that is open, its study as it came. */
  private job: { readonly study: string; readonly catalog: CatalogFile } | null = null;
  /** As the job says it, before its ranges lead to a place. */
  private stated: { readonly study: Study; readonly catalog: Catalog } | null = null;
  private search: Search | null = null;
  /** Of the job before: a dearer bag of cement need not walk its masts again. */
  private before: Search | null = null;
  private front: FrontSearch | null = null;
  /** Masts solved for earlier jobs: a dearer bag of cement need not solve them again. */
  private readonly recall = new Recall();
  /** A later call of the same worker makes an earlier loop end. */
  private turn = 0;

  /** The catalog that was read last and its tables: most edits ask for the same again, or for all but one of them. */
  private shelf: CatalogFile | null = null;
  private readonly tables = new Map<string, { readonly text: string; readonly table: unknown }>();

  /** A file that crosses to the worker is a copy each time; the parser knows again only the objects that it has read. */
  private sameFile(file: CatalogFile): CatalogFile {
    const entries = Object.entries(file).map(([name, table]): [string, unknown] => {
      const text = JSON.stringify(table);
      const known = this.tables.get(name);
      if (known?.text === text) return [name, known.table];
      this.tables.set(name, { text, table });
      return [name, table];
    });
    const before: Readonly<Record<string, unknown>> = this.shelf ?? {};
    if (
      entries.length === Object.keys(before).length &&
      entries.every(([name, table]) => before[name] === table)
    )
      return this.shelf as CatalogFile;
    return (this.shelf = Object.fromEntries(entries) as CatalogFile);
  }

  read(job: Job): JobReading {
    const file = this.sameFile(job.catalog);
    const base = parseCatalog(file);
    return { catalog: base.ok ? base.catalog : null, read: parseStudy(job.study, { catalog: file }) };
  }

  /** Reads a job. @throws Error where it does not parse: the page parses first and shows its errors */
  open(job: Job): GridSize {
    this.turn++;
    this.before = this.search ?? this.before;
    this.search = null;
    this.front = null;
    this.job = null;
    const catalog = this.sameFile(job.catalog);
    const read = parseStudy(job.study, { catalog });
    if (!read.ok) throw new Error(read.errors.map((e) => e.message).join("; "));
    this.stated = read;
    this.problem = compile(read.study, read.catalog);
    this.job = { study: JSON.stringify(job.study), catalog };
    return gridSize(this.problem);
  }

  /** What a question is about: the job that is open already, or another that takes its place. */
  private about(job: Job): Problem {
    const open =
      this.job?.catalog === this.sameFile(job.catalog) && this.job.study === JSON.stringify(job.study);
    if (!open) this.open(job);
    return this.opened();
  }

  private opened(): Problem {
    if (!this.problem) throw new Error("no job is open in this worker");
    return this.problem;
  }

  /** Walks this share to its end or until paused; reports at once on every new best. Starts where it left off. */
  async find(share: Share, onReport: (report: ShareReport) => void): Promise<ShareReport> {
    const turn = ++this.turn;
    this.search ??= new Search(this.opened(), share, this.recall, this.before ?? undefined);
    this.before = null;
    const { search } = this;
    let best = search.best;
    let last = performance.now();
    while (turn === this.turn && !search.step(SLICE)) {
      if (search.best !== best || performance.now() - last > REPORT) {
        best = search.best;
        last = performance.now();
        onReport(search.report());
      }
      await breathe();
    }
    return search.report();
  }

  async findFront(share: Share, onReport: (report: FrontReport) => void): Promise<FrontReport> {
    const turn = ++this.turn;
    const problem = this.opened();
    // what is not asked first comes when it is
    const { FrontSearch } = await import("../src/search/front.ts");
    if (problem === this.problem && !this.front) {
      this.front = new FrontSearch(problem, share, this.recall);
      // the answer that is on the page already
      if (this.before?.best) this.front.startFrom(this.before.best);
    }
    const { front } = this;
    if (!front) return UNWALKED;
    const report = (): FrontReport => ({
      points: front.points,
      exactBelow: front.exactBelow,
      analysed: front.analysed,
      pruned: { ...front.tree.pruned },
      finished: front.finished,
    });
    let last = performance.now();
    while (turn === this.turn && !front.step(SLICE)) {
      if (performance.now() - last > 5 * REPORT) {
        last = performance.now();
        onReport(report());
      }
      await breathe();
    }
    return report();
  }

  /** One cell of the map; null where it was paused first, "later" where that takes longer than `patience`, ms. */
  async cell(height: number, area: number, patience: number): Promise<MapCell | "later" | null> {
    const turn = ++this.turn;
    const { study, catalog } = this.opened();
    const { mapCell } = await import("../src/search/map-cell.ts");
    const until = performance.now() + patience;
    return mapCell(problemAt(study, catalog, height, area), height, area, async () => {
      await breathe();
      if (turn !== this.turn) return null;
      return performance.now() < until ? "go on" : "later";
    });
  }

  /** Another share found this: it prunes here too. */
  absorb(objective: number): void {
    this.search?.absorb(objective);
  }

  absorbPoints(points: readonly Candidate[]): void {
    this.front?.absorb(points);
  }

  pause(): void {
    this.turn++;
  }

  /** What `verify` says of it; what this search found is judged already. */
  judge(candidate: Candidate | null): Judged | null {
    const { best, judged } = this.search ?? {};
    return judged && candidate?.key === best?.key ? judged : judgedOf(this.opened(), candidate);
  }

  /** Why nothing cheaper than the answer of a job is safe; null where another question came first. */
  async whyNot(job: Job, best: Judged): Promise<readonly Rejected[] | null> {
    const problem = this.about(job);
    const rows: Rejected[] = [];
    for (const row of whyNotCheaper(problem, best)) {
      rows.push(row);
      await breathe();
      if (problem !== this.problem) return null;
    }
    return rows;
  }

  async cures(job: Job, design: Design): Promise<readonly Cure[]> {
    const problem = this.about(job);
    const { cures } = await import("../src/search/cures.ts");
    return cures(problem, design);
  }

  /** @throws RangeError where the study states nothing uncertain */
  async chance(job: Job, design: Design): Promise<Reliability> {
    this.about(job);
    if (!this.stated) throw new Error("no job is open in this worker");
    // seldom asked: it comes when it is
    const { reliability } = await import("../src/checks/reliability.ts");
    return reliability(this.stated.study, this.stated.catalog, design);
  }

  async outcome(shares: readonly ShareReport[], seconds: number): Promise<Outcome> {
    const problem = this.opened();
    const found = outcome(problem, shares, seconds, (best) => this.judge(best));
    if (found.status !== "none-safe") return found;
    const { nearestMiss } = await import("../src/search/nearest.ts");
    return { ...found, nearest: nearestMiss(problem) };
  }
}

import { proxy, type Remote } from "comlink";
import type { Reliability } from "../src/checks/reliability.ts";
import { isLeast } from "../src/model/aim.ts";
import type { Design } from "../src/model/design.ts";
import type { Pursued } from "../src/search/aims.ts";
import { better, type Candidate, frontPoint } from "../src/search/candidate.ts";
import { coarseToFine } from "../src/search/coarse-to-fine.ts";
import type { Cure } from "../src/search/cures.ts";
import { combined, type GridSize, type ShareReport } from "../src/search/together.ts";
import type { CostMap, Front, Judged, MapCell, Outcome, Progress, Rejected } from "../src/search/types.ts";
import type { Job, JobReading, MapAxes, SearchClient } from "./protocol.ts";
import type { FrontReport, ShareWorker } from "./share-worker.ts";

/** A worker somewhere: a browser's, or a thread's. */
export interface Hand {
  readonly remote: Remote<ShareWorker>;
  /** Settles only by rejecting: the worker's file failed to load, or it died. */
  readonly failed: Promise<never>;
  terminate(): void;
}

/** Progress reaches the caller at most this often, ms. */
const PROGRESS = 100;

/** How long a cell of the map is sought at first, ms; what takes longer comes after the others, and has four times as long. */
const CELL_PATIENCE = 1000;

/** A share that has not reported: whatever is in it may cost nothing. */
const UNHEARD: ShareReport = { best: null, bound: 0, analysed: 0, pruned: {}, finished: false };

interface Kept {
  readonly job: Job;
  readonly size: GridSize;
  readonly shares: ShareReport[];
  seconds: number;
}

/**
 * A search spread over workers: each walks its own share of the tree and hears of every better design found
 * elsewhere. The answer does not depend on how many there are or which is first.
 */
export class Pool implements SearchClient {
  private readonly hands: Hand[];
  private running = 0;
  /** Was the running call told to stop? It may not have reached the workers yet. */
  private stopped = false;
  private kept: Kept | null = null;
  /** The job whose aim takes a row of questions, and whether it was told to stop. */
  private row: Job | null = null;
  private ended = false;
  /** The answer that was proven last, of which study, and the worker that judged it. */
  private proven: { readonly job: Job; readonly best: Judged } | null = null;
  private teller = 0;

  /** @param later workers from the second job on, where they are to be more */
  constructor(
    private readonly hire: () => Hand,
    count: number,
    private readonly later = count,
  ) {
    this.hands = Array.from({ length: count }, hire);
  }

  /** Answers of every worker, or the first failure of one. */
  private all<T>(ask: (hand: Hand, index: number) => Promise<T>): Promise<T[]> {
    return Promise.all(this.hands.map((hand, index) => Promise.race([ask(hand, index), hand.failed])));
  }

  private async open(job: Job): Promise<GridSize> {
    this.stopped = false;
    const [size] = await this.all(({ remote }) => remote.open(job) as Promise<GridSize>);
    return size;
  }

  /** An aim is one question, or a row of them: a stop ends the row with what is known. */
  async find(job: Job, onProgress: (progress: Progress) => void): Promise<Outcome> {
    this.row = null;
    this.proven = null;
    const { outcome, file } = await this.answer(job, onProgress);
    return this.told(outcome, { ...job, study: file });
  }

  private told(outcome: Outcome, job: Job): Outcome {
    if (outcome.status === "proven") this.proven = { job, best: outcome.best };
    return outcome;
  }

  private async answer(job: Job, onProgress: (progress: Progress) => void): Promise<Pursued> {
    const { aim = "cost", nextAim } = job.study;
    const alone = async () => ({ outcome: await this.findLeast(job, onProgress), file: job.study });
    if (isLeast(aim) && nextAim === undefined) return alone();
    this.ended = false;
    this.row = job;
    // a row of questions is asked by few: the first page does not wait for how
    const { choicesOf, pursue } = await import("../src/search/aims.ts");
    const { parseStudy } = await import("../src/model/parse.ts");
    const read = parseStudy(job.study, { catalog: job.catalog });
    if (!read.ok) return alone();
    const { study, catalog } = read;
    return pursue(study, job.study, choicesOf(study, catalog), (file) =>
      this.findLeast({ ...job, study: file }, onProgress),
    );
  }

  private async findLeast(job: Job, onProgress: (progress: Progress) => void): Promise<Outcome> {
    const run = ++this.running;
    while (this.kept && this.hands.length < this.later) this.hands.push(this.hire());
    this.kept = null;
    const size = await this.open(job);
    // a stop that came between two questions of a row
    if (this.row && this.ended) this.stopped = true;
    const kept: Kept = { job, size, shares: [], seconds: 0 };
    this.kept = kept;
    return this.walk(kept, run, onProgress);
  }

  /** @throws Error where nothing was stopped */
  async resume(onProgress: (progress: Progress) => void): Promise<Outcome> {
    // a row of questions is asked again; the masts that it solved are remembered
    if (this.row) return this.find(this.row, onProgress);
    if (!this.kept) throw new Error("nothing to go on with: no search was stopped");
    this.stopped = false;
    const { kept } = this;
    return this.told(await this.walk(kept, ++this.running, onProgress), kept.job);
  }

  private async walk(kept: Kept, run: number, onProgress: (progress: Progress) => void): Promise<Outcome> {
    const started = performance.now();
    const before = kept.seconds;
    const seconds = () => before + (performance.now() - started) / 1000;
    const of = this.hands.length;
    let best: Candidate | null = null;
    let judged: Judged | null = null;
    let last = 0;
    const hear = (index: number, report: ShareReport) => {
      kept.shares[index] = report;
      if (run !== this.running) return;
      if (report.best && better(report.best, best)) {
        const found = report.best;
        best = found;
        const { objective } = found;
        this.hands.forEach((hand, i) => {
          if (i !== index) void hand.remote.absorb(objective);
        });
        void (this.hands[index].remote.judge(found) as Promise<Judged | null>).then((word) => {
          // another hand may have had a better one judged sooner
          if (best !== found) return;
          judged = word;
          last = 0;
          tell();
        });
      }
      tell();
    };
    const tell = () => {
      if (run !== this.running || performance.now() - last < PROGRESS) return;
      last = performance.now();
      const known = Array.from({ length: of }, (_, i) => kept.shares[i] ?? UNHEARD);
      onProgress({ proof: combined(kept.size, known, seconds()).proof, best: judged });
    };
    const shares = await this.all(async ({ remote }, index) => {
      const asked = remote.find(
        { index, of },
        proxy((r: ShareReport) => hear(index, r)),
      );
      this.passOnStop(remote);
      const report = (await asked) as ShareReport;
      hear(index, report);
      return report;
    });
    kept.seconds = seconds();
    // whose best it is has judged it already
    let least: Candidate | null = null;
    for (const [index, share] of shares.entries())
      if (share.best && better(share.best, least)) {
        least = share.best;
        this.teller = index;
      }
    const { remote, failed } = this.hands[this.teller];
    return Promise.race([remote.outcome(shares, kept.seconds) as Promise<Outcome>, failed]);
  }

  /** A stop that came before the work did: messages keep their order, so it is heard right after the start. */
  private passOnStop(remote: Hand["remote"]): void {
    if (this.stopped) void remote.pause();
  }

  async front(job: Job, onProgress: (front: Front) => void): Promise<Front> {
    const run = ++this.running;
    const started = performance.now();
    const size = await this.open(job);
    const of = this.hands.length;
    const reports: FrontReport[] = [];
    const together = (): Front => {
      const known = reports.filter(Boolean);
      const finished = known.length === of && known.every((report) => report.finished);
      const points = nonDominatedPoints(known.flatMap((report) => report.points));
      const { proof } = combined(
        size,
        known.map((report) => ({ ...report, best: null, bound: Number.POSITIVE_INFINITY })),
        (performance.now() - started) / 1000,
      );
      const exact = known.length < of ? 0 : Math.min(...known.map((report) => report.exactBelow));
      return {
        status: finished ? "proven" : "stopped",
        exactBelow: finished ? null : exact / 100,
        points: points.map(frontPoint),
        proof,
      };
    };
    await this.all(async ({ remote }, index) => {
      const hear = (report: FrontReport) => {
        // a late word may come after the last one
        if (reports[index]?.finished) return;
        reports[index] = report;
        if (run !== this.running) return;
        this.hands.forEach((hand, i) => {
          if (i !== index) void hand.remote.absorbPoints(report.points);
        });
        onProgress(together());
      };
      const asked = remote.findFront({ index, of }, proxy(hear));
      this.passOnStop(remote);
      reports[index] = (await asked) as FrontReport;
    });
    return together();
  }

  async map(job: Job, axes: MapAxes, onProgress: (map: CostMap) => void): Promise<CostMap> {
    const run = ++this.running;
    await this.open(job);
    const { heights, areas } = axes;
    const cells: MapCell[] = [];
    let last = 0;
    const map = (done: boolean): CostMap => ({ heights, areas, cells: [...cells], done });
    let wanted = true;
    const goesOn = () => wanted && run === this.running && !this.stopped;
    // a cell that is hard to prove, mostly far out where nothing is safe, does not hold up all the others
    let round = [...coarseToFine(heights.length, areas.length)];
    for (let patience = CELL_PATIENCE; round.length > 0 && goesOn(); patience *= 4) {
      const later: typeof round = [];
      await this.all(async ({ remote }) => {
        for (let next = round.shift(); next && goesOn(); next = round.shift()) {
          const [row, column] = next;
          const told = remote.cell(heights[row], areas[column], patience);
          const cell = (await told) as Awaited<ReturnType<ShareWorker["cell"]>>;
          if (cell === "later") later.push(next);
          else if (cell) cells.push(cell);
          // another job has taken the worker: what it would answer now is of another study
          else wanted = false;
          if (goesOn() && performance.now() - last > 5 * PROGRESS) {
            last = performance.now();
            onProgress(map(false));
          }
        }
      });
      round = later;
    }
    return map(cells.length === heights.length * areas.length);
  }

  read(job: Job): Promise<JobReading> {
    return this.ask(({ remote }) => remote.read(job) as Promise<JobReading>);
  }

  async whyNot(): Promise<readonly Rejected[] | null> {
    const { proven } = this;
    if (!proven) throw new Error("no answer to explain: none was proven last");
    const asked = ({ remote }: Hand) =>
      remote.whyNot(proven.job, proven.best) as Promise<readonly Rejected[] | null>;
    return this.ask(asked, this.hands[this.teller]);
  }

  cures(job: Job, design: Design): Promise<readonly Cure[]> {
    return this.ask(({ remote }) => remote.cures(job, design) as Promise<readonly Cure[]>);
  }

  chance(job: Job, design: Design): Promise<Reliability> {
    return this.ask(({ remote }) => remote.chance(job, design) as Promise<Reliability>);
  }

  /** What one worker alone answers. */
  private ask<T>(question: (hand: Hand) => Promise<T>, hand = this.hands[0]): Promise<T> {
    return Promise.race([question(hand), hand.failed]);
  }

  stop(): void {
    this.stopped = true;
    this.ended = true;
    for (const { remote } of this.hands) void remote.pause();
  }

  dispose(): void {
    this.running++;
    for (const hand of this.hands) hand.terminate();
  }
}

/** Points of several shares, less those that another share beats. */
function nonDominatedPoints(points: readonly Candidate[]): Candidate[] {
  const sorted = [...points].sort(
    (a, b) => a.cents - b.cents || a.concrete - b.concrete || a.use - b.use || (a.key < b.key ? -1 : 1),
  );
  const kept: Candidate[] = [];
  for (const point of sorted)
    if (!kept.some((k) => k.concrete <= point.concrete && k.use <= point.use + 1e-9)) kept.push(point);
  return kept;
}

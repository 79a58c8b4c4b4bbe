import type { Reliability } from "../src/checks/reliability.ts";
import type { Catalog, CatalogFile } from "../src/model/catalog.ts";
import type { Design } from "../src/model/design.ts";
import type { parseStudy } from "../src/model/parse.ts";
import type { StudyFile } from "../src/model/study.ts";
import type { Cure } from "../src/search/cures.ts";
import type { CostMap, Front, Outcome, Progress, Rejected } from "../src/search/types.ts";

/** What crosses to a worker: files, not parsed studies, so that one parser judges them on both sides. */
export interface Job {
  readonly study: StudyFile;
  readonly catalog: CatalogFile;
}

/** What the parser says of a job. */
export interface JobReading {
  /** The given catalog without the study's own rows; null where it does not parse. */
  readonly catalog: Catalog | null;
  readonly read: ReturnType<typeof parseStudy>;
}

/**
 * The page's and the command line's one way to a search. Each call takes the place of the one before it of the
 * same kind; the one replaced ends as "stopped".
 */
export interface SearchClient {
  /** Streams at most ten times a second. Rejects only on a defect of the program. */
  find(job: Job, onProgress: (progress: Progress) => void): Promise<Outcome>;
  front(job: Job, onProgress: (front: Front) => void): Promise<Front>;
  map(job: Job, axes: MapAxes, onProgress: (map: CostMap) => void): Promise<CostMap>;
  /** Reads a job where the page does not stand still for it. */
  read(job: Job): Promise<JobReading>;
  /**
   * Why nothing cheaper is safe than the answer that was proven last; null where another question took the place of
   * this one. @throws Error where nothing was proven last
   */
  whyNot(): Promise<readonly Rejected[] | null>;
  /** What one step of each part would do to the checks of a design. */
  cures(job: Job, design: Design): Promise<readonly Cure[]>;
  /** How probable it is that a design misses a check, of a study that says what is uncertain. */
  chance(job: Job, design: Design): Promise<Reliability>;
  /** Ends the running search within 100 ms; it resolves as "stopped" with its incumbent and gap. */
  stop(): void;
  /** Goes on with a stopped `find` where it left off. */
  resume(onProgress: (progress: Progress) => void): Promise<Outcome>;
  dispose(): void;
}

/** Axes of the map, SI. */
export interface MapAxes {
  readonly heights: readonly number[];
  readonly areas: readonly number[];
}

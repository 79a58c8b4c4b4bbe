import type { CatalogFile } from "../../model/catalog.ts";
import { defaultCatalog } from "../../model/default-catalog.ts";
import { demoStudy } from "../../model/demo-study.ts";
import type { StudyFile } from "../../model/study.ts";
import { book, change, type Fault, layOpen, look, lookAway, openStudy, type Paper } from "./book.ts";
import type { KeptBook, KeptStudy, KeptVersion } from "./cupboard.ts";
import * as cupboard from "./cupboard.ts";
import { downloadText, fileName } from "./files.ts";
import { begin, edit } from "./history.ts";
import { layOutKept, shelf } from "./kept.ts";
import { asKept, type Brought, type Everything, writeParcel, writeStudy } from "./parcel.ts";
import { withValue } from "./path.ts";
import { isHistory, onKept, openKept, renamed, saveNow, tell, troubleOf } from "./saving.ts";
import { createStore } from "./store.ts";

/** What this browser keeps, as the page of studies lists it. */
interface Kept {
  readonly studies: readonly KeptStudy[];
  /** Of the open study. */
  readonly versions: readonly KeptVersion[];
  readonly books: readonly KeptBook[];
  /** The version or book that was deleted last, until the page is closed. */
  readonly dropped: { readonly version: KeptVersion } | { readonly book: KeptBook } | null;
  /** What a file or a link brings, until it is taken or left. */
  readonly brought: { readonly from: string; readonly found: Brought } | null;
  /** Why the last file or link brought nothing. */
  readonly refused: string | null;
}
export const kept = createStore<Kept>({
  studies: [],
  versions: [],
  books: [],
  dropped: null,
  brought: null,
  refused: null,
});

/** Does something with the store; where that fails, says so and offers the way out. */
const withStore = async (work: () => Promise<unknown>): Promise<boolean> => {
  try {
    await work();
    return true;
  } catch (error) {
    book.set({ trouble: troubleOf(error) });
    return false;
  }
};

export const refresh = () =>
  withStore(async () => {
    const [studies, versions, books] = await Promise.all([
      cupboard.studies(),
      cupboard.versions(book.get().studyId),
      cupboard.books(),
    ]);
    kept.set({
      studies: [...studies].sort((a, b) => b.at - a.at),
      versions: [...versions].sort((a, b) => b.at - a.at),
      books: [...books].sort((a, b) => b.at - a.at),
    });
  });
export const followKept = () => {
  void refresh();
  const leave = onKept(() => void refresh());
  let open = book.get().studyId;
  const stop = book.subscribe(() => {
    if (book.get().studyId !== open) void refresh();
    open = book.get().studyId;
  });
  return () => {
    leave();
    stop();
  };
};

/** Lays a kept study open, or says why it can't. */
export const open = (study: KeptStudy) => {
  const why = openKept(study);
  if (why)
    book.set({ notice: `It can’t be opened: ${why}. It is kept as it is, and can be written to a file.` });
};
export const begun = (file: StudyFile): readonly Fault[] => openStudy(file, defaultCatalog);

const presentPaper = (): Paper => {
  const { history, looking } = book.get();
  return (looking?.back ?? history).present;
};

/** A study that does not lie on the desk is written where it is kept. */
const rewrite = (study: KeptStudy, history: KeptStudy["history"]) =>
  withStore(async () => {
    const done = await cupboard.write(study.id, study.revision, history);
    if (!done.ok) throw new Error("another tab has just changed it");
    tell(study.id);
  });
export const rename = async (study: KeptStudy, name: string): Promise<void> => {
  if (study.id === book.get().studyId) renameOpen(name);
  else await rewrite(study, edit(study.history, renamed(study.history, name).present, `named it ${name}`));
};
export const renameOpen = (name: string): readonly Fault[] => {
  const paper = book.get().history.present;
  return change({ ...paper, study: { ...paper.study, name } }, `named it ${name}`);
};

export const duplicate = (paper: Paper) =>
  layOpen(
    cupboard.newId(),
    begin({ ...paper, study: { ...paper.study, name: `${paper.study.name}, copy` } }),
    null,
  );

/** Into the bin, from which it can be put back; the desk then holds the next one. */
export const remove = async (study: KeptStudy): Promise<void> => {
  await saveNow();
  if (!(await withStore(() => cupboard.setDeleted(study.id, Date.now())))) return;
  if (study.id === book.get().studyId) {
    const next = kept.get().studies.find((one) => one.id !== study.id && one.deletedAt === null);
    if (!next || openKept(next) !== null)
      layOpen(cupboard.newId(), begin({ study: demoStudy, catalog: defaultCatalog }), null);
  }
  tell(study.id);
};
export const putBack = async (study: KeptStudy): Promise<void> => {
  await withStore(() => cupboard.setDeleted(study.id, null));
  tell(study.id);
};
export const destroy = async (study: KeptStudy): Promise<void> => {
  await withStore(() => cupboard.destroy(study.id));
  tell(study.id);
};

/** Gives the present state a name. The study itself is written first: a version of nothing would be lost. */
export const keepVersion = (name: string) =>
  withStore(async () => {
    await saveNow();
    const { studyId } = book.get();
    await cupboard.putVersion({
      id: cupboard.newId(),
      study: studyId,
      name,
      at: Date.now(),
      paper: presentPaper(),
    });
    tell(studyId);
  });
export const dropVersion = (version: KeptVersion) =>
  withStore(async () => {
    await cupboard.dropVersion(version.id);
    kept.set({ dropped: { version } });
    tell(version.study);
  });
/** Puts a version in the place of the present; Undo brings the present back. */
export const goBackTo = (version: KeptVersion): readonly Fault[] => {
  lookAway();
  return change(version.paper, `went back to “${version.name}”`);
};
export { look };

export const keepBook = (name: string, catalog: CatalogFile) =>
  withStore(async () => {
    await cupboard.putBook({ id: cupboard.newId(), name, at: Date.now(), catalog });
    tell(null);
  });
export const dropBook = (one: KeptBook) =>
  withStore(async () => {
    await cupboard.dropBook(one.id);
    kept.set({ dropped: { book: one } });
    tell(null);
  });
export const putDroppedBack = () =>
  withStore(async () => {
    const { dropped } = kept.get();
    if (!dropped) return;
    if ("version" in dropped) await cupboard.putVersion(dropped.version);
    else await cupboard.putBook(dropped.book);
    kept.set({ dropped: null });
    tell(null);
  });
/** The catalog and prices of the book; rows that the study itself brought along stay its own. */
export const takeBook = (one: KeptBook): readonly Fault[] => {
  const { study } = book.get().history.present;
  return change(
    {
      study: study.catalog?.prices ? withValue(study, ["catalog", "prices"], undefined) : study,
      catalog: one.catalog,
    },
    `took the book “${one.name}”`,
  );
};

/** Everything that can be reached: what lies on the desk comes from memory, whether or not it could be kept. */
const everything = async (): Promise<Everything> => {
  const { studyId } = book.get();
  const empty: Everything = { studies: [], versions: [], books: [], designs: [] };
  const there = await Promise.all([
    cupboard.studies(),
    cupboard.versions(),
    cupboard.books(),
    cupboard.designs(),
  ])
    .then(([studies, versions, books, designs]): Everything => ({ studies, versions, books, designs }))
    .catch(() => empty);
  const mine: KeptStudy = {
    id: studyId,
    revision: 0,
    at: Date.now(),
    deletedAt: null,
    history: begin(presentPaper()),
  };
  const others = there.studies.filter((one) => one.id !== studyId);
  const readable = others.filter((one) => isHistory(one.history));
  if (readable.length < others.length)
    book.set({
      notice: `Damaged studies are not in the file (${others.length - readable.length}): the list of studies writes each as it is kept.`,
    });
  const unwritten = shelf.get().kept.filter(({ id }) => !there.designs.some((one) => one.id === id));
  return { ...there, studies: [mine, ...readable], designs: [...there.designs, ...unwritten] };
};
export const writeEverything = async (): Promise<void> => {
  const day = new Date().toISOString().slice(0, 10);
  downloadText(`mastwright-everything-${day}.json`, writeParcel(await everything()), "application/json");
};
export const writeOpen = () => {
  const paper = book.get().history.present;
  downloadText(fileName(paper.study.name, "json"), writeStudy(paper), "application/json");
};
/** A study that can't be read any more, as it is kept. */
export const writeRaw = (study: KeptStudy) =>
  downloadText("study-as-kept.json", `${JSON.stringify(study, null, 1)}\n`, "application/json");

/** Looks at what a file or a link holds; nothing is kept before it is taken. */
export const bring = async (from: string, read: () => Promise<Brought>): Promise<void> => {
  try {
    kept.set({ brought: { from, found: await read() }, refused: null });
  } catch (error) {
    kept.set({ brought: null, refused: `${from}: ${(error as Error).message}.` });
  }
};
export const leaveBrought = () => kept.set({ brought: null, refused: null });
export const takeBrought = async (): Promise<void> => {
  const { brought } = kept.get();
  if (!brought) return;
  const all = asKept(brought.found);
  kept.set({ brought: null });
  const done = await withStore(() => cupboard.putAll(all));
  // where nothing can be kept, it can still be worked with
  if (!done && all.studies[0]) layOpen(all.studies[0].id, all.studies[0].history, null);
  if (done && all.studies[0]) openKept(all.studies[0]);
  if (done) await layOutKept();
  tell(null);
};

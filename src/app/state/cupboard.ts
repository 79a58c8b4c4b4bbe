import { type DBSchema, type IDBPDatabase, openDB } from "idb";
import type { CatalogFile } from "../../model/catalog.ts";
import type { Design } from "../../model/design.ts";
import type { Paper } from "./book.ts";
import type { History } from "./history.ts";

/** A study put away: with its steps, so that Undo outlives the page. */
export interface KeptStudy {
  readonly id: string;
  /** Goes up by one with every writing: who writes over a number that he hasn't seen is told. */
  readonly revision: number;
  readonly at: number;
  readonly history: History<Paper>;
  readonly deletedAt: number | null;
}
/** A state of a study that was given a name. */
export interface KeptVersion {
  readonly id: string;
  readonly study: string;
  readonly name: string;
  readonly at: number;
  readonly paper: Paper;
}
/** A whole catalog, prices included, that was given a name. */
export interface KeptBook {
  readonly id: string;
  readonly name: string;
  readonly at: number;
  readonly catalog: CatalogFile;
}
/** A design with the paper that it was found under, kept to be compared with those of other studies. */
export interface KeptDesign {
  readonly id: string;
  readonly name: string;
  readonly at: number;
  readonly paper: Paper;
  readonly design: Design;
}

interface Shelves extends DBSchema {
  studies: { key: string; value: KeptStudy };
  versions: { key: string; value: KeptVersion; indexes: { study: string } };
  books: { key: string; value: KeptBook };
  designs: { key: string; value: KeptDesign };
}

let opening: Promise<IDBPDatabase<Shelves>> | null = null;

/** Opened at first use; another tab that wants to make the store anew is let through. */
const store = (): Promise<IDBPDatabase<Shelves>> => {
  opening ??= openDB<Shelves>("mastwright", 2, {
    upgrade: (db, former) => {
      db.createObjectStore("designs", { keyPath: "id" });
      if (former > 0) return;
      db.createObjectStore("studies", { keyPath: "id" });
      db.createObjectStore("versions", { keyPath: "id" }).createIndex("study", "study");
      db.createObjectStore("books", { keyPath: "id" });
    },
    blocking: (_now, _wanted, event) => {
      (event.target as IDBDatabase).close();
      opening = null;
    },
    terminated: () => {
      opening = null;
    },
  });
  opening.catch(() => {
    opening = null;
  });
  return opening;
};

export const newId = (): string => crypto.randomUUID();

export const studies = async (): Promise<readonly KeptStudy[]> => (await store()).getAll("studies");
export const study = async (id: string): Promise<KeptStudy | undefined> => (await store()).get("studies", id);

export type Written =
  | { readonly ok: true; readonly kept: KeptStudy }
  /** Somebody else has written since the revision that this writer knew. */
  | { readonly ok: false; readonly theirs: KeptStudy };

/** Writes a study over the revision that the writer knows (0: none yet); one transaction reads and writes. */
export const write = async (id: string, knows: number, history: History<Paper>): Promise<Written> => {
  const tx = (await store()).transaction("studies", "readwrite");
  const there = await tx.store.get(id);
  if (there && there.revision !== knows) {
    await tx.done;
    return { ok: false, theirs: there };
  }
  const kept: KeptStudy = { id, revision: knows + 1, at: Date.now(), history, deletedAt: null };
  await Promise.all([tx.store.put(kept), tx.done]);
  return { ok: true, kept };
};

/** Puts a study into the bin, or takes it out again. */
export const setDeleted = async (id: string, deletedAt: number | null): Promise<void> => {
  const tx = (await store()).transaction("studies", "readwrite");
  const there = await tx.store.get(id);
  if (there) await tx.store.put({ ...there, deletedAt, revision: there.revision + 1 });
  await tx.done;
};

/** A study and its versions, gone for good. */
export const destroy = async (id: string): Promise<void> => {
  const tx = (await store()).transaction(["studies", "versions"], "readwrite");
  await tx.objectStore("studies").delete(id);
  for (const key of await tx.objectStore("versions").index("study").getAllKeys(id))
    await tx.objectStore("versions").delete(key);
  await tx.done;
};

export const versions = async (of?: string): Promise<readonly KeptVersion[]> => {
  const db = await store();
  return of === undefined ? db.getAll("versions") : db.getAllFromIndex("versions", "study", of);
};
export const putVersion = async (version: KeptVersion): Promise<void> => {
  await (await store()).put("versions", version);
};
export const dropVersion = async (id: string): Promise<void> => (await store()).delete("versions", id);

export const books = async (): Promise<readonly KeptBook[]> => (await store()).getAll("books");
export const putBook = async (book: KeptBook): Promise<void> => {
  await (await store()).put("books", book);
};
export const dropBook = async (id: string): Promise<void> => (await store()).delete("books", id);

export const designs = async (): Promise<readonly KeptDesign[]> => (await store()).getAll("designs");
export const putDesign = async (design: KeptDesign): Promise<void> => {
  await (await store()).put("designs", design);
};
export const dropDesign = async (id: string): Promise<void> => (await store()).delete("designs", id);

/** Everything of a file at once, or nothing of it. */
export const putAll = async (all: {
  readonly studies: readonly KeptStudy[];
  readonly versions: readonly KeptVersion[];
  readonly books: readonly KeptBook[];
  readonly designs: readonly KeptDesign[];
}): Promise<void> => {
  const tx = (await store()).transaction(["studies", "versions", "books", "designs"], "readwrite");
  await Promise.all([
    ...all.studies.map((one) => tx.objectStore("studies").add(one)),
    ...all.versions.map((one) => tx.objectStore("versions").add(one)),
    ...all.books.map((one) => tx.objectStore("books").add(one)),
    ...all.designs.map((one) => tx.objectStore("designs").add(one)),
    tx.done,
  ]);
};

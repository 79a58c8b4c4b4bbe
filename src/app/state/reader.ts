import type { Catalog, CatalogFile } from "../../model/catalog.ts";

type Reader = typeof import("../../model/parse.ts");

let reader: Reader | null = null;
let coming: Promise<void> | null = null;
/** Catalogs that the worker has read before the parser came here. */
const known: (readonly [CatalogFile, Catalog])[] = [];

/** Before the next piece of work: what the hand does meanwhile is heard. */
export const breathe = () => new Promise((resolve) => setTimeout(resolve));

/**
 * The parser and its schemas are the most that the page runs, and what is drawn first was read by the worker: they come
 * when that stands on the screen, in pieces. An edit made before then waits for them. What does not come, as where the
 * network is gone, is asked for again the next time.
 */
export const readerComes = (): Promise<void> =>
  (coming ??= (async () => {
    // one after the other: asked for together, the first that is whole would run all that it needs
    await import("../../model/fields.ts");
    await breathe();
    await import("../../model/steel-rows.ts");
    await breathe();
    await import("../../model/ground-rows.ts");
    await breathe();
    const came = await import("../../model/parse.ts");
    for (const [file, read] of known) came.knowCatalog(file, read);
    reader = came;
    await breathe();
  })().catch((error: unknown) => {
    coming = null;
    throw error;
  }));

/** What has been read of a catalog elsewhere need not be read again here. */
export const knowCatalog = (file: CatalogFile, read: Catalog): void => {
  if (reader) reader.knowCatalog(file, read);
  else known.push([file, read]);
};

/** Null before it has come. */
export const theReader = (): Reader | null => reader;

import type { CatalogFile } from "../../../src/model/catalog.ts";
import type { StudyFile } from "../../../src/model/study.ts";
import { fixture } from "./fixture.ts";

/** Stands in for the catalog, the studies and their reader while the page is worked on. */
export const defaultCatalog: CatalogFile = fixture.catalog;
export const startingStudies = [{ id: "pasture", file: fixture.study as StudyFile }];
export const parseStudy = (study: unknown, { catalog }: { catalog: unknown }) => ({
  ok: true as const,
  study: study as typeof fixture.study,
  catalog: catalog as typeof fixture.catalog,
});

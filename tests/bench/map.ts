import upperPasture from "../../catalog/studies/upper-pasture.json" with { type: "json" };
import { mapAxes } from "../../src/app/plots/map-axes.ts";
import { defaultCatalog } from "../../src/model/default-catalog.ts";
import { parseStudy } from "../../src/model/parse.ts";
import type { StudyFile } from "../../src/model/study.ts";
import { createThreads } from "../../workers/node-client.ts";

/** The map is stopped after this, ms. */
const PATIENCE = 90_000;

/** How soon the demo's map of height and antenna area fills, as the page asks for it: two workers, each cell proven. */
export async function mapOfDemo() {
  const study = upperPasture as unknown as StudyFile;
  const read = parseStudy(study, { catalog: defaultCatalog });
  if (!read.ok) throw new Error(read.errors.map(({ message }) => message).join("; "));
  const axes = mapAxes(read.study, read.catalog, "us");
  const all = axes.heights.length * axes.areas.length;
  const pool = createThreads(2);
  const stopping = setTimeout(() => pool.stop(), PATIENCE);
  const started = performance.now();
  const rows: object[] = [];
  const shares = [0.1, 0.25, 0.5];
  const row = (cells: number, safe: number, done: string) => ({
    cells,
    safe,
    of: all,
    "after, s": `${Number(((performance.now() - started) / 1000).toPrecision(3))}${done}`,
  });
  try {
    const { cells, done } = await pool.map({ study, catalog: defaultCatalog }, axes, (map) => {
      if (shares.length === 0 || map.cells.length < shares[0] * all) return;
      shares.shift();
      rows.push(row(map.cells.length, map.cells.filter(({ cost }) => cost !== null).length, ""));
    });
    rows.push(row(cells.length, cells.filter(({ cost }) => cost !== null).length, done ? "" : ", stopped"));
    return rows;
  } finally {
    clearTimeout(stopping);
    pool.dispose();
  }
}

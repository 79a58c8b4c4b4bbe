import upperPasture from "../../catalog/studies/upper-pasture.json" with { type: "json" };
import { defaultCatalog } from "../../src/model/default-catalog.ts";
import type { StudyFile } from "../../src/model/study.ts";
import { createThreads } from "../../workers/node-client.ts";

/** The front is stopped after this, ms. */
const PATIENCE = 60_000;

/**
 * How soon the demo's front is known for certain up to so much above the cheapest safe design: two workers that have
 * answered, as on the page.
 */
export async function frontOfDemo() {
  const pool = createThreads(2);
  const job = { study: upperPasture as unknown as StudyFile, catalog: defaultCatalog };
  await pool.find(job, () => {});
  const stopping = setTimeout(() => pool.stop(), PATIENCE);
  try {
    const rows: object[] = [];
    const shares = [0.01, 0.02, 0.05, 0.1, 0.2];
    const { status, points, exactBelow, proof } = await pool.front(job, (front) => {
      const [cheapest] = front.points;
      if (!cheapest || front.exactBelow === null || front.exactBelow <= cheapest.cost) return;
      for (; shares.length > 0 && front.exactBelow >= (1 + shares[0]) * cheapest.cost; shares.shift())
        rows.push({
          "exact up to, above the cheapest": `${Math.round(100 * shares[0])} %`,
          designs: front.points.filter(({ cost }) => cost < (1 + shares[0]) * cheapest.cost).length,
          analysed: front.proof.analysed,
          "after, s": Number(front.proof.seconds.toPrecision(3)),
        });
    });
    rows.push({
      "exact up to, above the cheapest":
        exactBelow === null ? "everything" : `${(100 * (exactBelow / points[0].cost - 1)).toFixed(1)} %`,
      designs: points.length,
      analysed: proof.analysed,
      "after, s": `${Number(proof.seconds.toPrecision(3))}${status === "proven" ? "" : ", stopped"}`,
    });
    return rows;
  } finally {
    clearTimeout(stopping);
    pool.dispose();
  }
}

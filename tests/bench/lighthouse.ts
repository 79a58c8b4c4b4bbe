import { execFile } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { promisify } from "node:util";
import { executable } from "../browser/chromium.ts";
import { Desk } from "../browser/desk.ts";

/**
 * Lighthouse on the built page in the machine's Chromium, phone and desk; fails under 95 in any category. It is
 * fetched from the registry when it is asked for: a hundred packages that nothing else here needs. Its times are
 * those of a slow phone, simulated from this machine's: run it when nothing else runs.
 */
const VERSION = "13.5.0";
const LEAST = 0.95;

interface Report {
  readonly categories: Readonly<Record<string, { readonly title: string; readonly score: number | null }>>;
  readonly audits: Readonly<Record<string, { readonly title: string; readonly displayValue?: string }>>;
}

const folder = mkdtempSync(join(tmpdir(), "lighthouse-"));
const desk = await Desk.open();
let low = 0;
try {
  for (const preset of ["phone", "desk"]) {
    const file = join(folder, `${preset}.json`);
    // the page is served by this process: it must not stand still meanwhile
    await promisify(execFile)(
      "npx",
      [
        "--yes",
        `lighthouse@${VERSION}`,
        desk.address,
        "--quiet",
        "--output=json",
        `--output-path=${file}`,
        "--chrome-flags=--headless=new --no-sandbox --disable-gpu --disable-quic --no-first-run --disable-background-networking",
        ...(preset === "desk" ? ["--preset=desktop"] : []),
      ],
      { env: { ...process.env, CHROME_PATH: executable() } },
    );
    const { categories, audits } = JSON.parse(readFileSync(file, "utf8")) as Report;
    const scores = Object.values(categories).map(
      ({ title, score }) => `${title} ${Math.round((score ?? 0) * 100)}`,
    );
    const times = [
      "first-contentful-paint",
      "largest-contentful-paint",
      "total-blocking-time",
      "cumulative-layout-shift",
    ];
    console.log(`${preset}: ${scores.join(", ")}`);
    console.log(`  ${times.map((id) => `${audits[id].title} ${audits[id].displayValue}`).join(", ")}`);
    low += Object.values(categories).filter(({ score }) => (score ?? 0) < LEAST).length;
  }
} finally {
  await desk.close();
  rmSync(folder, { recursive: true, force: true });
}
if (low > 0) {
  console.error(`${low} scores are under ${LEAST * 100}`);
  process.exitCode = 1;
}

import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

export const PACKAGE = "calculix-ccx";
const PROGRAM = "ccx";

export type Found =
  | { readonly status: "found"; readonly version: string }
  | { readonly status: "missing"; readonly why: string };

/** The version of the program, where there is one. It ends with a code of its own after saying so. */
const version = (): string | undefined =>
  /Version\s+(\S+)/.exec(spawnSync(PROGRAM, ["-v"], { encoding: "utf8" }).stdout ?? "")?.[1];

/** Looks for CalculiX on the path; as root on a Debian machine it is installed where it is missing. */
export function findCalculix(): Found {
  const known = version();
  if (known) return { status: "found", version: known };
  if (process.getuid?.() !== 0)
    return {
      status: "missing",
      why: `"${PROGRAM}" is not on the path; install the Debian package ${PACKAGE}`,
    };
  try {
    // a bare machine has no package lists yet
    execFileSync("apt-get", ["update"], { stdio: "ignore" });
    execFileSync("apt-get", ["install", "-y", "--no-install-recommends", PACKAGE], {
      stdio: "ignore",
      timeout: 180_000,
      env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" },
    });
  } catch {
    return { status: "missing", why: `"apt-get install ${PACKAGE}" did not succeed; install it by hand` };
  }
  const installed = version();
  return installed
    ? { status: "found", version: installed }
    : { status: "missing", why: `the package ${PACKAGE} has no working "${PROGRAM}"` };
}

/** Runs a deck on one core and returns what it printed. */
export function runCalculix(deck: string): string {
  const folder = mkdtempSync(join(tmpdir(), "calculix-"));
  try {
    writeFileSync(join(folder, "mast.inp"), deck);
    execFileSync(PROGRAM, ["-i", "mast"], {
      cwd: folder,
      stdio: ["ignore", "pipe", "pipe"],
      maxBuffer: 1 << 26,
      timeout: 120_000,
      env: { ...process.env, OMP_NUM_THREADS: "1" },
    });
    return readFileSync(join(folder, "mast.dat"), "utf8");
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

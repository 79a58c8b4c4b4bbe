import { spawn } from "node:child_process";

export interface Ran {
  readonly code: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** A command that takes longer is ended, ms: its exit code is then null. */
const LONGEST = 100_000;

/** Runs the command line as a user does: a process of its own, its words and its exit code. */
export const mastwright = (...args: readonly string[]): Promise<Ran> =>
  new Promise((resolve, reject) => {
    const child = spawn(process.execPath, ["--import", "tsx", "src/cli/main.ts", ...args], {
      timeout: LONGEST,
    });
    let stdout = "";
    let stderr = "";
    child.stdout.setEncoding("utf8").on("data", (text: string) => {
      stdout += text;
    });
    child.stderr.setEncoding("utf8").on("data", (text: string) => {
      stderr += text;
    });
    child.on("error", reject);
    child.on("close", (code) => resolve({ code, stdout, stderr }));
  });

import { spawn } from "node:child_process";
import { accessSync, constants } from "node:fs";
import { delimiter, join } from "node:path";
import { pathToFileURL } from "node:url";

const names = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "chrome", "msedge"];
const endings = process.platform === "win32" ? [".exe", ""] : [""];

/** Printing five sheets takes a few seconds; a browser that hangs is ended, ms. */
const LONGEST = 60_000;

/** A browser on the PATH that prints without a window; undefined where there is none. */
export function findBrowser(path = process.env.PATH ?? ""): string | undefined {
  for (const folder of path.split(delimiter).filter(Boolean))
    for (const name of names)
      for (const ending of endings) {
        const file = join(folder, name + ending);
        try {
          accessSync(file, constants.X_OK);
          return file;
        } catch {
          // not here
        }
      }
  return undefined;
}

/** Prints a page to a PDF; true where the browser said that it did. */
export const printPdf = (browser: string, page: string, pdf: string): Promise<boolean> =>
  new Promise((resolve) => {
    const child = spawn(
      browser,
      [
        "--headless",
        "--no-sandbox",
        "--disable-gpu",
        "--no-pdf-header-footer",
        `--print-to-pdf=${pdf}`,
        pathToFileURL(page).href,
      ],
      { stdio: "ignore", timeout: LONGEST },
    );
    child.on("error", () => resolve(false));
    child.on("close", (code) => resolve(code === 0));
  });

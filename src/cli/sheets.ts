import { existsSync, mkdirSync, mkdtempSync, renameSync, rmSync, statSync, writeFileSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import { verify } from "../checks/verify.ts";
import { compile } from "../problem/compile.ts";
import { renderSheet, renderSheets } from "../report/sheets/render.ts";
import { sheets, UnsafeDesign } from "../report/sheets/sheets.ts";
import type { Sheet } from "../report/sheets/types.ts";
import { type Arguments, UsageError } from "./arguments.ts";
import { findBrowser, printPdf } from "./browser.ts";
import type { Said } from "./commands.ts";
import { openDesign, openStudy } from "./files.ts";
import { cautionText } from "./text.ts";

/** Five sheets for the crew, all or none: a design that fails a check gets no paper to build from. */
export async function sheetsCommand(args: Arguments): Promise<Said> {
  if (args.out === undefined || args.out === "")
    throw new UsageError("sheets: found no --out, expected --out DIR, the folder to write to");
  const open = openStudy(args.files[0]);
  const design = openDesign(args.files[1], open);
  const problem = compile(open.study, open.catalog);
  const verdict = verify(problem, design);
  let all: Sheet[];
  try {
    all = sheets(problem, design, verdict);
  } catch (error) {
    if (!(error instanceof UnsafeDesign)) throw error;
    return {
      text: `${error.message}\n\n${cautionText}`,
      data: { files: [], refused: error.message },
      exit: 1,
    };
  }
  const files = await write(all, resolve(args.out));
  return { text: `${files.join("\n")}\n\n${cautionText}`, data: { files }, exit: 0 };
}

/** Written beside the folder and moved in when whole: a run that breaks off leaves no half a set. */
async function write(all: readonly Sheet[], out: string): Promise<string[]> {
  if (existsSync(out) && !statSync(out).isDirectory())
    throw new UsageError(`--out: found a file at ${out}, expected a folder`);
  let temporary = "";
  try {
    mkdirSync(dirname(out), { recursive: true });
    temporary = mkdtempSync(`${out}.part-`);
    const names = all.map((sheet) => `${sheet.id}.html`);
    all.forEach((sheet, i) => {
      writeFileSync(join(temporary, names[i]), renderSheet(sheet));
    });
    if (await pdf(all, temporary)) names.push("sheets.pdf");
    mkdirSync(out, { recursive: true });
    // an older set must not keep a page that this one lacks
    rmSync(join(out, "sheets.pdf"), { force: true });
    for (const name of names) renameSync(join(temporary, name), join(out, name));
    return names.map((name) => join(out, name));
  } catch (error) {
    const { code, message } = error as NodeJS.ErrnoException;
    if (code === undefined) throw error;
    throw new UsageError(`--out: ${message}; expected a folder that can be written to`);
  } finally {
    if (temporary) rmSync(temporary, { recursive: true, force: true });
  }
}

async function pdf(all: readonly Sheet[], folder: string): Promise<boolean> {
  const browser = findBrowser();
  if (!browser) {
    process.stderr.write("sheets: no Chromium on the PATH, so no sheets.pdf; print the pages instead\n");
    return false;
  }
  const page = join(folder, "all.html");
  const target = join(folder, "sheets.pdf");
  writeFileSync(page, renderSheets(all));
  const printed = (await printPdf(browser, page, target)) && existsSync(target);
  if (!printed)
    process.stderr.write(`sheets: ${browser} printed nothing, so no sheets.pdf; print the pages instead\n`);
  return printed;
}

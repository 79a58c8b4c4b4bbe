import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";

const ignored = new Set([".git", ...readFileSync(".gitignore", "utf8").split("\n").filter(Boolean)]);

function* filesUnder(folder: string): Generator<string> {
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    const path = folder === "." ? entry.name : `${folder}/${entry.name}`;
    if (ignored.has(entry.name) || ignored.has(`${entry.name}/`) || ignored.has(path)) continue;
    if (entry.isDirectory()) yield* filesUnder(path);
    else if (entry.isFile()) yield path;
  }
}

/** What the repository holds, whether or not git is here to ask. */
const files = [...filesUnder(".")];

const textOf = (path: string): string => readFileSync(path, "utf8");

/** The text of each call that begins so, to the bracket that closes it. */
const callsOf = (text: string, begin: RegExp): string[] =>
  [...text.matchAll(begin)].map(({ 0: head, index }) => {
    let end = index + head.length;
    for (let open = 1; open > 0 && end < text.length; end++)
      open += text[end] === "(" ? 1 : text[end] === ")" ? -1 : 0;
    return text.slice(index, end);
  });

/** A file reads in one sitting. Longer ones are named here with their reason. */
const LONGEST = 350;
const LONGER: Readonly<Record<string, string>> = {
  "src/app/wording/formulas.ts": "a table, an entry a limit state: looked up, not read through",
};

describe("the files of the project", () => {
  it(`every source file has at most ${LONGEST} lines, or a reason`, () => {
    const long = files
      .filter((path) => /^(src|workers)\/.*\.(ts|tsx|mjs)$/.test(path))
      .filter((path) => textOf(path).split("\n").length > LONGEST);
    expect(long.filter((path) => !(path in LONGER))).toEqual([]);
    // a reason that is no longer needed goes
    expect(Object.keys(LONGER).filter((path) => !long.includes(path))).toEqual([]);
  });

  it("no text speaks of a machine's own folders or of what is not in the repository", () => {
    // spelled in pieces, so that this file does not find itself
    const banned = [
      ["/wo", "rk/"],
      ["/ro", "ot/"],
      ["/ho", "me/"],
      ["/tmp/", "bash"],
      [".libr", "ary/"],
      ["shared/", "design"],
      ["shared/", "search"],
      ["shared/", "physics"],
      ["shared/", "style"],
      ["shared/", "reference"],
      ["trans", "cript"],
      ["seed ", "document"],
      ["seed ", "file"],
    ].map((parts) => parts.join(""));
    const texts = files.filter(
      (path) => !/\.(png|pdf|woff2?|ico)$/.test(path) && path !== "package-lock.json",
    );
    expect(texts.length).toBeGreaterThan(200);
    const found = texts.flatMap((path) => {
      const text = textOf(path);
      return banned.filter((word) => text.includes(word)).map((word) => `${path}: ${word}`);
    });
    expect(found).toEqual([]);
  });

  it("every property and every sample of the tests names its seed, so that what fails once fails again", () => {
    const calls = files
      .filter((path) => /^tests\/.*\.tsx?$/.test(path))
      .flatMap((path) =>
        callsOf(textOf(path), /\bfc\s*\.(assert|check|sample)\(/g).map((call) => ({ path, call })),
      );
    expect(calls.length).toBeGreaterThan(80);
    expect(calls.filter(({ call }) => !/\bseed\b/.test(call))).toEqual([]);
    expect(callsOf("ask(one(a, (b) => b > 0)); seed", /\bask\(/g)).toEqual(["ask(one(a, (b) => b > 0))"]);
  });

  it("every document that a document points to is there", () => {
    const broken = files
      .filter((path) => path.endsWith(".md"))
      .flatMap((path) =>
        [...textOf(path).matchAll(/\]\((?!https?:|#)([^)#\s]+)/g)]
          .map(([, target]) => new URL(target, `file:///${path}`).pathname.slice(1))
          .filter(
            (target) =>
              !files.some((file) => file === target || file.startsWith(`${target.replace(/\/$/, "")}/`)),
          )
          .map((target) => `${path} -> ${target}`),
      );
    expect(broken).toEqual([]);
  });
});

import { resolve } from "node:path";
import { constants } from "node:zlib";
import react from "@vitejs/plugin-react";
import compression from "compression";
import subsetFont from "subset-font";
import type { Plugin } from "vite";
import { VitePWA } from "vite-plugin-pwa";
import { defineConfig } from "vitest/config";
import { caution } from "./src/report/caution.ts";

/** Tests that start processes, threads or a browser: one file at a time, when the others are done. */
const HEAVY = ["tests/browser/**/*.test.ts", "tests/cli/**/*.test.ts", "tests/workers/**/*.test.ts"];

/** React's live reload runs an inline script, which the page's strict policy bars: only the built page keeps it. */
const openForDevelopment: Plugin = {
  name: "no-policy-while-serving",
  apply: "serve",
  transformIndexHtml: (html) => html.replace(/<meta\s+http-equiv="Content-Security-Policy"[^>]*>/, ""),
};

/** What stands on the page before the program does is said in the program's own words. */
const cautionFirst: Plugin = {
  name: "caution-before-the-program",
  transformIndexHtml: (html) => html.replace("%CAUTION%", caution),
};

const program = resolve(import.meta.dirname, "src/app/main.tsx");
/** Page and search worker are built as one: what both need is one file, loaded once. */
const oneBuild: Plugin = {
  name: "worker-in-the-same-build",
  apply: "build",
  enforce: "pre",
  buildStart() {
    // asked for by src/app/start.ts as soon as the first words are drawn: it belongs to the first load like what begins it
    this.emitFile({ type: "chunk", id: program, name: "main" });
  },
  transform(code, id) {
    const written = 'new URL("./search.worker.ts", import.meta.url)';
    if (!id.endsWith("/workers/early.ts")) return;
    if (!code.includes(written)) this.error(`expected ${written} in ${id}`);
    const worker = resolve(import.meta.dirname, "workers/search.worker.ts");
    const file = this.emitFile({ type: "chunk", id: worker, name: "search" });
    return code.replace(written, `import.meta.ROLLUP_FILE_URL_${file}`);
  },
};

/** Leaves out the bodies of functions and methods; who calls one all the same is told. */
const leaveOut = (code: string, heads: readonly string[], missing: (head: string) => never): string =>
  heads.reduce((rest, head) => {
    const escaped = head.replace(/[$(]/g, "\\$&");
    const [body, indent] = new RegExp(`^( *)${escaped}\\([^]*?^\\1}$`, "m").exec(rest) ?? [];
    if (body === undefined) return missing(head);
    return rest.replace(
      body,
      // which one, the stack says
      () => `${indent}${head}() { throw new Error("left out of the build"); }`,
    );
  }, code);

/** What src/quantity/units.ts never asks of a unit: it reads texts, and writes numbers itself. */
const unwritten = ["simplify ", "format ", "function _split ", "function _choosePrefix ", "function _toSI "];
/** The library's own units are left out too (src/quantity/units.ts says why). */
const ownUnits: Plugin = {
  name: "own-units",
  apply: "build",
  transform(code, id) {
    if (id.endsWith("/unitmath/src/Unit.js"))
      return leaveOut(code, unwritten, (head) => this.error(`expected ${head} in ${id}`));
    if (!id.endsWith("/unitmath/src/BuiltIns.js")) return;
    const quantities = /^export const baseQuantities = .*$/m.exec(code);
    if (!quantities) return this.error(`expected baseQuantities in ${id}`);
    return `${quantities[0]}\nexport const quantities = {}, unitSystems = {}, prefixes = {}, units = {}`;
  },
};

/**
 * What src/purchase/program.ts never asks of the solver: models as text, models made smaller first, several aims at
 * once, other orders of branching and cuts, words for who debugs it, and changes of a model that is solved already.
 */
const unasked = [
  "to_JSON",
  "from_JSON",
  "Polyopt",
  "createEnhancedBranchAndCutService",
  "createIncrementalBranchAndCutService",
  "applyMIRCuts",
  "computeFractionalVolume",
  "countIntegerValues",
  "getFractionalVarWithLowestCost",
  "addLowerBoundMIRCut",
  "addUpperBoundMIRCut",
  "log",
  "WarnOnTypos",
  "CleanObjectiveAttributes",
  "updateRightHandSide",
  "updateConstraintCoefficient",
  "updateCost",
  "removeConstraint",
  "removeVariable",
  "presolve",
  "tightenCoefficients",
  "removeRedundantConstraints",
  "putInBase",
  "takeOutOfBase",
];
const ownPrograms: Plugin = {
  name: "own-programs",
  apply: "build",
  transform(code, id) {
    if (!id.endsWith("/javascript-lp-solver/dist/index.browser.mjs")) return;
    return leaveOut(
      code,
      unasked.map((name) => `function ${name}`),
      (head) => this.error(`expected ${head} in ${id}`),
    );
  },
};

/**
 * What the parser does not need of its library: the guard against values that hold themselves, since it reads JSON,
 * messages, since src/model/issues.ts has its own, JSON Schema, which only the command line writes, and texts in the
 * form of an address, a date or the like.
 */
const unread: readonly (readonly [string | RegExp, string])[] = [
  ["core.config({ memoizer: core.memoizer() });", "{}"],
  ["core.config(en());", "{}"],
  ['import en from "../locales/en.js";', ""],
  [/^ *inst\._zod\.processJSONSchema = .*$/gm, ""],
  [
    'import * as processors from "../core/json-schema-processors.js";',
    'const leftOut = () => { throw new Error("left out of the build"); };',
  ],
  [
    'import { createStandardJSONSchemaMethod, createToJSONSchemaMethod } from "../core/to-json-schema.js";',
    "",
  ],
  [/^( {4}_ZodString\.init\(inst, def\);\n})(, {[\s\S]*?^})\);/m, "$1);"],
  [/createStandardJSONSchemaMethod|createToJSONSchemaMethod|processors\.aggregateChecks/g, "leftOut"],
];
const ownWords: Plugin = {
  name: "own-words",
  apply: "build",
  transform(code, id) {
    if (!id.endsWith("/zod/v4/classic/schemas.js")) return;
    return unread.reduce((rest, [what, instead]) => {
      const left = rest.replace(what, instead);
      return left === rest ? this.error(`expected ${what} in ${id}`) : left;
    }, code);
  },
};

/** `npm start` packs what it sends, as any host would. */
const packed: Plugin = {
  name: "packed-preview",
  configurePreviewServer: (server) =>
    void server.middlewares.use(
      compression({ brotli: { params: { [constants.BROTLI_PARAM_QUALITY]: 5 } } }) as never,
    ),
};

/** What no word of the program holds, of the letters that every keyboard has. */
const unspoken = "\\^`{|}~";
/** What the program's own words are written in; other letters of the user's come in a file of their own. */
const letters = {
  first: `${String.fromCharCode(...Array.from({ length: 95 }, (_, at) => 32 + at).filter((code) => !unspoken.includes(String.fromCharCode(code))))}’“”‘–—…°×−·′″²³¹⁰⁴⁵⁶⁷⁸⁹⁻½¼¾✕▲▸←→\u00a0\u2009`,
  second: `${unspoken}ÀÁÂÃÄÅÆÇÈÉÊËÌÍÎÏÐÑÒÓÔÕÖØÙÚÛÜÝÞßàáâãäåæçèéêëìíîïðñòóôõöøùúûüýþÿ`,
  range: "U+5C,U+5E,U+60,U+7B-7E,U+C0-D6,U+D8-F6,U+F8-FF",
};
/** The figures that the page asks for. Kerning is a tenth of the bytes and hardly seen in lettering; hints are for screens of before 2010, and half of the bytes. */
const cut = { targetFormat: "woff2", keepFeatures: ["tnum", "lnum"], noHinting: true } as const;
/** Three faces of some 230 glyphs each are cut to what is on the first page. */
const cutFonts: Plugin = {
  name: "cut-fonts",
  apply: "build",
  // the words of the first page are all in this face: asked for with the styles, it comes before they are drawn
  transformIndexHtml: {
    order: "post",
    handler: (_, { bundle = {} }) =>
      Object.keys(bundle)
        .filter((name) => /barlow[^/]*-400-normal[^/]*\.woff2$/.test(name) && !name.endsWith("-more.woff2"))
        .map((name) => ({
          tag: "link",
          attrs: { rel: "preload", as: "font", type: "font/woff2", href: `/${name}`, crossorigin: "" },
          injectTo: "head",
        })),
  },
  async generateBundle(_, bundle) {
    const sheets = Object.values(bundle).filter((file) => file.fileName.endsWith(".css"));
    for (const font of Object.values(bundle)) {
      if (font.type !== "asset" || !font.fileName.endsWith(".woff2")) continue;
      const whole = Buffer.from(font.source);
      const more = font.fileName.replace(".woff2", "-more.woff2");
      font.source = await subsetFont(whole, letters.first, cut);
      this.emitFile({
        type: "asset",
        fileName: more,
        source: await subsetFont(whole, letters.second, cut),
      });
      for (const sheet of sheets) {
        if (sheet.type !== "asset") continue;
        const face = [...`${sheet.source}`.matchAll(/@font-face\{[^}]*\}/g)].find(([rule]) =>
          rule.includes(font.fileName),
        );
        if (face)
          sheet.source = `${sheet.source}${face[0].replace(font.fileName, more).replace("}", `;unicode-range:${letters.range}}`)}`;
      }
    }
  },
};

/** After the first visit the program needs no network; a new build takes over when its last page is closed. */
const offline = VitePWA({
  injectRegister: false,
  workbox: {
    globPatterns: ["**/*.{html,js,css,woff2,svg,png}"],
    inlineWorkboxRuntime: true,
    sourcemap: false,
  },
  manifest: {
    id: "/",
    name: "Mastwright",
    short_name: "Mastwright",
    description: "Finds the cheapest safe way to put antennas in the air, and proves it.",
    start_url: "/",
    display: "standalone",
    background_color: "#eff2e8",
    theme_color: "#eff2e8",
    icons: [
      { src: "icon-192.png", sizes: "192x192", type: "image/png" },
      { src: "icon-512.png", sizes: "512x512", type: "image/png" },
      { src: "icon-512.png", sizes: "512x512", type: "image/png", purpose: "maskable" },
      { src: "icon.svg", sizes: "any", type: "image/svg+xml" },
    ],
  },
});

/** What begins to work as soon as it is loaded: packed with others, it would begin wherever they are needed. */
const begins = /\/(index\.html|start\.ts|main\.tsx|search\.worker\.ts|share-worker\.ts)$/;
/** What needs a document: the app, and what the bundler itself adds for a page (its names begin with a zero byte). */
const ofPage = (id: string) => id.includes("/src/app/") || id.startsWith("\0");
const firstLoad = ["$initial" as const];
/**
 * The parser with its schemas: the worker runs them at once, the page in pieces (src/app/state/reader.ts). What both need
 * before must import none of it.
 */
const ofParser = [
  {
    name: "schemas",
    test: /\/node_modules\/zod\/(?!.*\/locales\/)|\/src\/(quantity\/schema|model\/(fields|refuse))\.ts$/,
  },
  { name: "steel", test: /\/src\/model\/steel-rows\.ts$/ },
  { name: "rows", test: /\/src\/model\/(catalog|ground-rows|rule-set|supply|work)\.ts$/ },
  {
    name: "parser",
    test: /\/src\/model\/(parse|issues|known-keys|references|migrate|study|design|ranges|barred|hills|mast-givens)\.ts$/,
  },
].map((group) => ({ ...group, tags: firstLoad }));
const parses = (id: string) => ofParser.some(({ test }) => test.test(id));
/** What the page runs at once: all that the program imports. What is left of the first load only the worker runs. */
const ofProgram = new Set<string>();
interface Imports {
  getModuleInfo(id: string): { readonly importedIds: readonly string[] } | null;
}
const isOfProgram = (id: string, imports: Imports): boolean => {
  const reach = (from: string): void => {
    if (ofProgram.has(from)) return;
    ofProgram.add(from);
    imports.getModuleInfo(from)?.importedIds.forEach(reach);
  };
  reach(program);
  return ofProgram.has(id);
};
/**
 * Files of the first load packed together are a tenth smaller than apart. What page and worker share must hold nothing
 * of React or of the page; what only later pages read stays out of both.
 */
const together = [
  { name: "react", test: /\/node_modules\/(react|react-dom|scheduler)\// },
  // the little that runs before the first words are drawn
  { name: "early", test: /\/workers\/early\.ts$|\0vite\/preload-helper/ },
  {
    name: (id: string, imports: Imports) => (isOfProgram(id, imports) ? "core" : "tree"),
    tags: firstLoad,
    test: (id: string) => !ofPage(id) && !begins.test(id) && !parses(id) && !id.includes("/locales/"),
  },
  ...ofParser,
  {
    name: "desk",
    tags: firstLoad,
    test: (id: string) => ofPage(id) && !begins.test(id) && !id.endsWith(".css"),
  },
];

export default defineConfig({
  root: "src/app",
  // every view is behind the fragment of one page: any other address is none, and is told so
  appType: "mpa",
  plugins: [
    react(),
    cautionFirst,
    openForDevelopment,
    oneBuild,
    ownUnits,
    ownPrograms,
    ownWords,
    cutFonts,
    packed,
    offline,
  ],
  resolve: {
    // the same library without what it brings along for browsers of ten years ago
    alias: {
      "unitmath/dist/UnitMath.js": resolve(import.meta.dirname, "node_modules/unitmath/src/Unit.js"),
    },
  },
  worker: { format: "es" },
  preview: {
    headers: {
      "X-Content-Type-Options": "nosniff",
      "X-Frame-Options": "DENY",
      "Referrer-Policy": "no-referrer",
      "Cross-Origin-Opener-Policy": "same-origin",
    },
  },
  build: {
    outDir: "../../dist",
    emptyOutDir: true,
    target: "es2022",
    // What is asked for later finds its scripts by itself and is told of its styles alone: the list of scripts is made in
    // a document, and a worker has none. The program is asked for by a document.
    modulePreload: {
      // a browser of before 2023 asks for the scripts a moment later, and runs the same
      polyfill: false,
      resolveDependencies: (file, files, { hostType }) =>
        hostType === "html" || /\/main-[^/]*\.js$/.test(file)
          ? files
          : files.filter((one) => one.endsWith(".css")),
    },
    rolldownOptions: { output: { codeSplitting: { groups: together } } },
  },
  test: {
    root: ".",
    // docs/validation.md is written when every file that holds check values has left its rows
    globalSetup: ["tests/support/validation-page.ts"],
    testTimeout: 120_000,
    hookTimeout: 120_000,
    // plain Node and no jsdom: files share a few threads instead of starting a process each
    pool: "threads",
    projects: [
      {
        extends: true,
        test: {
          name: "quick",
          include: ["tests/**/*.test.ts", "tests/**/*.test.tsx"],
          exclude: HEAVY,
          sequence: { groupOrder: 0 },
        },
      },
      {
        extends: true,
        test: { name: "whole", include: HEAVY, fileParallelism: false, sequence: { groupOrder: 1 } },
      },
    ],
  },
});

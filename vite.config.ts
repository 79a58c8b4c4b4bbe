import react from "@vitejs/plugin-react";
import type { Plugin } from "vite";
import { defineConfig } from "vitest/config";

/** Tests that start processes, threads or a browser: one file at a time, when the others are done. */
const HEAVY = ["tests/browser/**/*.test.ts", "tests/cli/**/*.test.ts", "tests/workers/**/*.test.ts"];

/** React's live reload runs an inline script, which the page's strict policy bars: only the built page keeps it. */
const openForDevelopment: Plugin = {
  name: "no-policy-while-serving",
  apply: "serve",
  transformIndexHtml: (html) => html.replace(/<meta\s+http-equiv="Content-Security-Policy"[^>]*>/, ""),
};

export default defineConfig({
  root: "src/app",
  publicDir: false,
  plugins: [react(), openForDevelopment],
  worker: { format: "es" },
  build: { outDir: "../../dist", emptyOutDir: true, target: "es2022" },
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

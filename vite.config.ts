import react from "@vitejs/plugin-react";
import { defineConfig } from "vitest/config";

/** Tests that start processes, threads or a browser: one file at a time, when the others are done. */
const HEAVY = ["tests/browser/**/*.test.ts", "tests/cli/**/*.test.ts", "tests/workers/**/*.test.ts"];

export default defineConfig({
  root: "src/app",
  publicDir: false,
  plugins: [react()],
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

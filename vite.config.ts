import react from "@vitejs/plugin-react";
import { defineConfig } from "vitest/config";

export default defineConfig({
  root: "src/app",
  publicDir: false,
  plugins: [react()],
  worker: { format: "es" },
  build: { outDir: "../../dist", emptyOutDir: true, target: "es2022" },
  test: {
    root: ".",
    include: ["tests/**/*.test.ts", "tests/**/*.test.tsx"],
    // docs/validation.md is written when every file that holds check values has left its rows
    globalSetup: ["tests/support/validation-page.ts"],
    testTimeout: 120_000,
    hookTimeout: 120_000,
    // plain Node and no jsdom: files share a few threads instead of starting a process each
    pool: "threads",
  },
});

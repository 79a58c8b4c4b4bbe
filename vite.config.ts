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
    testTimeout: 60_000,
    fileParallelism: true,
  },
});

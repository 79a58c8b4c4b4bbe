import { existsSync } from "node:fs";
import { resolve } from "node:path";
import react from "@vitejs/plugin-react";
import { defineConfig, type Plugin } from "vite";

/** The page on invented figures: `npx vite build -c tests/app/support/dev.config.ts`. Nothing of this is shipped. */
const root = resolve(import.meta.dirname, "../../..");
const stand = (name: string) => resolve(import.meta.dirname, name);
const standIns: Record<string, string> = {
  "workers/client.ts": stand("fake-client.ts"),
  "model/default-catalog.ts": stand("fake-model.ts"),
  "model/starting-studies.ts": stand("fake-model.ts"),
  "model/parse.ts": stand("fake-model.ts"),
};
const all = process.env.FAKE === "client" ? ["workers/client.ts"] : Object.keys(standIns);

const fakes: Plugin = {
  name: "stand-ins",
  enforce: "pre",
  resolveId(id) {
    const wanted = all.find((end) => id.endsWith(end));
    return wanted && existsSync(standIns[wanted]) ? standIns[wanted] : undefined;
  },
};

export default defineConfig({
  root: resolve(root, "src/app"),
  publicDir: false,
  plugins: [fakes, react()],
  worker: { format: "es" },
  build: { outDir: "/tmp/mastwright-look", emptyOutDir: true, target: "es2022" },
});

import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { brotliCompressSync } from "node:zlib";
import type { Browser, BrowserContextOptions, Page } from "playwright-core";
import { build, type PreviewServer, preview } from "vite";
import { launch } from "./chromium.ts";

const root = resolve(import.meta.dirname, "../..");
const configFile = join(root, "vite.config.ts");

/** The program as it is shipped, built once, served on a free port, in a browser of the machine. */
export class Desk {
  private constructor(
    private readonly server: PreviewServer,
    private readonly browser: Browser,
    private readonly folder: string,
    readonly address: string,
  ) {}

  static async open(): Promise<Desk> {
    const folder = mkdtempSync(join(tmpdir(), "mastwright-"));
    const out = { build: { outDir: folder, emptyOutDir: true } };
    // the tests' own NODE_ENV would build React's development version, which nobody is served
    const was = process.env.NODE_ENV;
    process.env.NODE_ENV = "production";
    await build({ configFile, logLevel: "error", ...out });
    process.env.NODE_ENV = was;
    const server = await preview({
      configFile,
      logLevel: "error",
      ...out,
      preview: { port: 0, host: "127.0.0.1" },
    });
    const bound = server.httpServer.address();
    const port = typeof bound === "object" && bound ? bound.port : 0;
    return new Desk(server, await launch(), folder, `http://127.0.0.1:${port}`);
  }

  /** A page with its own storage, and a list of what went wrong on it. */
  async page(options: BrowserContextOptions = {}, path = "/"): Promise<Sheet> {
    const context = await this.browser.newContext({ viewport: { width: 1400, height: 1000 }, ...options });
    const page = await context.newPage();
    const wrong: string[] = [];
    const away: string[] = [];
    page.on("console", (message) => {
      if (message.type() === "error" || message.type() === "warning") wrong.push(message.text());
    });
    page.on("pageerror", (error) => wrong.push(error.message));
    page.on("request", (request) => {
      const url = request.url();
      if (!url.startsWith(this.address) && !/^(data|blob):/.test(url)) away.push(url);
    });
    await page.goto(this.address + path);
    return { page, wrong, away, close: () => context.close() };
  }

  /** Bytes of one file of the build as a host sends it. */
  packedSize(path: string): number {
    const file = readFileSync(join(this.folder, path === "/" ? "index.html" : path));
    return /\.(woff2|png)$/.test(path) ? file.length : brotliCompressSync(file).length;
  }

  async close(): Promise<void> {
    await this.browser.close();
    await this.server.close();
    rmSync(this.folder, { recursive: true, force: true });
  }
}

export interface Sheet {
  readonly page: Page;
  readonly wrong: readonly string[];
  /** Requests that left the page's own address. */
  readonly away: readonly string[];
  readonly close: () => Promise<void>;
}

export const phone = { viewport: { width: 380, height: 800 }, hasTouch: true } as const;

/** Waits for the proof of whatever the page is asked. */
export const proven = (page: Page) =>
  page.getByTestId("claim").filter({ hasText: "nothing cheaper is safe" }).waitFor({ timeout: 90_000 });

export const total = async (page: Page): Promise<number> =>
  Number((await page.locator(".big .fig").first().textContent())?.replace(/\D/g, ""));

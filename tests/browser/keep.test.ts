import { readFileSync } from "node:fs";
import type { BrowserContext, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import type { KeptStudy } from "../../src/app/state/cupboard.ts";
import { Desk, phone, proven } from "./desk.ts";

let desk: Desk;
beforeAll(async () => {
  desk = await Desk.open();
}, 180_000);
afterAll(() => desk?.close());
const LONG = 180_000;
const DEMO = "Upper pasture, first mast";

const turnTo = (page: Page, hash: string) =>
  page.evaluate((to) => {
    location.hash = to;
  }, hash);
const studies = async (page: Page) => {
  await turnTo(page, "#/studies");
  await page.getByRole("heading", { name: "What do you work on?" }).waitFor();
};
const listed = (page: Page) =>
  page
    .getByRole("table", { name: "Studies", exact: true })
    .getByRole("button", { name: /^Name of the study/ })
    .allInnerTexts();
const setFrost = async (page: Page, text: string) => {
  await page.bringToFront();
  await turnTo(page, "#/answer");
  await page.getByRole("button", { name: /^Frost depth:/ }).click();
  await page.getByRole("textbox", { name: "Frost depth" }).fill(text);
  await page.keyboard.press("Enter");
};
const frost = async (page: Page) => {
  await turnTo(page, "#/answer");
  return page.getByRole("button", { name: /^Frost depth:/ }).textContent();
};
const saved = (page: Page) =>
  page
    .locator(".study")
    .getByText(/saved \d\d:\d\d/)
    .waitFor();
/** The study that is kept first, as the browser has it; or another put in its place. */
const firstKept = (page: Page, put?: object) =>
  page.evaluate(
    (study) =>
      new Promise<KeptStudy>((done) => {
        const asked = indexedDB.open("mastwright");
        asked.onsuccess = () => {
          const shelf = asked.result.transaction("studies", "readwrite").objectStore("studies");
          const request: IDBRequest = study ? shelf.put(study) : shelf.getAll();
          request.onsuccess = () => {
            asked.result.close();
            done(request.result[0]);
          };
        };
      }),
    put,
  );
const second = async (context: BrowserContext): Promise<Page> => {
  const page = await context.newPage();
  await page.goto(desk.address);
  await page.locator(".study-name").waitFor();
  return page;
};
const openFile = (page: Page, name: string, text: string) =>
  page
    .getByLabel("Read a file")
    .setInputFiles({ name, mimeType: "application/json", buffer: Buffer.from(text) });

test(
  "several studies: begun, renamed, copied, deleted and put back, each as it was left",
  async () => {
    const { page, wrong, close } = await desk.page();
    await setFrost(page, "2 ft");
    await saved(page);
    await studies(page);
    await page.getByLabel("Begin a new study").getByRole("button").nth(2).click();
    await page.waitForFunction((demo) => document.querySelector(".study-name")?.textContent !== demo, DEMO);
    await page.getByRole("button", { name: `Open ${DEMO}` }).waitFor();
    expect(await listed(page)).toHaveLength(2);
    await page.getByRole("button", { name: `Copy ${DEMO}` }).click();
    await page.getByRole("button", { name: `Delete ${DEMO}, copy` }).waitFor();
    expect(await frost(page)).toMatch(/2 ft/);
    await studies(page);
    await page.getByRole("button", { name: `Name of the study: ${DEMO}, copy` }).click();
    await page.getByRole("textbox", { name: "Name of the study" }).fill("Lower pasture");
    await page.keyboard.press("Enter");
    await page.getByRole("button", { name: "Delete Lower pasture" }).click();
    await page.getByRole("button", { name: "Put back Lower pasture" }).waitFor();
    expect(await listed(page)).not.toContain("Lower pasture");
    expect(await page.locator(".study-name").textContent()).not.toBe("Lower pasture");
    await page.getByRole("button", { name: "Put back Lower pasture" }).click();
    await page.getByRole("button", { name: "Open Lower pasture" }).click();
    expect(await frost(page)).toMatch(/2 ft/);
    await page.reload();
    await page.locator(".study-name").getByText("Lower pasture").waitFor();
    expect(wrong).toEqual([]);
    await close();
  },
  LONG,
);

test(
  "a version is kept by name, looked at, gone back to, and Undo outlives the page",
  async () => {
    const { page, wrong, close } = await desk.page();
    const first = await frost(page);
    await setFrost(page, "2 ft");
    await studies(page);
    await page.getByLabel("Keep it as it stands now").fill("two feet of frost");
    await page.getByRole("button", { name: "Keep", exact: true }).click();
    await page.getByRole("button", { name: "Look at two feet of frost" }).waitFor();
    await page.getByRole("button", { name: "Delete the version two feet of frost" }).click();
    await page.getByText("“two feet of frost” is deleted.").waitFor();
    await page.getByRole("button", { name: "Put it back" }).click();
    await page.getByRole("button", { name: "Look at two feet of frost" }).waitFor();
    await setFrost(page, "5 ft");
    await studies(page);
    await page.getByRole("button", { name: "Look at two feet of frost" }).click();
    expect(await frost(page)).toMatch(/2 ft/);
    await page.getByText(/You look at “two feet of frost”/).waitFor();
    await page.getByRole("button", { name: /^Frost depth:/ }).click();
    await page.getByRole("textbox", { name: "Frost depth" }).fill("3 ft");
    await page.keyboard.press("Enter");
    await page.getByText(/An earlier version lies open/).waitFor();
    await page.keyboard.press("Escape");
    await page.getByRole("button", { name: "Return to the present" }).click();
    expect(await frost(page)).toMatch(/5 ft/);
    await studies(page);
    await page.getByRole("button", { name: "Go back to two feet of frost" }).click();
    expect(await frost(page)).toMatch(/2 ft/);
    await page.waitForTimeout(200);
    await page.reload();
    await page.locator(".study-name").waitFor();
    expect(await frost(page)).toMatch(/2 ft/);
    for (const words of [/5 ft/, /2 ft/]) {
      await page.getByRole("button", { name: "Undo" }).click();
      // right after a reload a step waits for the parser
      await expect.poll(() => frost(page)).toMatch(words);
    }
    await page.getByRole("button", { name: "Undo" }).click();
    await expect.poll(() => frost(page)).toBe(first);
    expect(wrong).toEqual([]);
    await close();
  },
  LONG,
);

test(
  "of two tabs the later one is told, keeps its hands off, and each of its three choices is kept",
  async () => {
    const { page, close } = await desk.page();
    await setFrost(page, "2 ft");
    await saved(page);
    const other = await second(page.context());
    await setFrost(other, "3 ft");
    await page.getByText(/Another tab changed this study/).waitFor();
    await setFrost(page, "4 ft");
    await page.waitForTimeout(600);
    expect(await frost(other)).toMatch(/3 ft/);
    expect(await page.locator(".study").textContent()).toMatch(/not saved/);
    await page.bringToFront();
    await page.getByRole("button", { name: /^Keep mine beside it/ }).click();
    await saved(page);
    await studies(page);
    await page.getByRole("button", { name: `Open ${DEMO}`, exact: true }).click();
    expect(await frost(page)).toMatch(/3 ft/);
    await setFrost(page, "6 ft");
    await other.getByText(/Another tab changed this study/).waitFor();
    await other.bringToFront();
    await other.getByRole("button", { name: /^Show what it wrote/ }).click();
    expect(await frost(other)).toMatch(/6 ft/);
    await setFrost(other, "1 ft");
    await page.getByText(/Another tab changed this study/).waitFor();
    await page.bringToFront();
    await page.getByRole("button", { name: /^Write mine over it/ }).click();
    await other.getByText(/Another tab changed this study/).waitFor();
    await page.reload();
    await page.locator(".study-name").waitFor();
    expect(await frost(page)).toMatch(/6 ft/);
    await close();
  },
  LONG,
);

test(
  "everything goes into one file and comes back into an empty browser, versions and all",
  async () => {
    const { page, close } = await desk.page();
    await setFrost(page, "2 ft");
    await studies(page);
    await page.getByLabel("Keep it as it stands now").fill("as drawn");
    await page.getByRole("button", { name: "Keep", exact: true }).click();
    await page.getByRole("button", { name: "Look at as drawn" }).waitFor();
    await page.getByLabel("Begin a new study").getByRole("button").nth(1).click();
    await page.getByRole("button", { name: `Open ${DEMO}` }).waitFor();
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: "Write everything to one file" }).click(),
    ]);
    const text = readFileSync((await download.path())!, "utf8");
    await close();
    const fresh = await desk.page();
    await studies(fresh.page);
    await openFile(fresh.page, "everything.json", text);
    const found = fresh.page.getByRole("table", { name: "What it brings" });
    await found.waitFor();
    expect(await found.locator("tr").count()).toBe(2);
    expect(await fresh.page.getByRole("button", { name: `Open ${DEMO}` }).count()).toBe(0);
    await fresh.page.getByRole("button", { name: "Take these 2" }).click();
    await fresh.page.getByRole("button", { name: `Open ${DEMO}` }).click();
    await fresh.page.getByRole("button", { name: "Look at as drawn" }).waitFor();
    expect(await frost(fresh.page)).toMatch(/2 ft/);
    expect(fresh.wrong).toEqual([]);
    await fresh.close();
  },
  LONG,
);

test(
  "a link brings a study to another browser, once, and a broken one is refused in words",
  async () => {
    const { page, close } = await desk.page();
    await setFrost(page, "2 ft 6 in");
    await studies(page);
    await page.getByRole("button", { name: "Make a link that holds this study" }).click();
    const link = await page.getByLabel("The link").inputValue();
    await close();
    const fresh = await desk.page({}, link.slice(desk.address.length));
    await fresh.page.getByRole("button", { name: "Take it" }).click();
    expect(await fresh.page.evaluate(() => location.hash)).toBe("#/studies");
    expect(await frost(fresh.page)).toMatch(/2\.5 ft/);
    await fresh.page.reload();
    await proven(fresh.page);
    expect(await fresh.page.getByText("nothing kept yet").count()).toBe(0);
    await turnTo(fresh.page, `${new URL(link).hash.slice(0, -12)}`);
    await fresh.page.getByText(/Nothing was taken.*cut short or changed/).waitFor();
    expect(fresh.wrong).toEqual([]);
    expect(fresh.away).toEqual([]);
    await fresh.close();
  },
  LONG,
);

test(
  "each file that is no study of ours is refused with its reason, and nothing changes",
  async () => {
    const { page, wrong, close } = await desk.page();
    await studies(page);
    const before = await listed(page);
    const cases = [
      ["{ mast", /isn’t JSON/],
      ["[]", /holds no study/],
      ['{"mastwright": 99, "name": "tomorrow"}', /99/],
      ['{"parcel": 2}', /newer version/],
      ['{"parcel": 1, "catalogs": []}', /at studies/],
    ] as const;
    for (const [text, words] of cases) {
      await openFile(page, "bad.json", text);
      await page.locator(".warn").filter({ hasText: words }).waitFor();
    }
    expect(await listed(page)).toEqual(before);
    expect(wrong).toEqual([]);
    await close();
  },
  LONG,
);

test(
  "what an earlier version kept is carried over once",
  async () => {
    const { page, close } = await desk.page();
    await setFrost(page, "2 ft");
    await saved(page);
    const { present } = (await firstKept(page)).history;
    await page.evaluate(
      (paper) =>
        new Promise<void>((done) => {
          localStorage.clear();
          sessionStorage.clear();
          localStorage.setItem("mastwright.paper.1", JSON.stringify({ paper, at: 5 }));
          indexedDB.deleteDatabase("mastwright").onsuccess = () => done();
        }),
      present,
    );
    await page.reload();
    await saved(page);
    expect(await frost(page)).toMatch(/2 ft/);
    expect(await page.evaluate(() => localStorage.getItem("mastwright.paper.1"))).toBeNull();
    await page.reload();
    await saved(page);
    await studies(page);
    expect(await listed(page)).toEqual([DEMO]);
    await close();
  },
  LONG,
);

/** Storage as a private window, a full disk or a damaged store gives it. */
const storage = (page: Page, how: "none" | "full" | "newer") =>
  page.addInitScript((kind) => {
    const fail = (name: string) => {
      throw new DOMException("refused for the test", name);
    };
    if (kind === "none")
      Object.defineProperty(window, "indexedDB", {
        value: { open: () => fail("SecurityError"), deleteDatabase: () => fail("SecurityError") },
      });
    if (kind === "newer")
      Object.defineProperty(IDBFactory.prototype, "open", { value: () => fail("VersionError") });
    if (kind === "full")
      Object.defineProperty(IDBObjectStore.prototype, "put", { value: () => fail("QuotaExceededError") });
  }, how);

for (const [how, words] of [
  ["none", /Nothing is kept in this browser/],
  ["full", /no room left/],
  ["newer", /newer version of this program/],
] as const)
  test(
    `where storage is ${how}, words say so and what is in memory goes to a file`,
    async () => {
      const { page, close } = await desk.page();
      await storage(page, how);
      await page.reload();
      await page.locator(".study-name").waitFor();
      await setFrost(page, "2 ft");
      await page.getByText(words).waitFor();
      expect(await page.locator(".study").textContent()).toMatch(/not saved/);
      const [download] = await Promise.all([
        page.waitForEvent("download"),
        page.getByRole("button", { name: "Write everything to a file" }).click(),
      ]);
      const file = JSON.parse(readFileSync((await download.path())!, "utf8"));
      expect(file.studies[0].study.site.frostDepth).toBe("2 ft");
      await close();
    },
    LONG,
  );

test(
  "a study that is damaged where it is kept is left as it is, said, and can be written out",
  async () => {
    const { page, close } = await desk.page();
    await setFrost(page, "2 ft");
    await saved(page);
    await firstKept(page, { ...(await firstKept(page)), history: { present: 7 } });
    await page.reload();
    await page.getByText(/can’t be read: what is kept of it is damaged/).waitFor();
    await proven(page);
    await studies(page);
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: "Write it as it is kept" }).click(),
    ]);
    expect(readFileSync((await download.path())!, "utf8")).toMatch(/"present": 7/);
    await close();
  },
  LONG,
);

test(
  "the page of studies fits a phone",
  async () => {
    const { page, close } = await desk.page(phone);
    await studies(page);
    await page.getByRole("button", { name: /^Copy/ }).click();
    await page.getByLabel("Keep it as it stands now").fill("a version with a name that is long");
    await page.getByRole("button", { name: "Keep", exact: true }).click();
    await page.getByRole("button", { name: /^Look at a version/ }).waitFor();
    await page.getByRole("button", { name: "Make a link that holds this study" }).click();
    await page.getByLabel("The link").waitFor();
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(380);
    await close();
  },
  LONG,
);

import { afterAll, beforeAll, expect, test } from "vitest";
import { Desk, proven } from "./desk.ts";

let desk: Desk;
beforeAll(async () => {
  desk = await Desk.open();
}, 180_000);
afterAll(() => desk?.close());
const LONG = 180_000;

test(
  "a price edited in the catalog changes the answer, says what it did, and can be taken back",
  async () => {
    const { page, wrong, close } = await desk.page();
    await proven(page);
    await page.keyboard.press("4");
    await page.getByRole("tab", { name: "Prices" }).click();
    await page.getByRole("button", { name: /^Price of permit/ }).click();
    await page.getByRole("textbox", { name: /^Price of permit/ }).fill("$1085");
    await page.keyboard.press("Enter");
    await page.getByText(/The answer is \$1,000 dearer, with the same mast/).waitFor({ timeout: 90_000 });
    await page.getByLabel("What your edit did").getByRole("button", { name: "Undo" }).click();
    expect(await page.getByRole("button", { name: /^Price of permit/ }).textContent()).toBe("$85");
    expect(wrong).toEqual([]);
    await close();
  },
  LONG,
);

test(
  "a section copied stands below its original, edits, and is deleted again",
  async () => {
    const { page, close } = await desk.page();
    await proven(page);
    await page.keyboard.press("4");
    const table = page.getByRole("table", { name: "Sections", exact: true });
    await table.waitFor();
    const rows = table.locator("tbody tr");
    const before = await rows.count();
    await page.getByRole("button", { name: "Copy this one" }).click();
    expect(await rows.count()).toBe(before + 1);
    await page.getByRole("button", { name: "Delete this one" }).click();
    expect(await rows.count()).toBe(before);
    await close();
  },
  LONG,
);

test(
  "a file is only looked at until Take, and a bad cell is refused with what was expected",
  async () => {
    const { page, close } = await desk.page();
    await proven(page);
    await page.keyboard.press("4");
    await page.getByRole("tab", { name: "Pipes" }).click();
    const file = page.getByLabel("Read a file");
    await file.setInputFiles({
      name: "pipes.csv",
      mimeType: "text/csv",
      buffer: Buffer.from("id,price\npipe-11,$111\npipe-8,eight\n"),
    });
    const preview = page.getByRole("table", { name: "What the file would change" });
    await preview.waitFor();
    expect(await preview.textContent()).toMatch(/✕ 3[\s\S]*price/);
    const price = page.getByRole("table", { name: "pipes" }).getByRole("button", { name: /^Price of/ });
    const all = () => price.allInnerTexts();
    expect(await all()).not.toContain("111");
    await page.getByRole("button", { name: "Take 1 row" }).click();
    expect(await all()).toContain("111");
    await close();
  },
  LONG,
);

test(
  "a study saved to a file opens again as it was, and a file that is no study changes nothing",
  async () => {
    const { page, close } = await desk.page();
    await proven(page);
    const menu = page.locator("details.menu");
    await menu.locator("summary").click();
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: "Save to a file" }).click(),
    ]);
    const path = await download.path();
    await page.getByLabel("Open a file").setInputFiles({
      name: "bad.json",
      mimeType: "application/json",
      buffer: Buffer.from('{"mastwright": 1}'),
    });
    await page.getByText(/Not opened/).waitFor();
    await page.getByLabel("Open a file").setInputFiles(path);
    await page.waitForFunction(() => !document.querySelector("details.menu")?.hasAttribute("open"));
    expect(await page.locator(".study-name").textContent()).toBe("Upper pasture, first mast");
    await close();
  },
  LONG,
);

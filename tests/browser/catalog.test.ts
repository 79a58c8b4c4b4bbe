import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
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

const shelf = async (page: Page, name: string) => {
  await page.evaluate(() => {
    location.hash = "/catalog";
  });
  await page.getByRole("tab", { name, exact: true }).click();
};
const writes = async (page: Page, what: string): Promise<string> => {
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: what }).click(),
  ]);
  return readFileSync((await download.path())!, "utf8");
};
const reads = (page: Page, name: string, text: string) =>
  page
    .getByLabel("Read a file")
    .setInputFiles({ name, mimeType: "application/octet-stream", buffer: Buffer.from(text) });

test(
  "rule sets and the price book go out as CSV and JSON, and come back with each bad cell's row and column",
  async () => {
    const { page, wrong, close } = await desk.page();
    await shelf(page, "Rules");
    const rules = await writes(page, "Write CSV");
    await reads(page, "rules.csv", rules);
    await page.getByText(/rules? says? what the catalog says already|rows say what/).waitFor();
    const preview = page.getByRole("table", { name: "What the file would change" });
    const [header, first] = rules.split("\n");
    const guy = header.split(",").indexOf("guy.required");
    const cells = first.split(",");
    expect(guy).toBeGreaterThan(0);
    await reads(page, "rules.csv", `id,guy.required\n${cells[0]},2.5\nmine,lots\n`);
    await preview.filter({ hasText: /✕ 3[\s\S]*guy\.required/ }).waitFor();
    await page.getByRole("button", { name: "Take 1 row" }).click();
    await page.getByRole("table", { name: "Rule sets" }).getByText("2.5", { exact: true }).first().waitFor();
    await shelf(page, "Prices");
    const prices = await writes(page, "Write CSV");
    expect(prices).toMatch(/^for,price\n[\s\S]*permit,\$85/);
    await reads(
      page,
      "prices.csv",
      prices.replace("permit,$85", "permit,$185").replace(/^forms,.*$/m, "forms,dear"),
    );
    await preview.filter({ hasText: /✕ \d+[\s\S]*forms[\s\S]*dear[\s\S]*\$185, was \$85/ }).waitFor();
    await page.getByRole("button", { name: "Take 1 price" }).click();
    expect(await page.getByRole("button", { name: /^Price of permit/ }).textContent()).toBe("$185");
    expect(JSON.parse(await writes(page, "Write JSON")).permit).toBe("$185");
    await page.getByRole("button", { name: "Undo" }).first().click();
    expect(await page.getByRole("button", { name: /^Price of permit/ }).textContent()).toBe("$85");
    expect(wrong).toEqual([]);
    await close();
  },
  LONG,
);

test(
  "each file that a shelf can't take is refused in words",
  async () => {
    const { page, wrong, close } = await desk.page();
    await shelf(page, "Pipes");
    for (const [name, text, words] of [
      ["bad.json", "{", /can’t be read/],
      ["bad.json", "7", /expected a list of rows/],
      ["bad.csv", "id,weigth\npipe-8,3\n", /weigth/],
      ["bad.csv", "name\nx\n", /no column of keys/],
      ["bad.csv", "id,price\npipe-8,$1,$2\n", /3 cells/],
      ["bad.csv", "id,price\npipe-8,$1\npipe-8,$2\n", /second time/],
    ] as const) {
      await reads(page, name, text);
      await page.getByLabel("From a file").filter({ hasText: words }).waitFor();
    }
    await shelf(page, "Prices");
    await reads(page, "bad.csv", "what,price\npermit,$1\n");
    await page
      .getByLabel("From a file")
      .filter({ hasText: /the columns "for, price"/ })
      .waitFor();
    expect(wrong).toEqual([]);
    await close();
  },
  LONG,
);

test(
  "how concrete and bars are sold is edited like any price, and taken away and put back",
  async () => {
    const { page, wrong, close } = await desk.page();
    await shelf(page, "Prices");
    const bagPrice = page.getByRole("button", { name: /^Price of bag of concrete/ });
    await bagPrice.click();
    await page.getByRole("textbox", { name: "Price of bag of concrete" }).fill("$7.25");
    await page.keyboard.press("Enter");
    expect(await bagPrice.textContent()).toBe("$7.25");
    await page.getByRole("button", { name: "Concrete by the bag: take out" }).click();
    expect(await bagPrice.count()).toBe(0);
    await page.getByRole("button", { name: "Concrete by the truck: take out" }).click();
    await page.getByRole("button", { name: "Undo" }).first().click();
    await page.getByRole("button", { name: "Undo" }).first().click();
    expect(await bagPrice.textContent()).toBe("$7.25");
    await page.getByLabel("Size of bar length 1").selectOption("#5");
    expect(await page.getByRole("button", { name: /^Price of bar length 1/ }).textContent()).toMatch(
      /^\$10(\.00)?$/,
    );
    await page.getByRole("button", { name: "Bars are sold in: add a length" }).click();
    await page.getByRole("button", { name: "Bar length 3: take out" }).click();
    expect(await page.getByRole("button", { name: /^Bar length \d: \d/ }).count()).toBe(2);
    expect(wrong).toEqual([]);
    await close();
  },
  LONG,
);

test(
  "a book of prices kept under a name is taken into another study, and Undo brings the former back",
  async () => {
    const { page, wrong, close } = await desk.page();
    await shelf(page, "Prices");
    const permit = page.getByRole("button", { name: /^Price of permit/ });
    await permit.click();
    await page.getByRole("textbox", { name: /^Price of permit/ }).fill("$300");
    await page.keyboard.press("Enter");
    await page.getByLabel("Keep this one as").fill("spring prices");
    await page.getByLabel("Books").getByRole("button", { name: "Keep", exact: true }).click();
    await page.getByRole("button", { name: "Take the book spring prices" }).waitFor();
    await page.evaluate(() => {
      location.hash = "/studies";
    });
    await page.getByLabel("Begin a new study").getByRole("button").nth(1).click();
    await shelf(page, "Prices");
    expect(await permit.textContent()).toBe("$85");
    await page
      .getByRole("table", { name: "Books" })
      .getByText("1 row and 1 price differ")
      .waitFor({ timeout: 8000 });
    await page.getByRole("button", { name: "Take the book spring prices" }).click();
    expect(await permit.textContent()).toBe("$300");
    await page.getByRole("button", { name: "Undo" }).first().click();
    expect(await permit.textContent()).toBe("$85");
    expect(wrong).toEqual([]);
    await close();
  },
  LONG,
);

test(
  "at 1400 px no column of the sections is cut, and a wall is shown with the digits of the file",
  async () => {
    const { page, close } = await desk.page();
    await proven(page);
    await page.evaluate(() => {
      location.hash = "/catalog";
    });
    await page.getByRole("cell", { name: "in the answer" }).waitFor();
    // the widest words of the last column come with the row that has too few
    await page.getByRole("cell", { name: "too few" }).first().waitFor({ timeout: 90_000 });
    const { over, cut } = await page.locator(".sections").evaluate((table) => {
      const frame = table.parentElement!;
      const right = frame.getBoundingClientRect().right;
      return {
        over: frame.scrollWidth - frame.clientWidth,
        cut: [...table.querySelectorAll("td:last-child > *")].filter(
          (words) => words.getBoundingClientRect().right > right,
        ).length,
      };
    });
    expect({ over, cut }).toEqual({ over: 0, cut: 0 });
    await page.getByRole("button", { name: /^Leg wall, measured of 13 in .+: 0\.060$/ }).waitFor();
    await close();
  },
  LONG,
);

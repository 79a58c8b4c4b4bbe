import { afterAll, beforeAll, expect, test } from "vitest";
import { Desk, phone, proven } from "./desk.ts";

let desk: Desk;
beforeAll(async () => {
  desk = await Desk.open();
}, 180_000);
afterAll(() => desk?.close());

test("a check opens to its sum with the judge's own figures, its source and a sketch, by keyboard alone", async () => {
  const { page, wrong, close } = await desk.page();
  await proven(page);
  const table = page.getByRole("table", { name: "Checks by share used" });
  const first = table.locator("tr.gov");
  const used = await first.locator("td").last().textContent();
  const title = (await first.getByRole("button").textContent())!.replace(/ governs$/, "");
  await first.getByRole("button").focus();
  await page.keyboard.press("Enter");
  const sum = page.getByRole("table", { name: `The sum: ${title}` });
  await sum.waitFor();
  const figures = (await sum.getByRole("row").allTextContents()).map((row) => row.replaceAll(",", ""));
  const numbers = (row: string) =>
    [...row.matchAll(/\d+(?:\.\d+)?(?= \D|$)/g)].map((found) => Number(found[0]));
  expect(figures).toHaveLength(4);
  const [asks, factor, holds] = figures.slice(0, 3).map((row) => numbers(row).at(-1)!);
  expect((asks * factor) / holds).toBeCloseTo(Number(used), 1);
  expect(figures[3].endsWith(used!)).toBe(true);
  expect(await page.getByRole("img", { name: `${title}, sketch not to scale` }).isVisible()).toBe(true);
  expect(await page.locator(".opened-in").textContent()).toMatch(/Source: \S.+ Load: \S/);
  await page.keyboard.press("Enter");
  expect(await sum.count()).toBe(0);
  expect(wrong).toEqual([]);
  await close();
}, 180_000);

test("a word of the trade says its line to the keyboard and goes with Escape; all are listed at the foot", async () => {
  const { page, close } = await desk.page();
  await proven(page);
  const word = page.locator(".sentence").getByRole("button", { name: "EHS" });
  await word.focus();
  const note = page.getByRole("tooltip");
  expect(await note.textContent()).toMatch(/stronger grade of guy strand/);
  expect(await word.getAttribute("aria-describedby")).toBe(await note.getAttribute("id"));
  await page.keyboard.press("Escape");
  expect(await note.count()).toBe(0);
  await page.getByText("Words of the trade").click();
  await page.locator(".words-list dt").first().waitFor();
  expect(await page.locator(".words-list dt").count()).toBeGreaterThan(45);
  await close();
}, 180_000);

test("a word pressed on the phone shows its line inside the screen", async () => {
  const { page, close } = await desk.page(phone);
  await proven(page);
  for (const word of await page.locator(".sentence .term > button").all()) {
    await word.tap();
    const box = (await page.getByRole("tooltip").boundingBox())!;
    expect(box.x).toBeGreaterThanOrEqual(0);
    expect(box.x + box.width).toBeLessThanOrEqual(phone.viewport.width);
    // a press on the note puts it away: it may cover the next word
    await page.getByRole("tooltip").tap();
    expect(await page.getByRole("tooltip").count()).toBe(0);
  }
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(380);
  await close();
}, 180_000);

test("a design pointed at on its card is marked on the front; one taken from a ring has its letter in both", async () => {
  const { page, wrong, close } = await desk.page();
  await proven(page);
  await page.evaluate(() => {
    location.hash = "/tradeoff";
  });
  const card = page.locator(".marked article").first();
  await card.waitFor({ timeout: 90_000 });
  const stop = page.getByRole("button", { name: "stop here" });
  if (await stop.isVisible()) await stop.click();
  await page.waitForTimeout(1500);
  await card.hover();
  const key = await card.getAttribute("data-design");
  const brushed = page.locator("svg .ring[data-brushed]");
  expect(await brushed.count()).toBeGreaterThan(0);
  for (const ring of await brushed.all()) expect(await ring.getAttribute("data-design")).toBe(key);
  expect(await brushed.first().getAttribute("aria-label")).toContain(
    (await card.locator(".amount").textContent())!,
  );
  // the cheapest has a letter already: any ring without one
  const own = page.locator(".recharts-scatter-symbol, .recharts-symbols").filter({ hasNotText: /[A-E]/ });
  await own.locator(".ring").first().focus();
  await page.keyboard.press("Enter");
  await page.getByRole("heading", { name: "yours, from the front" }).waitFor();
  await page.locator("svg text").filter({ hasText: /^E$/ }).waitFor();
  await page.keyboard.press("Escape");
  await page.getByRole("heading", { name: "yours, from the front" }).waitFor({ state: "detached" });
  expect(await page.getByText(/it is proven that nothing safe is this cheap/).count()).toBe(1);
  expect(wrong).toEqual([]);
  await close();
}, 240_000);

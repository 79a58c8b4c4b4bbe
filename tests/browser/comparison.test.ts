import { afterAll, beforeAll, expect, test } from "vitest";
import { Desk } from "./desk.ts";

let desk: Desk;
beforeAll(async () => {
  desk = await Desk.open();
}, 180_000);
afterAll(() => desk?.close());

test("designs stand side by side with their differences; one that is kept is there when the page comes back", async () => {
  const { page, wrong, close } = await desk.page({}, "/#/tradeoff");
  const table = page.getByRole("table", { name: "Designs side by side" });
  await table.waitFor({ timeout: 120_000 });
  const row = (name: string) => table.locator("tr").filter({ has: page.getByRole("rowheader", { name }) });
  expect(await row("Cost").locator("td").first().textContent()).toMatch(/^\$[\d,]+$/);
  expect(await row("Work, one pair of hands").locator("td").first().textContent()).toMatch(/^\d+ h$/);
  expect(await row("Governs").locator("td").first().textContent()).toMatch(/governs, \d\.\d\d/);
  await table.getByRole("button", { name: "keep" }).first().click();
  await table.getByRole("button", { name: "let it go" }).waitFor();
  const kept = await row("Cost").locator("td").last().textContent();
  // what is kept outlives the page
  await page.reload();
  await page.getByRole("button", { name: "let it go" }).waitFor({ timeout: 120_000 });
  expect(await row("Cost").locator("td").last().textContent()).toBe(kept);
  await page.getByRole("button", { name: "let it go" }).click();
  expect(await page.getByRole("button", { name: "let it go" }).count()).toBe(0);
  expect(wrong).toEqual([]);
  await close();
}, 300_000);

import { afterAll, beforeAll, expect, test } from "vitest";
import { findings } from "./axe.ts";
import { Desk, phone, proven } from "./desk.ts";

let desk: Desk;
beforeAll(async () => {
  desk = await Desk.open();
}, 180_000);
afterAll(() => desk?.close());

const pages = [
  ["answer", /nothing cheaper is safe/],
  ["tradeoff", /Marked designs/],
  ["lot", /Setting out/],
  ["catalog", /What it bears/],
] as const;

for (const colorScheme of ["light", "dark"] as const)
  test(`axe finds nothing on any page by ${colorScheme === "light" ? "day" : "lamp"}`, async () => {
    const { page, wrong, close } = await desk.page({ colorScheme });
    await proven(page);
    for (const [hash, words] of pages) {
      await page.evaluate((to) => {
        location.hash = `/${to}`;
      }, hash);
      await page.getByText(words).first().waitFor({ timeout: 90_000 });
      expect(await findings(page), hash).toEqual([]);
    }
    expect(wrong).toEqual([]);
    await close();
  }, 240_000);

test("axe finds nothing on the phone, givens opened", async () => {
  const { page, close } = await desk.page(phone);
  await proven(page);
  await page.getByText("Givens", { exact: true }).click();
  expect(await findings(page)).toEqual([]);
  await close();
}, 180_000);

test("the keyboard reaches a given, a check and a ring, and its place is always seen", async () => {
  const { page, close } = await desk.page();
  await proven(page);
  await page.keyboard.press("Tab");
  const seen = await page.evaluate(() => {
    const style = getComputedStyle(document.activeElement!);
    return { outline: style.outlineStyle, width: Number.parseFloat(style.outlineWidth) };
  });
  expect(seen.outline).toBe("solid");
  expect(seen.width).toBeGreaterThanOrEqual(2);
  const row = page
    .getByRole("table", { name: "Checks by share used" })
    .locator("button[aria-expanded]")
    .first();
  await row.focus();
  await page.keyboard.press("Enter");
  expect(await row.getAttribute("aria-expanded")).toBe("true");
  await page.keyboard.press("2");
  const ring = page.getByRole("button", { name: /see this design/ }).first();
  await ring.waitFor({ timeout: 90_000 });
  // a plot that still grows may redraw a ring under the hand: a keyboard user stops it first
  const stop = page.getByRole("button", { name: "stop here" });
  if (await stop.isVisible()) await stop.click();
  await page.waitForTimeout(1500);
  await ring.focus();
  await page.keyboard.press("Enter");
  await page.getByRole("heading", { name: "yours, from the front" }).waitFor();
  await close();
}, 180_000);

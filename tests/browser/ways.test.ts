import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { offers, type WayId } from "../../src/app/guides/offers.ts";
import { Desk, phone, proven, total } from "./desk.ts";

let desk: Desk;
beforeAll(async () => {
  desk = await Desk.open();
}, 180_000);
afterAll(() => desk?.close());

const LONG = 240_000;

const setOut = async (page: Page, way: WayId) => {
  const question = offers.find(({ id }) => id === way)?.question ?? way;
  await page.getByRole("navigation", { name: "Ways in" }).getByRole("button", { name: question }).click();
  await page.getByRole("region", { name: question }).waitFor();
};
const next = (page: Page) => page.getByRole("button", { name: "Next" }).click();
const here = (page: Page) => page.locator(".way-count .quiet").textContent();
/** A table's rows as text, once nothing in it is asked any more. */
const settled = async (page: Page, name: string): Promise<string[][]> => {
  const body = page.getByRole("table", { name }).locator("tbody");
  await body.waitFor();
  await page.waitForFunction(
    (label) => !document.querySelector(`table[aria-label="${label}"] tbody`)?.textContent?.includes("…"),
    name,
    { timeout: 200_000 },
  );
  return body
    .locator("tr")
    .evaluateAll((rows) =>
      rows.map((row) => [...row.querySelectorAll("td")].map((td) => td.textContent.trim())),
    );
};

test(
  "bigger beam or taller mast: the answer, the two roads from the wish and their prices, a taller wish, the sheets",
  async () => {
    const { page, wrong, away, close } = await desk.page();
    await setOut(page, "beam-or-mast");
    await proven(page);
    const before = await total(page);
    await next(page);
    const map = page.getByRole("region", { name: "Cost over height and area" });
    await map.getByText(/taller by 10 ft: \$\d/).waitFor({ timeout: 200_000 });
    await map.getByText(/bigger by 5 ft²: \$\d/).waitFor({ timeout: 200_000 });
    await next(page);
    await page.getByRole("button", { name: /^Height/ }).click();
    await page.getByRole("textbox", { name: /^Height/ }).fill("80 ft");
    await page.keyboard.press("Enter");
    await page.waitForFunction(
      (was) => !document.querySelector(".big .fig")?.textContent?.includes(was),
      before.toLocaleString("en-US"),
    );
    await proven(page);
    expect(await total(page)).toBeGreaterThan(before);
    await next(page);
    await page.getByRole("button", { name: "Print five sheets" }).waitFor({ timeout: 60_000 });
    await page.getByRole("button", { name: "Done" }).click();
    expect(await page.locator(".way.on").count()).toBe(0);
    expect(wrong).toEqual([]);
    expect(away).toEqual([]);
    await close();
  },
  LONG,
);

test(
  "which used sections: what each bears, costs and reaches, side by side, and what a thinner wall changes",
  async () => {
    const { page, wrong, close } = await desk.page();
    await setOut(page, "used-sections");
    await page.getByRole("table", { name: "Sections" }).waitFor();
    await next(page);
    await page.locator("summary", { hasText: "How far each section goes" }).click();
    const rows = await settled(page, "How far each section goes");
    expect(rows.length).toBe(7);
    const offered = rows.find(([name]) => /10\.5 in three-leg, 1 × \.069 used/.test(name));
    // eight pieces of ten feet; the safe height never beyond what they make up
    expect(offered?.[1]).toBe("82 %");
    expect(offered?.[2]).toBe("80 ft");
    const height = Number(/^(\d+) ft/.exec(offered?.[3] ?? "")?.[1]);
    expect(height).toBeGreaterThanOrEqual(60);
    expect(height).toBeLessThanOrEqual(80);
    expect(offered?.[4]).toMatch(/^\d+(\.\d+)? ft²/);
    // five pieces of ten feet can't make the sixty that are wished
    expect(rows.find(([name]) => /13 in three-leg, .*\.060 used/.test(name))?.[4]).toBe("nothing safe");
    await next(page);
    expect(await here(page)).toBe("3 of 4");
    const row = page.getByRole("table", { name: "Sections" }).locator("tr", { hasText: "1 × .069 used" });
    await row.getByRole("button", { name: /wall/i }).first().click();
    await page.keyboard.press("ControlOrMeta+a");
    await page.keyboard.type("0.050 in");
    await page.keyboard.press("Enter");
    await page.getByText("What your edit did").waitFor();
    await next(page);
    await proven(page);
    expect(await total(page)).toBeGreaterThan(1000);
    expect(wrong).toEqual([]);
    await close();
  },
  LONG,
);

test(
  "least concrete: by kind of anchor and base the best row is the answer, and a reload comes back to the step",
  async () => {
    const { page, wrong, close } = await desk.page();
    await setOut(page, "least-concrete");
    await page
      .getByTestId("claim")
      .filter({ hasText: "nothing with less concrete is safe" })
      .waitFor({ timeout: 90_000 });
    const cost = await total(page);
    await next(page);
    await page.locator("summary", { hasText: "By kind of anchor and base" }).click();
    const rows = await settled(page, "By kind of anchor and base");
    const found = rows.filter((row) => row.length === 7);
    expect(found.length).toBeGreaterThan(5);
    const concrete = found.map((row) => Number(row[3]));
    expect(concrete).toEqual([...concrete].sort((a, b) => a - b));
    expect(Number(found[0][2].replace(/\D/g, ""))).toBe(cost);
    expect(await here(page)).toBe("2 of 4");
    await page.reload();
    await page.locator(".way-count").waitFor();
    expect(await here(page)).toBe("2 of 4");
    await page.getByRole("button", { name: "leave" }).click();
    expect(await page.locator(".way.on").count()).toBe(0);
    expect(wrong).toEqual([]);
    await close();
  },
  LONG,
);

test(
  "the ways in are put away for good, and come back from the foot of the page",
  async () => {
    const { page, close } = await desk.page();
    const offer = page.getByRole("navigation", { name: "Ways in" });
    await offer.getByRole("button", { name: "not now" }).click();
    await page.reload();
    await page.locator("footer.foot").waitFor();
    expect(await offer.count()).toBe(0);
    await page.getByRole("button", { name: "Ways in" }).focus();
    await page.keyboard.press("Enter");
    await offer.waitFor();
    await close();
  },
  LONG,
);

test(
  "on a phone the ways in take two lines at most, and each step keeps its words and buttons on the screen",
  async () => {
    const { page, close } = await desk.page(phone);
    await proven(page);
    const offer = page.getByRole("navigation", { name: "Ways in" });
    const line = await offer.evaluate((nav) => Number.parseFloat(getComputedStyle(nav).lineHeight));
    const { height } = (await offer.boundingBox())!;
    expect(height).toBeLessThanOrEqual(Math.max(2 * line, 50));
    await offer.getByText("Three ways in").tap();
    for (const way of await offer.getByRole("button").all())
      expect((await way.boundingBox())!.height).toBeGreaterThanOrEqual(44);
    const { question } = offers[1];
    await offer.getByRole("button", { name: question }).tap();
    const strip = page.getByRole("region", { name: question });
    await strip.waitFor();
    for (const part of [strip.locator(".way-say"), strip.getByRole("button", { name: "leave" })]) {
      const box = (await part.boundingBox())!;
      expect(box.x + box.width).toBeLessThanOrEqual(phone.viewport.width);
    }
    expect((await strip.locator(".way-say").boundingBox())!.width).toBeGreaterThan(300);
    await close();
  },
  LONG,
);

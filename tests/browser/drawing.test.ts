import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { startingStudies } from "../../src/model/starting-studies.ts";
import { collisions } from "./collisions.ts";
import { Desk, phone } from "./desk.ts";

let desk: Desk;
beforeAll(async () => {
  desk = await Desk.open();
}, 120_000);
afterAll(() => desk?.close());

const turnTo = (page: Page, hash: string) =>
  page.evaluate((to) => {
    location.hash = to;
  }, hash);

const widths = [
  { width: 1400, options: {} },
  { width: 380, options: phone },
];
const cases = startingStudies.flatMap(({ id, file }, index) =>
  widths.map((one) => ({ ...one, id, index, name: file.name })),
);

test.each(cases)(
  "no number of a check covers a word on the elevation of $id at $width px, nor a word another",
  async ({ index, name, options }) => {
    const { page, wrong, close } = await desk.page(options);
    if (index > 0) {
      await turnTo(page, "#/studies");
      await page.getByLabel("Begin a new study").getByRole("button").nth(index).click();
      await page.waitForFunction(
        (begun) => document.querySelector(".study-name")?.textContent === begun,
        name,
      );
      await turnTo(page, "#/answer");
    }
    await page
      .getByTestId("claim")
      .filter({ hasText: /nothing .+ is safe/ })
      .waitFor({ timeout: 90_000 });
    await page.evaluate(() => document.fonts.ready);
    const drawing = page.locator(".sketch svg").first();
    // numbers find their places when the page has time for it
    await drawing.locator(".balloons[data-placed] .balloon").first().waitFor();
    const { met, words, circles } = await drawing.evaluate(collisions);
    expect(words).toBeGreaterThan(7);
    expect(circles).toBeGreaterThan(1);
    expect(met).toEqual([]);
    expect(wrong).toEqual([]);
    await close();
  },
);

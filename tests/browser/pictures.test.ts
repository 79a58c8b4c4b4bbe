import { readFile } from "node:fs/promises";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { startingStudies } from "../../src/model/starting-studies.ts";
import { Desk, phone } from "./desk.ts";

let desk: Desk;
beforeAll(async () => {
  desk = await Desk.open();
}, 180_000);
afterAll(() => desk?.close());

const LONG = 300_000;
const answered = (page: Page) =>
  page
    .getByTestId("claim")
    .filter({ hasText: /nothing cheaper is safe|nothing with less/ })
    .waitFor({ timeout: 90_000 });

/** Words of other numbers that a balloon covers, and words that leave the drawing. */
const collisions = (page: Page) =>
  page
    .locator(".sketch svg")
    .first()
    .evaluate((svg) => {
      const sheet = svg.getBoundingClientRect();
      const balloons = [...svg.querySelectorAll("circle")].filter(
        (circle) => circle.getAttribute("r") === "9.5",
      );
      const texts = [...svg.querySelectorAll("text")].filter((text) => text.textContent);
      const found: string[] = [];
      for (const text of texts) {
        const box = text.getBoundingClientRect();
        if (box.right > sheet.right + 2 || box.left < sheet.left - 2)
          found.push(`“${text.textContent}” leaves the drawing`);
      }
      for (const circle of balloons) {
        const number = circle.parentElement?.querySelector("text");
        const ring = circle.getBoundingClientRect();
        const [cx, cy] = [(ring.left + ring.right) / 2, (ring.top + ring.bottom) / 2];
        for (const text of texts) {
          if (text === number) continue;
          // in the text's own directions: lettering that runs along a guy is slanted
          const box = (text as SVGTextElement).getBBox();
          const matrix = (text as SVGTextElement).getScreenCTM()!.inverse();
          const { x, y } = new DOMPoint(cx, cy).matrixTransform(matrix);
          const away = Math.hypot(
            Math.max(box.x - x, 0, x - box.x - box.width),
            Math.max(box.y + 3 - y, 0, y - box.y - box.height + 3),
          );
          if (away < 8) found.push(`balloon ${number?.textContent} lies on “${text.textContent}”`);
        }
      }
      return found;
    });

for (const [name, options] of [
  ["desk", {}],
  ["phone", phone],
] as const)
  test(
    `on the ${name} no balloon lies on words, and no words leave the drawing, whichever study starts`,
    async () => {
      for (const { file } of startingStudies) {
        const { page, wrong, close } = await desk.page(options, "/#/studies");
        await page.getByRole("button", { name: file.name, exact: true }).first().click();
        await page.evaluate(() => {
          location.hash = "/answer";
        });
        await page.waitForTimeout(600);
        await answered(page);
        // numbers find their places when the page has time for it
        await page.locator(".balloons[data-placed]").first().waitFor({ state: "attached" });
        expect(await collisions(page), file.name).toEqual([]);
        expect(wrong).toEqual([]);
        await close();
      }
    },
    LONG,
  );

test.each([360, 390])(
  "on a phone of %i px no word of the front lies on a ring, a letter or another word",
  async (width) => {
    const { page, wrong, close } = await desk.page({ viewport: { width, height: 844 }, hasTouch: true });
    await answered(page);
    await page.evaluate(() => {
      location.hash = "/tradeoff";
    });
    await page.getByText(/map (so far: \d\d|exact)/).waitFor({ timeout: 90_000 });
    const front = page.locator("svg[aria-label^='Cost against concrete']");
    const met = await front.evaluate((svg) => {
      const boxes = (of: string) => [...svg.querySelectorAll(of)].map((one) => one.getBoundingClientRect());
      const words = [...svg.querySelectorAll("text.halo")].map((text) => {
        const { left, right, top, bottom, height } = text.getBoundingClientRect();
        // lettering is lower than its line
        return {
          name: text.textContent,
          left,
          right,
          top: top + height * 0.2,
          bottom: bottom - height * 0.2,
        };
      });
      const marks = [...boxes("circle.p"), ...boxes("rect.k")].map((box) => ({
        name: `mark at ${Math.round(box.left)}, ${Math.round(box.top)}`,
        left: box.left,
        right: box.right,
        top: box.top,
        bottom: box.bottom,
      }));
      const meet = (a: (typeof words)[0], b: (typeof marks)[0]) =>
        Math.min(a.right, b.right) > Math.max(a.left, b.left) &&
        Math.min(a.bottom, b.bottom) > Math.max(a.top, b.top);
      return {
        words: words.length,
        marks: marks.length,
        met: words.flatMap((word, i) =>
          [...marks, ...words.slice(i + 1).map((one) => ({ ...one, name: `${one.name}` }))]
            .filter((other) => meet(word, other))
            .map((other) => `${word.name} | ${other.name}`),
        ),
      };
    });
    expect(met.words).toBeGreaterThan(2);
    expect(met.marks).toBeGreaterThan(8);
    expect(met.met).toEqual([]);
    expect(wrong).toEqual([]);
    await close();
  },
  LONG,
);

test.each([
  ["elevation", "answer", /^Elevation of the mast to scale/],
  ["plan", "lot", /^Plan of the lot/],
  ["front", "tradeoff", /^Cost against concrete in place/],
  ["map", "tradeoff", /^Cheapest safe cost over height and antenna area/],
] as const)(
  "the %s is saved as a file that stands by itself, with its name, its hatches and its colours",
  async (name, hash, title) => {
    const { page, wrong, close } = await desk.page();
    await answered(page);
    await page.evaluate((to) => {
      location.hash = `/${to}`;
    }, hash);
    const save = page.getByRole("button", { name: `Save the ${name} as SVG` });
    await save.waitFor({ timeout: 90_000 });
    // a plot takes along what is known when it is saved: enough that words and lines stand in it
    if (hash === "tradeoff") await page.getByText(/map (so far: \d\d|exact)/).waitFor({ timeout: 90_000 });
    const [download] = await Promise.all([page.waitForEvent("download"), save.click()]);
    expect(download.suggestedFilename()).toBe(`upper-pasture-first-mast-${name}.svg`);
    const text = await readFile(await download.path(), "utf8");
    expect(/<title>([^<]*)/.exec(text)?.[1]).toMatch(title);
    expect(text).not.toMatch(/var\(--|class=/);
    const asked = [...text.matchAll(/url\(['"]?#([\w-]+)/g)].map(([, id]) => id);
    expect(asked.length).toBeGreaterThan(0);
    for (const id of asked) expect(text).toContain(`id="${id}"`);
    // drawn alone it shows as much ink as lines and words make
    const ink = await page.evaluate(async (source) => {
      const image = new Image();
      image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(source)}`;
      await image.decode();
      const canvas = document.createElement("canvas");
      [canvas.width, canvas.height] = [image.width, image.height];
      const brush = canvas.getContext("2d")!;
      brush.drawImage(image, 0, 0);
      const { data } = brush.getImageData(0, 0, canvas.width, canvas.height);
      let dark = 0;
      for (let i = 0; i < data.length; i += 4) if (data[i] + data[i + 1] + data[i + 2] < 240) dark++;
      return dark / (data.length / 4);
    }, text);
    expect(ink).toBeGreaterThan(0.003);
    expect(ink).toBeLessThan(0.3);
    expect(wrong).toEqual([]);
    await close();
  },
  LONG,
);

test(
  "everything that can be pressed and is no word of a sentence is at least 24 px high, on every page",
  async () => {
    const { page, close } = await desk.page();
    await answered(page);
    for (const hash of ["answer", "lot", "tradeoff"]) {
      await page.evaluate((to) => {
        location.hash = `/${to}`;
      }, hash);
      await page.waitForTimeout(800);
      const small = await page.evaluate(() =>
        [...document.querySelectorAll("button, summary, select")]
          .filter((one) => (one as HTMLElement).checkVisibility())
          // words inside a sentence are as high as its line: WCAG 2.2, 2.5.8 excepts them
          .filter((one) => !one.closest(".term"))
          .map((one) => ({ name: one.textContent?.slice(0, 40), height: one.getBoundingClientRect().height }))
          .filter(({ height }) => height > 0 && height < 23.5)
          .map(({ name, height }) => `${name}: ${height}`),
      );
      expect(small, hash).toEqual([]);
    }
    await close();
  },
  LONG,
);

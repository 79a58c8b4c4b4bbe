import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { shelves } from "../../src/app/wording/catalog-words.ts";
import { findings } from "./axe.ts";
import { Desk, phone, proven, total } from "./desk.ts";

let desk: Desk;
beforeAll(async () => {
  desk = await Desk.open();
}, 180_000);
afterAll(() => desk?.close());
const LONG = 180_000;

const turnTo = (page: Page, hash: string) =>
  page.evaluate((to) => {
    location.hash = to;
  }, hash);

for (const [kind, options] of [
  ["by day", { colorScheme: "light" }],
  ["by lamp, on a phone", { colorScheme: "dark", ...phone }],
] as const)
  test(
    `axe finds nothing on any shelf, the sheets and the studies, ${kind}`,
    async () => {
      const { page, wrong, close } = await desk.page(options);
      await turnTo(page, "#/catalog");
      for (const { name } of shelves) {
        await page.getByRole("tab", { name, exact: true }).click();
        expect(await findings(page), name).toEqual([]);
      }
      await turnTo(page, "#/studies");
      await page.getByRole("button", { name: /^Copy/ }).first().click();
      await page.getByRole("button", { name: /^Delete Upper pasture, first mast, copy/ }).click();
      await page.getByLabel("Keep it as it stands now").fill("a version");
      await page.getByRole("button", { name: "Keep", exact: true }).click();
      await page.getByRole("button", { name: "Look at a version" }).waitFor();
      expect(await findings(page), "studies").toEqual([]);
      await turnTo(page, "#/answer");
      await proven(page);
      await turnTo(page, "#/sheets");
      await page.locator("iframe").waitFor();
      expect(await findings(page), "sheets").toEqual([]);
      expect(wrong).toEqual([]);
      await close();
    },
    LONG,
  );

test(
  "from 360 px to 4K no page is wider than its window, and no line of the top lies over another",
  async () => {
    const { page, close } = await desk.page();
    await proven(page);
    const wide: string[] = [];
    for (const hash of ["answer", "lot", "catalog", "sheets", "studies", "tradeoff"]) {
      await turnTo(page, `#/${hash}`);
      for (const width of [360, 414, 640, 768, 1000, 1150, 1280, 1400, 1920, 2560, 3840]) {
        await page.setViewportSize({ width, height: 900 });
        await page.waitForTimeout(60);
        const measured = () =>
          page.evaluate(() => {
            const over = document.documentElement.scrollWidth - document.documentElement.clientWidth;
            const boxes = [...document.querySelectorAll(".top .name, .top .study, .top nav a, .tools button")]
              .map((one) => one.getBoundingClientRect())
              .filter(({ width: w, height: h }) => w > 0 && h > 0);
            const lies = boxes.some((a, i) =>
              boxes.some(
                (b, j) =>
                  j > i &&
                  Math.min(a.right, b.right) - Math.max(a.left, b.left) > 1 &&
                  Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 1,
              ),
            );
            return { over, lies };
          });
        let found = await measured();
        // a busy machine lays a page out a little later
        for (let again = 0; again < 10 && (found.over > 0 || found.lies); again++) {
          await page.waitForTimeout(200);
          found = await measured();
        }
        if (found.over > 0 || found.lies) wide.push(`${hash} at ${width}: ${JSON.stringify(found)}`);
      }
    }
    expect(wide).toEqual([]);
    await close();
  },
  LONG,
);

test(
  "a reload in mid-search loses nothing and searches again to the same proof",
  async () => {
    const { page, wrong, close } = await desk.page();
    await proven(page);
    await page.getByRole("button", { name: /^Frost depth:/ }).click();
    await page.getByRole("textbox", { name: "Frost depth" }).fill("5 ft");
    await page.keyboard.press("Enter");
    await page.waitForTimeout(250);
    await page.reload();
    await proven(page);
    expect(await page.getByRole("button", { name: /^Frost depth:/ }).textContent()).toBe("Frost to 5 ft");
    const once = await total(page);
    await page.reload();
    await proven(page);
    expect(await total(page)).toBe(once);
    expect(wrong).toEqual([]);
    await close();
  },
  LONG,
);

/** Tabs on until the focus is where it is wanted, as a hand without a mouse does. */
const tabTo = async (page: Page, name: RegExp): Promise<void> => {
  for (let presses = 0; presses < 120; presses++) {
    await page.keyboard.press("Tab");
    const here = await page.evaluate(() => {
      const at = document.activeElement as HTMLElement;
      const { outlineStyle, outlineWidth } = getComputedStyle(at);
      const label = at.getAttribute("aria-label") ?? at.textContent ?? "";
      return {
        label,
        seen: outlineStyle === "solid" && Number.parseFloat(outlineWidth) >= 2,
        tag: at.tagName,
      };
    });
    if (!name.test(here.label)) continue;
    expect(here.seen, here.label).toBe(true);
    return;
  }
  throw new Error(`${name} is not reached by Tab`);
};

test(
  "by keyboard alone: a given is edited, a version kept, a price changed and undone",
  async () => {
    const { page, wrong, close } = await desk.page();
    await proven(page);
    await tabTo(page, /^Frost depth/);
    await page.keyboard.press("Enter");
    await page.keyboard.type("2 ft");
    await page.keyboard.press("Enter");
    await page.getByText("Frost to 2 ft").waitFor();
    await page.waitForFunction(() =>
      /^Frost depth/.test(document.activeElement?.getAttribute("aria-label") ?? ""),
    );
    await page.keyboard.press("Shift+Tab");
    await page.evaluate(() => (document.activeElement as HTMLElement).blur());
    await tabTo(page, /^Upper pasture/);
    await page.keyboard.press("Enter");
    await page.getByRole("heading", { name: "What do you work on?" }).waitFor();
    await page.getByLabel("Keep it as it stands now").focus();
    await page.keyboard.type("two feet");
    await page.keyboard.press("Enter");
    await page.getByRole("button", { name: "Look at two feet" }).waitFor();
    await page.evaluate(() => (document.activeElement as HTMLElement).blur());
    await page.keyboard.press("4");
    await page.getByRole("tab", { name: "Sections", exact: true }).focus();
    await page.keyboard.press("End");
    await page.getByRole("table", { name: "Prices" }).waitFor();
    await tabTo(page, /^Price of concrete:/);
    await page.keyboard.press("Enter");
    await page.keyboard.type("$200/yd3");
    await page.keyboard.press("Enter");
    await page.getByRole("button", { name: /^Price of concrete: \$200/ }).waitFor();
    await page.waitForFunction(() => document.activeElement?.tagName === "BUTTON");
    await page.keyboard.press("Control+z");
    await page.getByRole("button", { name: /^Price of concrete: \$185/ }).waitFor();
    expect(wrong).toEqual([]);
    await close();
  },
  LONG,
);

test(
  "printed, every page is black on white, keeps the caution and leaves the controls out",
  async () => {
    const { page, close } = await desk.page({ colorScheme: "dark" });
    await proven(page);
    await page.emulateMedia({ media: "print", colorScheme: "dark" });
    for (const hash of ["answer", "lot", "catalog", "studies"]) {
      await turnTo(page, `#/${hash}`);
      await page.locator("main:not([aria-busy])").first().waitFor();
      await page.waitForTimeout(200);
      const look = await page.evaluate(() => {
        const root = getComputedStyle(document.documentElement);
        return {
          paper: root.backgroundColor,
          ink: root.color,
          tools: getComputedStyle(document.querySelector(".tools")!).display,
          nav: getComputedStyle(document.querySelector(".top nav")!).display,
          caution: document.querySelector(".foot")?.textContent,
        };
      });
      expect(look, hash).toMatchObject({
        paper: "rgb(255, 255, 255)",
        ink: "rgb(0, 0, 0)",
        tools: "none",
        nav: "none",
      });
      expect(look.caution).toMatch(/Masts kill/);
      const pdf = await page.pdf({ format: "Letter" });
      expect(pdf.subarray(0, 4).toString()).toBe("%PDF");
    }
    await close();
  },
  LONG,
);

test(
  "nothing moves by itself, asked or unasked to hold still",
  async () => {
    const { page, close } = await desk.page({ reducedMotion: "reduce" });
    await proven(page);
    for (const hash of ["answer", "tradeoff", "lot", "catalog", "studies"]) {
      await turnTo(page, `#/${hash}`);
      await page.waitForTimeout(500);
      expect(await page.evaluate(() => document.getAnimations().length), hash).toBe(0);
    }
    await close();
  },
  LONG,
);

import type { Locator } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { verify } from "../../src/checks/verify.ts";
import { demoStudy } from "../../src/model/demo-study.ts";
import { caution, shortCaution } from "../../src/report/caution.ts";
import { Search } from "../../src/search/search.ts";
import { problemOf } from "../support/small-study.ts";
import { findings } from "./axe.ts";
import { Desk, phone, proven, total } from "./desk.ts";
import { mainThreadTasks } from "./main-thread.ts";

let desk: Desk;
beforeAll(async () => {
  desk = await Desk.open();
}, 180_000);
afterAll(() => desk?.close());

const LONG = 180_000;

test(
  "the first screen proves its answer, carries the caution, and asks nothing of any other host",
  async () => {
    const { page, wrong, away, close } = await desk.page();
    await proven(page);
    const foot = page.locator("footer.foot");
    expect(await foot.textContent()).toContain(caution);
    expect(caution).toMatch(/Masts kill by falling, by electrocution and by collapse/);
    expect(await foot.evaluate((at) => getComputedStyle(at).position)).toBe("static");
    expect(await page.getByText(shortCaution).count()).toBe(1);
    expect(await total(page)).toBeGreaterThan(100);
    expect(await page.getByRole("table", { name: "Checks by share used" }).locator("tr.gov").count()).toBe(1);
    expect(await page.locator("[data-crossed]").count()).toBe(0);
    expect(wrong).toEqual([]);
    expect(away).toEqual([]);
    await close();
  },
  LONG,
);

for (const [width, height] of [
  [360, 640],
  [390, 844],
] as const)
  test(
    `on a phone of ${width} × ${height} the first screen holds the caution and the answer, neither over the other`,
    async () => {
      const { page, wrong, close } = await desk.page({ viewport: { width, height }, hasTouch: true });
      await proven(page);
      const box = async (of: Locator) => (await of.boundingBox())!;
      const said = await box(page.getByText(shortCaution));
      const answer = await box(page.locator(".big .fig").first());
      const pages = await box(page.getByRole("navigation", { name: "Pages" }));
      const givens = await box(page.locator(".phone-givens > summary"));
      expect(said.y).toBeGreaterThan(0);
      expect(said.y + said.height).toBeLessThan(answer.y);
      expect(answer.y + answer.height).toBeLessThan(pages.y);
      // a hand finds the summary of the givens beside it, of a finger's height
      expect(said.y + said.height).toBeLessThanOrEqual(givens.y + givens.height);
      await page.getByText("Givens", { exact: true }).click();
      expect(await page.getByRole("region", { name: "Givens" }).isVisible()).toBe(true);
      expect(wrong).toEqual([]);
      await close();
    },
    LONG,
  );

test(
  "a given edited in place is answered anew, and Undo brings the former answer back",
  async () => {
    const { page, wrong, close } = await desk.page();
    await proven(page);
    const before = await total(page);
    await page.getByRole("button", { name: /^Wind, three-second gust/ }).click();
    await page.getByRole("textbox", { name: /^Wind/ }).fill("130");
    await page.keyboard.press("Enter");
    await page.waitForFunction(
      (was) => !document.querySelector(".big .fig")?.textContent?.includes(was),
      before.toLocaleString("en-US"),
    );
    await proven(page);
    expect(await total(page)).toBeGreaterThan(before);
    await page.getByRole("button", { name: "Undo" }).click();
    await page.waitForFunction(
      (was) => document.querySelector(".big .fig")?.textContent?.includes(was),
      before.toLocaleString("en-US"),
    );
    await proven(page);
    expect(wrong).toEqual([]);
    await close();
  },
  LONG,
);

test(
  "a given that can't be read stays in its field with the reason, and the old answer stays",
  async () => {
    const { page, close } = await desk.page();
    await proven(page);
    const before = await total(page);
    await page.getByRole("button", { name: /^Wind, three-second gust/ }).click();
    const field = page.getByRole("textbox", { name: /^Wind/ });
    await field.fill("105 mhp");
    await page.keyboard.press("Enter");
    expect(await page.getByRole("alert").textContent()).toMatch(
      /mhp.*isn't a unit of speed.*still stands for 115 mph/s,
    );
    expect(await field.getAttribute("aria-invalid")).toBe("true");
    expect(await total(page)).toBe(before);
    await page.keyboard.press("Escape");
    expect(await field.count()).toBe(0);
    await close();
  },
  LONG,
);

test(
  "an opened check tells what one step of a part would do: the judge says the same of that design",
  async () => {
    const problem = problemOf(demoStudy);
    const search = new Search(problem);
    while (!search.step(50));
    const { design } = search.best!;
    const guys = design.guys!;
    const further = Math.min(...problem.radii.filter((radius) => radius > guys.radius));
    const verdict = verify(problem, { ...design, guys: { ...guys, radius: further } });
    const then = verdict.checks.find(({ limitState }) => limitState === "leg-compression")!;
    const costs = Math.round(verdict.bill.total - verify(problem, design).bill.total);
    const { page, wrong, close } = await desk.page();
    await proven(page);
    await page.getByRole("button", { name: /^Leg compression/ }).click();
    const row = page
      .getByRole("table", { name: "To gain margin: Leg compression" })
      .getByRole("row", { name: /^anchors at/ });
    await row.waitFor();
    const cells = await row.getByRole("cell").allTextContents();
    expect(cells[0]).toContain(`${Math.round(further / 0.3048)} ft, not ${Math.round(guys.radius / 0.3048)}`);
    expect(cells.slice(1, 3)).toEqual([then.utilisation.toFixed(2), `$${costs}`]);
    // kept, it stands beside the answer where designs are compared
    await row.getByRole("button", { name: /^keep/ }).click();
    await row.getByRole("link", { name: "compare" }).waitFor();
    expect(verdict.passes).toBe(true);
    // pipe and section lie on no axis that holds the pipe: nothing is made up
    await page.getByRole("button", { name: /^Antenna pipe bending/ }).click();
    await page.getByText("no single step of a part takes anything off it").waitFor();
    expect(await findings(page)).toEqual([]);
    expect(wrong).toEqual([]);
    await close();
  },
  LONG,
);

test(
  "where nothing is safe the page says so, and the nearest miss is drawn crossed",
  async () => {
    const { page, close } = await desk.page();
    await proven(page);
    await page.getByRole("button", { name: /^Wind, three-second gust/ }).click();
    await page.getByRole("textbox", { name: /^Wind/ }).fill("260 mph");
    await page.keyboard.press("Enter");
    await page.getByText("Nothing on this grid is safe").first().waitFor({ timeout: 90_000 });
    expect(await page.locator(".big").count()).toBe(0);
    const drawn = await page.locator(".sketch svg[role=img]").count();
    expect(await page.locator("[data-crossed]").count()).toBe(drawn);
    await close();
  },
  LONG,
);

test(
  "units switch everywhere at once, and a reload keeps edits, units and page",
  async () => {
    const { page, close } = await desk.page();
    await proven(page);
    await page.getByRole("button", { name: "m N" }).click();
    expect(await page.locator(".sentence").textContent()).toMatch(/ m of /);
    await page.getByRole("button", { name: /^Frost depth:/ }).click();
    await page.getByRole("textbox", { name: "Frost depth" }).fill("0.9 m");
    await page.keyboard.press("Enter");
    await page.getByText(/saved \d\d:\d\d/).waitFor();
    await page.keyboard.press("3");
    await page.getByRole("heading", { name: /where may it fall/ }).waitFor();
    await page.reload();
    await page.getByRole("heading", { name: /where may it fall/ }).waitFor({ timeout: 60_000 });
    await page.keyboard.press("1");
    expect(await page.getByRole("button", { name: /^Frost depth:/ }).textContent()).toBe("Frost to 0.9 m");
    await close();
  },
  LONG,
);

test(
  "on a phone nothing runs off the paper, and the pages stand at the bottom",
  async () => {
    const { page, wrong, close } = await desk.page(phone);
    await proven(page);
    // the catalog last: its styles come with it, and no other page may lean on them
    for (const hash of ["#/answer", "#/lot", "#/tradeoff", "#/catalog"]) {
      await page.evaluate((to) => {
        location.hash = to;
      }, hash);
      await page.waitForTimeout(700);
      if (hash === "#/tradeoff")
        await page.getByRole("table", { name: "Designs side by side" }).waitFor({ timeout: 60_000 });
      expect(await page.evaluate(() => document.documentElement.scrollWidth), hash).toBeLessThanOrEqual(380);
    }
    const nav = await page.getByRole("navigation", { name: "Pages" }).boundingBox();
    expect(nav!.y + nav!.height).toBeCloseTo(800, 0);
    expect(wrong).toEqual([]);
    await close();
  },
  LONG,
);

test(
  "no task holds the main thread while the search runs",
  async () => {
    const { page, close } = await desk.page();
    await proven(page);
    const field = page.locator('input[aria-label^="Wind"]');
    await page.locator('button[aria-label^="Wind"]').click();
    await field.fill("125 mph");
    const tasks = await mainThreadTasks(page, async () => {
      await page.keyboard.press("Enter");
      await page.waitForTimeout(3000);
    });
    expect(tasks.length).toBeGreaterThan(20);
    // 50 ms is the aim, and what is seen untraced; tracing itself adds up to a half.
    expect(Math.max(...tasks)).toBeLessThan(75);
    await close();
  },
  LONG,
);

test(
  "a search that is stopped keeps its safe mast, says what it can be too dear, and goes on",
  async () => {
    const { page, wrong, close } = await desk.page();
    await proven(page);
    await page.locator('button[aria-label^="Wind"]').click();
    await page.locator('input[aria-label^="Wind"]').fill("150 mph");
    await page.keyboard.press("Enter");
    const stop = page.getByRole("button", { name: "Stop and keep this" });
    await stop.waitFor({ timeout: 60_000 });
    await page.getByText("Safe so far").waitFor();
    await stop.click();
    await page.getByText("Safe, perhaps not the cheapest").waitFor({ timeout: 5000 });
    expect(await page.locator(".big .sub").first().textContent()).toMatch(/at most \$[\d,]+ too dear/);
    await page.getByRole("button", { name: "Go on" }).click();
    await page.getByText("Safe so far").waitFor({ timeout: 20_000 });
    expect(wrong).toEqual([]);
    await close();
  },
  LONG,
);

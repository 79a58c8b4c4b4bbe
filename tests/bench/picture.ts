import { mkdirSync } from "node:fs";
import type { Page } from "playwright-core";
import { demoStudy } from "../../src/model/demo-study.ts";
import { Desk, phone, proven } from "../browser/desk.ts";

// The pictures of README and user guide, taken from the program itself: npm run picture

const GUIDE = "docs/user-guide/pictures";
mkdirSync("docs/pictures", { recursive: true });
mkdirSync(GUIDE, { recursive: true });

const turnTo = (page: Page, to: string) =>
  page.evaluate((hash) => {
    location.hash = `/${hash}`;
  }, to);

const desk = await Desk.open();
try {
  const { page } = await desk.page({ viewport: { width: 1400, height: 1000 } });
  await proven(page);
  await page.evaluate(() => document.fonts.ready);
  await page.screenshot({ path: "docs/pictures/answer.png" });

  // what one step of each given costs comes after the proof
  await page.locator(".givens .price", { hasText: "$" }).nth(3).waitFor({ timeout: 120_000 });
  await page.getByRole("region", { name: "Givens" }).screenshot({ path: `${GUIDE}/givens.png` });
  await page.getByRole("table", { name: "Checks by share used" }).getByRole("button").nth(1).click();
  await page.locator("table.cures").waitFor();
  await page.mouse.move(0, 0);
  await page.locator(".checks").screenshot({ path: `${GUIDE}/check.png` });

  await turnTo(page, "lot");
  await page.getByText("What moving the mast costs").click();
  const moves = page.getByRole("table", { name: "What moving the mast costs" });
  await moves
    .getByRole("cell", { name: /^(nothing|saves .+|\$.+)$/ })
    .nth(3)
    .waitFor({ timeout: 120_000 });
  await page.mouse.move(0, 0);
  await page.screenshot({ path: `${GUIDE}/lot.png` });

  const hand = await desk.page({ ...phone, colorScheme: "dark" });
  await proven(hand.page);
  await hand.page.screenshot({ path: `${GUIDE}/phone.png` });

  // of fewer choices, so that the whole map stands there in a minute or two
  const { parts } = demoStudy;
  const held = {
    radius: ["30 ft", "36 ft"],
    rotation: 0,
    levelCounts: [2],
    tensions: [0.1],
    mixedStacks: false,
  };
  const fewer = { ...demoStudy, name: "Upper pasture, fewer choices", parts: { ...parts, ...held } };
  await turnTo(page, "studies");
  await page.getByLabel("Read a file").setInputFiles({
    name: "fewer.json",
    mimeType: "application/json",
    buffer: Buffer.from(JSON.stringify(fewer)),
  });
  await page.getByRole("button", { name: "Take it" }).click();
  await page.locator(".study-name", { hasText: fewer.name }).waitFor();
  await turnTo(page, "answer");
  await proven(page);
  await turnTo(page, "tradeoff");
  await page.getByText(/front exact.+map exact/).waitFor({ timeout: 600_000 });
  await page.screenshot({ path: `${GUIDE}/trade-off.png` });
} finally {
  await desk.close();
}

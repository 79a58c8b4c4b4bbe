import { mkdirSync } from "node:fs";
import type { Page } from "playwright-core";
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

  await turnTo(page, "tradeoff");
  // the map without its last rows will do: beyond the edge of what is safe each cell is long to prove
  await page.getByText(/map so far: 1[0-9]{2} cells|map exact/).waitFor({ timeout: 600_000 });
  await page.screenshot({ path: `${GUIDE}/trade-off.png` });
} finally {
  await desk.close();
}

import { mkdirSync } from "node:fs";
import { Desk, proven } from "../browser/desk.ts";

// The picture of the README, taken from the program itself: npm run picture

mkdirSync("docs/pictures", { recursive: true });
const desk = await Desk.open();
try {
  const { page } = await desk.page({ viewport: { width: 1400, height: 1000 } });
  await proven(page);
  await page.evaluate(() => document.fonts.ready);
  await page.screenshot({ path: "docs/pictures/answer.png" });
} finally {
  await desk.close();
}

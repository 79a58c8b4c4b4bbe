import { expect, test } from "vitest";
import { countText, figure, inches, money, said, used } from "../../src/app/wording/figures.ts";
import { percent } from "../../src/report/names.ts";

test("said(21.336, length) is 70 ft and 21.34 m, grouped by a comma or a thin space", () => {
  expect(said(21.336, "length", "us")).toBe("70 ft");
  expect(said(21.336, "length", "si")).toBe("21.34 m");
  expect(figure(12962, "force", "us")).toBe("2,914");
  expect(figure(2914, "force", "si")).toBe("2\u2009914");
});

test("a negative number has a minus sign, and a rounded nothing has none", () => {
  expect(figure(-12962, "force", "us")).toBe("−2,914");
  expect(figure(-0.1, "force", "us")).toBe("0");
  expect(money(-33)).toBe("−$33");
});

test("used() never lets a failing share read as 1.00", () => {
  expect(used(0.97)).toBe("0.97");
  expect(used(1)).toBe("1.00");
  expect(used(1.0001)).toBe("1.01");
  expect(used(Number.POSITIVE_INFINITY)).toBe("no hold");
});

test("percent() never rounds a margin up", () => {
  expect(percent(0.0399)).toBe("3");
  expect(percent(0.04)).toBe("4");
  expect(percent(-0.151)).toBe("−16");
});

test("countText() writes large counts as powers of ten", () => {
  expect(countText(2914, "us")).toBe("2,914");
  expect(countText(1.3e11, "us")).toBe("1.3 × 10¹¹");
});

test("inches() reads as on a rule, else as a decimal", () => {
  expect(inches(0.0254 * 0.875)).toBe("7/8");
  expect(inches(0.0254 * 1.125)).toBe("1 1/8");
  expect(inches(0.0254 * 0.083)).toBe(".083");
});

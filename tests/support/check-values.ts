import { mkdirSync, writeFileSync } from "node:fs";
import { afterAll, expect } from "vitest";
import { type CheckValue, ROWS_FOLDER } from "./check-value-row.ts";

const rows: CheckValue[] = [];

/** Asserts a computed value against an outside one and keeps the row for docs/validation.md. */
export function checkValue(value: CheckValue): void {
  rows.push(value);
  const { expected, computed, tolerance, absolute } = value;
  const allowed = absolute ? tolerance : tolerance * Math.abs(expected);
  expect(
    Math.abs(computed - expected),
    `${value.subject}: computed ${computed} ${value.unit}, expected ${expected} within ${allowed} (${value.source})`,
  ).toBeLessThanOrEqual(allowed);
}

afterAll(() => {
  if (rows.length === 0) return;
  const path = expect.getState().testPath ?? "unknown";
  const name = path.replace(/^.*\/tests\//, "").replaceAll("/", "__");
  mkdirSync(ROWS_FOLDER, { recursive: true });
  writeFileSync(`${ROWS_FOLDER}/${name}.json`, JSON.stringify(rows));
});

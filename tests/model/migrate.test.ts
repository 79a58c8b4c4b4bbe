import { expect, test } from "vitest";
import { migrated } from "../../src/model/migrate.ts";
import { errorsOf } from "./support.ts";

const steps = {
  1: (file: object) => ({ ...file, mastwright: 2, name: "was title" }),
  2: (file: object) => ({ ...file, mastwright: 3, aim: "cost" }),
};

test("migrated takes an older file through each step in order", () => {
  expect(migrated({ mastwright: 1 }, steps, 3)).toEqual({
    ok: true,
    value: { mastwright: 3, name: "was title", aim: "cost" },
  });
});

test("migrated leaves a file of this version as it is", () => {
  const file = { mastwright: 1 };
  expect(migrated(file)).toEqual({ ok: true, value: file });
});

test.each([[7], [1.5], ["1"], [undefined], [0], [-1]])("migrated refuses version %j", (version) => {
  expect(errorsOf(migrated({ mastwright: version }))).toMatchObject([
    { path: "mastwright", expected: 'a version up to 1, as "mastwright": 1' },
  ]);
});

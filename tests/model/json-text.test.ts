import { expect, test } from "vitest";
import { readJson } from "../../src/model/json-text.ts";
import { errorsOf } from "./support.ts";

test.each([
  ['{"a": 1,\n "b": }', '"}" (line 2, column 7)', "a value"],
  ['{"a": [1, 2,]}', '"]" (line 1, column 13)', "a value"],
  ["{'a': 1}", expect.stringContaining("(line 1, column 2)"), expect.any(String)],
  ['{"a": tru}', '"tru" (line 1, column 7)', "a number, text in double quotes, true, false or null"],
  ['{"a": 1', "the end of the file (line 1, column 8)", "a closing brace"],
  ["", "the end of the file (line 1, column 1)", "a value"],
  ['{"a": 1} // done', expect.stringContaining("(line 1, column 10)"), "no comment"],
])("readJson(%j) says where the slip is", (text, found, expected) => {
  expect(errorsOf(readJson(text))).toEqual([{ path: "", found, expected, message: expect.any(String) }]);
});

test("readJson names a key that stands twice in one object, by its path", () => {
  const text = '{"site": {"soil": "a",\n "soil": "b"}, "lot": {"soil": 1}}';
  expect(errorsOf(readJson(text))).toMatchObject([
    { path: "site.soil", found: 'key "soil" a second time (line 2, column 2)', expected: "each key once" },
  ]);
});

test("readJson names the path of a key that stands twice inside a list", () => {
  expect(errorsOf(readJson('{"rows": [{"id": 1}, {"id": 1, "id": 2}]}'))).toMatchObject([
    { path: "rows[1].id" },
  ]);
});

test("readJson refuses 50 MB by its size, before it looks inside", () => {
  const text = "[".repeat(50_000_000);
  const start = performance.now();
  expect(errorsOf(readJson(text))).toEqual([
    {
      path: "",
      found: "a file of 50.0 MB",
      expected: "a file of 5.0 MB or less",
      message: expect.any(String),
    },
  ]);
  expect(performance.now() - start).toBeLessThan(100);
});

test("readJson counts bytes, not characters", () => {
  expect(errorsOf(readJson(`"${"³".repeat(3_000_000)}"`))).toMatchObject([{ found: "a file of 6.0 MB" }]);
});

test("readJson survives lists nested a million deep", () => {
  const text = "[".repeat(1_000_000) + "]".repeat(1_000_000);
  expect(errorsOf(readJson(text))).toMatchObject([{ path: "", found: expect.stringContaining("too deep") }]);
});

test("readJson reads past a byte order mark", () => {
  expect(readJson('\ufeff{"a": 1}')).toEqual({ ok: true, value: { a: 1 } });
});

import { expect, test } from "vitest";
import { jsonSchemas } from "../../src/model/json-schema.ts";

// rewritten with `npx vitest run tests/model/json-schema.test.ts -u`
test.each(Object.entries(jsonSchemas()))(
  "docs/schema/%s.json is what the program reads",
  async (name, schema) => {
    await expect(`${JSON.stringify(schema, null, 2)}\n`).toMatchFileSnapshot(
      `../../docs/schema/${name}.json`,
    );
  },
);

test("jsonSchemas describes quantities as they are written", () => {
  expect(jsonSchemas().study).toMatchObject({
    additionalProperties: false,
    properties: { site: { properties: { frostDepth: { type: ["string", "number"] } } } },
  });
});

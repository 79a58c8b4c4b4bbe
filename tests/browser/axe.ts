import { source as axe } from "axe-core";
import type { Page } from "playwright-core";

interface Finding {
  readonly id: string;
  readonly nodes: readonly { readonly html: string }[];
}

/** What axe-core finds wrong with the page as it stands, the place beside each. */
export const findings = async (page: Page): Promise<string[]> => {
  await page.evaluate(axe);
  const violations = await page.evaluate(() =>
    (window as unknown as { axe: { run: (o: object) => Promise<{ violations: Finding[] }> } }).axe
      .run({ resultTypes: ["violations"] })
      .then((result) => result.violations),
  );
  return violations.flatMap(({ id, nodes }) =>
    nodes.slice(0, 3).map((node) => `${id}: ${node.html.slice(0, 160)}`),
  );
};

import { describe, expect, it } from "vitest";
import { verify } from "../../src/checks/verify.ts";
import { startingStudies } from "../../src/model/starting-studies.ts";
import { type Compared, compare, type FigureName } from "../../src/report/comparison.ts";
import { design, withGuys } from "../checks/support/pasture.ts";
import { problemOf } from "../support/small-study.ts";

const problem = problemOf(startingStudies[0].file);
const column = (name: string, of: ReturnType<typeof design>): Compared => ({
  name,
  design: of,
  verdict: verify(problem, of),
});

describe("designs side by side", () => {
  it("compare(columns) gives each figure as judged, and its difference from the first's", () => {
    const a = column("a", design());
    const b = column("b", withGuys({ radius: a.design.guys!.radius + 1.5 }));
    const { figures, columns } = compare([a, b, a]);
    const row = (what: FigureName) => figures.find((one) => one.what === what)!;
    expect(columns.map(({ name }) => name)).toEqual(["a", "b", "a"]);
    expect(row("cost").values).toEqual([a.verdict.bill.total, b.verdict.bill.total, a.verdict.bill.total]);
    expect(row("cost").differences[1]).toBeCloseTo(b.verdict.bill.total - a.verdict.bill.total, 9);
    expect(row("radius").differences[1]).toBeCloseTo(1.5, 9);
    // the same design differs in nothing
    for (const { what, differences } of figures) {
      expect(differences[0] ?? 0, what).toBe(0);
      expect(differences[2] ?? 0, what).toBe(0);
    }
  });

  it("compare(columns) names what differs in the choices, and what governs or fails", () => {
    const a = column("a", design());
    const unsafe = column("unsafe", withGuys({ radius: 3 }));
    const free = column("free", { ...design(), guys: null });
    const { choices, governs, figures, uses, columns } = compare([a, unsafe, free]);
    const of = (what: string) => choices.find((one) => one.what === what)!.differs;
    // the same guys, nearer
    expect(of("guys")).toEqual([false, false, true]);
    expect(of("anchor")).toEqual([false, true, true]);
    expect(of("stack")).toEqual([false, false, false]);
    expect(columns[1].passes).toBe(false);
    expect(governs[1]?.passes).toBe(false);
    // a design that fails has no margin, one without guys no radius
    const values = (what: FigureName) => figures.find((one) => one.what === what)!.values;
    expect(values("margin")[1]).toBeNull();
    expect(values("radius")[2]).toBeNull();
    expect(values("levels")[2]).toBe(0);
    const strength = a.verdict.checks.filter(({ kind }) => kind === "strength");
    for (const check of strength)
      expect(uses.find(({ id }) => id === check.id)?.values[0], check.id).toBe(check.utilisation);
    expect(uses.find(({ id }) => id.startsWith("guy-strength"))?.values[2]).toBeNull();
    expect(() => compare([])).toThrow(RangeError);
  });
});

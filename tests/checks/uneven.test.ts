import { describe, expect, test } from "vitest";
import { verify } from "../../src/checks/verify.ts";
import type { Design } from "../../src/model/design.ts";
import { pasture, withGuys } from "./support/pasture.ts";

type Guys = NonNullable<Design["guys"]>;

const sloping = (fall: number, toward = 90) =>
  pasture((s) => {
    s.lot.slope = { toward, fall };
  });
const strengths = (design: Design, problem = pasture()) =>
  new Map(
    verify(problem, design)
      .checks.filter((c) => c.kind === "strength")
      .map((c) => [c.id, c.utilisation]),
  );

describe("uneven anchors", () => {
  test("on a slope of a fifth the mast stands plumb in still air, each guy at a tension of its own", () => {
    const verdict = verify(sloping(0.2, 40), withGuys({}));
    const still = verdict.cases.find((c) => c.id === "still");
    if (!still) throw new Error("no case in still air");
    expect(Math.max(...still.along.map(Math.abs), ...still.across.map(Math.abs))).toBeLessThan(1e-7);
    const tensions = still.guys.filter((g) => g.level === 1).map((g) => g.tensionAnchor);
    expect(Math.max(...tensions) / Math.min(...tensions)).toBeGreaterThan(1.01);
  });

  test("as the slope goes to nothing, so does its effect: 18 winds in place of 4 find no more than the audit allows", () => {
    const even = strengths(withGuys({}));
    for (const [id, use] of strengths(withGuys({}), sloping(1e-7))) {
      const flat = even.get(id) ?? Number.NaN;
      expect(use / flat, id).toBeGreaterThan(1 - 1e-4);
      expect(use / flat, id).toBeLessThan(1 + 1e-4);
    }
  });

  test("turning lot and star together changes nothing", () => {
    const turned = (by: number) => strengths(withGuys({ rotation: by }), sloping(0.2, (30 + by) % 360));
    const before = turned(0);
    for (const [id, use] of turned(75)) expect(use, id).toBeCloseTo(before.get(id) ?? Number.NaN, 9);
  });

  test("a guy drawn in is steeper and is priced by its own length", () => {
    const { guys } = withGuys({});
    const { radius } = guys as Guys;
    const drawn = withGuys({ radii: [radius, 0.75 * radius, radius] });
    const verdict = verify(pasture(), drawn);
    const cut = verdict.bill.lines.filter(({ level, row }) => level === 1 && row !== undefined);
    expect(cut.map(({ anchor }) => anchor)).toEqual([1, 2, 3]);
    expect(cut[1].quantity).toBeLessThan(cut[0].quantity);
    expect(cut[0].quantity).toBe(cut[2].quantity);
    // the nearest anchor is pulled up most
    const most = [0, 1, 2].map((i) => Math.max(...verdict.cases.map((c) => c.anchors[i].uplift)));
    expect(most[1]).toBeGreaterThan(most[0]);
  });

  test("a level of its own tension is rigged to it", () => {
    const { guys } = withGuys({});
    const levels = (guys as Guys).levels.map((level, i) => (i === 0 ? { ...level, tension: 0.14 } : level));
    const verdict = verify(pasture(), withGuys({ levels }));
    const plain = verify(pasture(), withGuys({}));
    const still = (v: typeof verdict, level: number) =>
      v.cases.find((c) => c.id === "still")?.guys.find((g) => g.level === level)?.tensionAnchor ?? Number.NaN;
    expect(still(verdict, 1) / still(plain, 1)).toBeCloseTo(1.4, 3);
    expect(verdict.checks.find((c) => c.id === "initial-tension")?.demand).toBeCloseTo(0.14, 12);
  });

  test("a level below the highest anchor is refused by name", () => {
    expect(() => verify(sloping(0.5), withGuys({ radius: 60, rotation: 0 }))).toThrow(
      /above the highest anchor/,
    );
  });
});

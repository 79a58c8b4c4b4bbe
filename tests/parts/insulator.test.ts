import { describe, expect, it } from "vitest";
import { verify } from "../../src/checks/verify.ts";
import { defaultCatalog } from "../../src/model/default-catalog.ts";
import { parseStudy } from "../../src/model/parse.ts";
import type { StudyFile } from "../../src/model/study.ts";
import { Search } from "../../src/search/search.ts";
import { check, design, freeStanding, pasture } from "../checks/support/pasture.ts";
import { checkValue } from "../support/check-values.ts";
import { INCH, POUND } from "../support/us-units.ts";

const hardware = { weight: "6 lbf", price: "$14", breakingStrength: "6000 lbf" };
const insulate = (study: StudyFile) => {
  study.wishes.insulatedBase = true;
  study.parts = { ...study.parts, supports: ["guyed"], guyHardware: hardware };
};
const insulatedPasture = (change: (study: StudyFile) => void = () => {}) =>
  pasture((study) => {
    insulate(study);
    change(study);
  });
const plain = pasture((study) => {
  study.parts = { ...study.parts, guyHardware: hardware };
});
const on = (insulator: string) => {
  const { footing } = design();
  return design({ footing: { ...footing, insulator } });
};
const TALLEST = 13 * INCH;

describe("a mast on a base insulator", () => {
  const problem = insulatedPasture();
  const verdict = verify(problem, on("insulator-9"));
  const row = problem.catalog.insulators.find(({ id }) => id === "insulator-9");

  it("verify(design) asks the insulator for thrust, push and turn, with the rule set's factor", () => {
    const thrust = Math.max(...verdict.cases.map((c) => c.base.compression));
    const push = Math.max(...verdict.cases.map((c) => c.base.shear));
    for (const [id, demand, capacity] of [
      ["insulator-compression", thrust, row?.compression],
      ["insulator-shear", push, row?.shear],
    ] as const) {
      const { required, source, ...found } = check(verdict, id);
      expect(found.demand).toBeCloseTo(demand, 6);
      expect(found.capacity).toBe(capacity);
      expect(required).toBe(problem.rules.baseInsulator.required);
      expect(source).toBe(problem.rules.baseInsulator.source);
      expect(found.utilisation).toBeCloseTo((demand * required) / (capacity ?? 0), 9);
    }
    // the foot of a pinned mast turns by no more than it leans
    const turn = check(verdict, "insulator-turn");
    expect(turn.demand).toBeGreaterThan(0);
    expect(turn.demand).toBeLessThanOrEqual(check(verdict, "tilt").demand * (1 + 1e-9));
  });

  it("verify(design) turns the footing by what pushes at the mast's foot, at the height of the stand", () => {
    const at = verdict.cases.findIndex(({ title }) => title === check(verdict, "overturning").loadCase);
    const { base } = verdict.cases[at];
    const depth = design().footing.depth;
    checkValue({
      subject: "base insulator: overturning of the block under it about its toe",
      source: "statics: V (stand + D)",
      tag: "arithmetic",
      expected: base.shear * (TALLEST + depth),
      computed: check(verdict, "overturning").demand,
      tolerance: 1e-12,
      unit: "N m",
    });
    checkValue({
      subject: "base insulator: thrust on the concrete under it",
      source: "statics: N + weight of the insulator",
      tag: "arithmetic",
      expected: Math.max(...verdict.cases.map((c) => c.base.compression)) + 38 * POUND,
      computed: check(verdict, "base-compression").demand,
      tolerance: 1e-12,
      unit: "N",
    });
  });

  it("verify(design) holds the guys as low under the mast's foot as the insulator stands", () => {
    const pull = (d: typeof verdict) => d.cases.find((c) => c.windToward === null)?.anchors[0].uplift ?? 0;
    const before = verify(plain, design());
    const levels = design().guys?.levels ?? [];
    const radius = design().guys?.radius ?? 0;
    const lift = (stand: number) =>
      levels.reduce((sum, { height, strand: id }) => {
        const strand = plain.catalog.strand.find((one) => one.id === id);
        if (!strand) throw new Error(`no strand ${id}`);
        const pulled = 0.1 * strand.breakingStrength;
        const chord = Math.hypot(height + stand, radius);
        const weight = strand.weight + (6 * POUND) / chord;
        // moments about its head: a guy leaves its anchor flatter than its chord
        const flatter = (weight * radius) / (2 * pulled);
        return (
          sum +
          (pulled * (height + stand) * Math.sqrt(1 - flatter ** 2)) / chord -
          (weight * radius ** 2) / (2 * chord)
        );
      }, 0);
    checkValue({
      subject: "base insulator: what it raises the guys' uplift by in still air",
      source: "statics: T rise / chord less what its weight takes, moments of a guy about its head",
      tag: "arithmetic",
      expected: lift(TALLEST) - lift(0),
      computed: pull(verdict) - pull(before),
      tolerance: 1e-4,
      unit: "N",
    });
  });

  it("verify(design) buys it, at the price of its row", () => {
    const line = verdict.bill.lines.find(({ item }) => item === row?.name);
    expect(line).toMatchObject({ group: "footing", quantity: 1, unit: "each", amount: 31_000 });
    expect(verdict.bill.total).toBeCloseTo(verify(plain, design()).bill.total + 310 + stretch(), 6);
    function stretch() {
      const strand = (v: typeof verdict) =>
        v.bill.lines.filter((l) => l.unit === "m" && l.group === "guys").reduce((s, l) => s + l.amount, 0);
      return (strand(verdict) - strand(verify(plain, design()))) / 100;
    }
  });

  it("verify(a guy whose insulator breaks before its strand) counts the insulator", () => {
    const weak = insulatedPasture((study) => {
      study.parts = { ...study.parts, guyHardware: { ...hardware, breakingStrength: "2500 lbf" } };
    });
    const { capacity } = check(verify(weak, on("insulator-9")), "guy-strength/2");
    expect(capacity).toBeCloseTo(2500 * POUND, 6);
    expect(check(verdict, "guy-strength/2").capacity).toBeCloseTo(6000 * POUND, 6);
  });

  it("verify(a small insulator) fails by its rating", () => {
    const heavy = insulatedPasture((study) => {
      study.catalog = {
        insulators: [
          {
            ...(defaultCatalog.insulators ?? [])[0],
            id: "weak",
            compression: "2000 lbf",
            shear: "60 lbf",
            turn: 0.01,
          },
        ],
      };
    });
    const failing = verify(heavy, on("weak")).checks.filter(({ passes }) => !passes);
    expect(failing.map(({ id }) => id)).toEqual(
      expect.arrayContaining(["insulator-compression", "insulator-shear", "insulator-turn"]),
    );
  });

  it("Search(study) takes the cheapest insulator that holds", () => {
    const narrow = (insulators: "all" | string[]) =>
      insulatedPasture((study) => {
        study.parts = {
          ...study.parts,
          sections: ["3leg-13"],
          strands: ["ehs-3-16", "ehs-1-4"],
          levelCounts: [2],
          insulators,
        };
      });
    const found = (insulators: "all" | string[]) => {
      const search = new Search(narrow(insulators));
      while (!search.step(1000)) {}
      return search.best;
    };
    const all = found("all");
    expect(all?.design.footing.insulator).toBe("insulator-9");
    const stands = verify(narrow("all"), all!.design);
    expect(stands.passes).toBe(true);
    const smaller = { ...all!.design, footing: { ...all!.design.footing, insulator: "insulator-7" } };
    expect(
      verify(narrow("all"), smaller)
        .checks.filter((c) => !c.passes)
        .map((c) => c.id),
    ).toContain("insulator-compression");
  });
});

describe("what is refused of an insulated mast", () => {
  const refusals = (change: (study: StudyFile) => void) => {
    let file: StudyFile | undefined;
    pasture((study) => {
      file = structuredClone(study);
    });
    if (!file) throw new Error("no study");
    insulate(file);
    change(file);
    const read = parseStudy(file, { catalog: defaultCatalog });
    return read.ok ? [] : read.errors.map(({ path, message }) => `${path}: ${message}`);
  };

  it("parseStudy(free-standing, guys of bare strand, antennas off the axis) refuses each with its reason", () => {
    expect(refusals(() => {})).toEqual([]);
    expect(
      refusals((study) => {
        study.parts = { ...study.parts, supports: ["guyed", "freestanding"] };
      }),
    ).toEqual([expect.stringMatching(/parts.supports.*stands by its guys alone/)]);
    expect(
      refusals((study) => {
        study.parts = { ...study.parts, guyHardware: { weight: "6 lbf" } };
      }),
    ).toEqual([expect.stringMatching(/parts.guyHardware.*insulators at the mast end of every guy/)]);
    expect(
      refusals((study) => {
        study.wishes.packages[0].items.push({ antenna: "beam-6m", below: "10 ft", offset: "2 ft" });
      }),
    ).toEqual([expect.stringMatching(/offset.*against twist is not worked out/)]);
    expect(
      refusals((study) => {
        study.parts = { ...study.parts, insulators: ["insulator-8"] };
      }),
    ).toEqual([expect.stringMatching(/parts.insulators.0.*base insulator of the catalog/)]);
  });

  it("verify(no insulator, an unknown one, no guys, one where none is wished) refuses the design", () => {
    const problem = insulatedPasture();
    expect(() => verify(problem, design())).toThrow(
      /footing.insulator: found none, expected a base insulator/,
    );
    expect(() => verify(problem, on("other"))).toThrow(/found "other", expected a base insulator/);
    expect(() => verify(problem, freeStanding())).toThrow(/guys: found none/);
    expect(() => verify(plain, on("insulator-9"))).toThrow(
      /expected none: the study wishes no insulated mast/,
    );
  });
});

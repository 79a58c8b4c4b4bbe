import { expect, test } from "vitest";
import { loadCase } from "../../src/checks/loads.ts";
import { resolve } from "../../src/checks/resolve.ts";
import { verify } from "../../src/checks/verify.ts";
import { windCases } from "../../src/checks/wind-cases.ts";
import type { StudyFile } from "../../src/model/study.ts";
import { pipeSlope } from "../../src/physics/steel/pipe-slope.ts";
import { checkValue } from "../support/check-values.ts";
import { FOOT } from "../support/us-units.ts";
import { check, design, freeStanding, pasture } from "./support/pasture.ts";

const air = (study: StudyFile) => {
  study.site.temperature = { installed: 15, coldest: -30, hottest: 45 };
};
const ids = (problem: ReturnType<typeof pasture>, guyed = true) =>
  windCases(problem, resolve(problem, guyed ? design() : freeStanding()).model.guys).map(({ id }) => id);

test("windCases(temperature) adds every wind in the coldest and in the hottest air, after the others", () => {
  const plain = ids(pasture());
  const winds = plain.filter((id) => id !== "still");
  expect(ids(pasture(air))).toEqual([
    ...plain,
    ...winds.map((id) => `${id}-cold`),
    ...winds.map((id) => `${id}-hot`),
  ]);
  // nothing holds a mast without guys from growing
  expect(ids(pasture(air), false)).toEqual(ids(pasture(), false));
});

test("loadCase(cold) shortens guys and mast by 11.7 millionths a kelvin, and leaves the wind as it is", () => {
  const problem = pasture(air);
  const { model } = resolve(problem, design());
  const cases = windCases(problem, model.guys);
  const [plain] = cases;
  const cold = cases.find(({ id }) => id === `${plain.id}-cold`);
  if (!cold) throw new Error("no cold case");
  const load = loadCase(problem, model, cold);
  const strain = -45 * 11.7e-6;
  expect(load.mastStrain).toBeCloseTo(strain, 12);
  load.guyStretch?.forEach((stretch) => {
    expect(stretch).toBeCloseTo(1 + strain, 12);
  });
  expect(load.guyStretch).toHaveLength(2);
  expect(load.line(10)).toBe(loadCase(problem, model, plain).line(10));
});

test("verify(temperature): guys are tightest in the cold, and slackest in the heat", () => {
  const verdict = verify(pasture(air), design());
  const tension = (id: string, pick: (...values: number[]) => number) => {
    const found = verdict.cases.find((c) => c.id === id);
    if (!found) throw new Error(`no case ${id}`);
    return pick(...found.guys.map((guy) => guy.tensionMast));
  };
  expect(tension("away-cold", Math.max)).toBeGreaterThan(tension("away", Math.max));
  expect(tension("away-hot", Math.min)).toBeLessThan(tension("away", Math.min));
  expect(check(verdict, "guy-strength/2").loadCase).toMatch(/-30 °C/);
});

test("windCases(ice and temperature) hangs the ice in freezing air", () => {
  const problem = pasture((study) => {
    air(study);
    study.site.ice = { thickness: "0.5 in", speed: "40 mph" };
  });
  const { model } = resolve(problem, design());
  const iced = windCases(problem, model.guys).filter(({ weather }) => weather === "iced");
  expect(iced.length).toBeGreaterThan(2);
  expect(iced.every(({ warmer }) => warmer === -15)).toBe(true);
});

test("verify(lossOfOneGuy) judges the mast with a guy of each level gone, by the rule set's own factor", () => {
  const lost = pasture((study) => {
    study.wishes.lossOfOneGuy = true;
  });
  const verdict = verify(lost, design());
  const accidents = verdict.cases.filter((c) => c.id.startsWith("lost-"));
  expect(accidents.map((c) => c.id)).toEqual(["lost-1", "lost-2"]);
  accidents.forEach((c, level) => {
    const gone = c.guys.filter((guy) => guy.tensionMast === 0);
    expect(gone).toEqual([expect.objectContaining({ level: level + 1, anchor: 1 })]);
    // the others pull the mast away from the anchor that it lost
    const at = (design().guys?.levels[level].height ?? 0) - 1e-6;
    expect(c.along[c.z.findIndex((z) => z >= at)]).toBeGreaterThan(0.001);
  });
  const worst = verdict.checks.filter((c) => /lost/.test(c.loadCase));
  // still air with nominal strength is milder than the design wind here
  expect(worst.every((c) => c.required <= 1 || c.limitState === "stability")).toBe(true);
  const windy = pasture((study) => {
    study.wishes.lossOfOneGuy = true;
    study.catalog = {
      rules: [{ ...rules(lost), id: "hard", lossOfGuy: { wind: 1, required: 1.5, source: "a test's own" } }],
    };
    study.rules.set = "hard";
  });
  const hard = verify(windy, design());
  const judged = hard.checks.filter((c) => c.source === "a test's own");
  expect(judged.length).toBeGreaterThan(0);
  expect(judged.every((c) => c.required === 1.5 && /lost, wind from its side/.test(c.loadCase))).toBe(true);
  expect(hard.passes).toBe(false);
});

const rules = (problem: ReturnType<typeof pasture>) => problem.rules;

test("verify(swayLimit) says how far antennas turn in the service wind, the pipe's own bend with it", () => {
  const limited = (swayLimit: number, serviceWind: number) =>
    check(
      verify(
        pasture((study) => Object.assign(study.wishes, { swayLimit, serviceWind })),
        design(),
      ),
      "sway",
    );
  const whole = limited(5, 1);
  const half = limited(5, 0.5);
  expect(whole.kind).toBe("limit");
  expect(whole.capacity).toBeCloseTo((5 * Math.PI) / 180, 12);
  expect(half.demand).toBeLessThan(whole.demand);
  expect(half.demand).toBeGreaterThan(0.3 * whole.demand);
  expect(half.note).toMatch(/in 50 % of the design wind$/);
  const tight = limited((0.9 * whole.demand * 180) / Math.PI, 1);
  expect(tight.passes).toBe(false);
  expect(limited((1.1 * whole.demand * 180) / Math.PI, 1).passes).toBe(true);
  expect(verify(pasture(), design()).checks.some((c) => c.limitState === "sway")).toBe(false);
});

test("verify(twistLimit) holds antennas beside the mast to a turn about its axis", () => {
  const twist = (twistLimit: number) =>
    check(
      verify(
        pasture((study) => {
          Object.assign(study.wishes, { twistLimit, serviceWind: 0.5 });
          study.wishes.packages[0].items.push({
            area: "4 ft2",
            areaKind: "flat",
            weight: "40 lbf",
            at: "30 ft",
            offset: "2 ft",
          });
        }),
        freeStanding(),
      ),
      "twist",
    );
  const found = twist(5);
  // above the torque nothing turns the mast further
  expect(found.at).toBeGreaterThanOrEqual(30 * FOOT - 1e-9);
  expect(found.demand).toBeGreaterThan(0);
  expect(twist((0.9 * found.demand * 180) / Math.PI).passes).toBe(false);
  expect(twist((1.1 * found.demand * 180) / Math.PI).passes).toBe(true);
});

test("pipeSlope is that of a cantilever under forces beyond and before the place", () => {
  const ei = 2e4;
  checkValue({
    subject: "turn of an antenna pipe under two forces",
    source: "cantilever: F b2 / 2 EI beyond the force, F a (2 b - a) / 2 EI before it (textbook)",
    tag: "arithmetic",
    expected: (100 * 1 ** 2) / (2 * ei) + (200 * 1.5 * (2 * 2 - 1.5)) / (2 * ei),
    computed: pipeSlope(
      [
        { force: 100, at: 1 },
        { force: 200, at: 2 },
      ],
      1.5,
      ei,
    ),
    tolerance: 1e-12,
    unit: "rad",
  });
});

test("verify(guyed) says beside each level how slack its slackest guy gets and what the hand method finds", () => {
  const verdict = verify(pasture(), design());
  for (const level of [1, 2]) {
    const { note, demand, loadCase } = check(verdict, `guy-strength/${level}`);
    const found = /slackest keeps (\d+) % of its initial tension \(guy \d, .+\)/.exec(note ?? "");
    const rigged = verdict.cases.find((c) => c.id === "still")?.guys ?? [];
    const shares = verdict.cases.flatMap((c) =>
      c.guys.map((guy, g) => (guy.level === level ? guy.tensionAnchor / rigged[g].tensionAnchor : 9)),
    );
    expect(Number(found?.[1])).toBe(Math.round(100 * Math.min(...shares)));
    const hand = verdict.cases.find((c) => c.title === loadCase)?.hand?.tensions[level - 1] ?? 0;
    expect(note).toContain(`${((100 * hand) / demand).toFixed(0)} % of this pull`);
    // without the initial tension it is on the unsafe side
    expect(hand).toBeLessThan(demand);
  }
});

test("the hand method balances the wind's moment about the base, and is right for one level", () => {
  const problem = pasture();
  const one = design({
    guys: {
      ...(design().guys as NonNullable<ReturnType<typeof design>["guys"]>),
      levels: [{ height: 65 * FOOT, strand: "ehs-1-4" }],
    },
  });
  const windy = verify(problem, one).cases.find((c) => c.id === "toward");
  const hand = windy?.hand;
  if (!hand) throw new Error("no hand method");
  const { model } = resolve(problem, one);
  const load = loadCase(problem, model, windCases(problem, model.guys)[0]);
  const steps = 2000;
  const height = model.stack.height;
  let moment = 0;
  for (let i = 0; i < steps; i++) {
    const z = ((i + 0.5) * height) / steps;
    moment += (load.line(z) * z * height) / steps;
  }
  for (const point of load.points) moment += point.force * point.z + point.moment;
  checkValue({
    subject: "hand method: thrust of the one level of a mast",
    source: "statics: moment of the wind about the base over the height of the guys",
    tag: "arithmetic",
    expected: moment / (65 * FOOT),
    computed: hand.thrusts[0],
    tolerance: 1e-4,
    unit: "N",
  });
  // exactly, drift and the guys' own wind come on top
  expect(hand.exact[0] / hand.thrusts[0]).toBeGreaterThan(0.95);
  expect(hand.exact[0] / hand.thrusts[0]).toBeLessThan(1.25);
});

import { test } from "vitest";
import { variable } from "../../../src/reliability/distributions.ts";
import { firstOrder } from "../../../src/reliability/form.ts";
import { bothBelow, normalAt, normalBelow } from "../../../src/reliability/normal.ts";
import { checkValue } from "../../support/check-values.ts";

test("the normal distribution is the tables'", () => {
  const below = [
    [0.5, 0.691462461274013],
    [1, 0.841344746068543],
    [2, 0.977249868051821],
    [3, 0.99865010196837],
    [-4, 3.167124183311992e-5],
    [-5, 2.866515718791939e-7],
    [-6, 9.865876450376981e-10],
  ];
  for (const [x, expected] of below)
    checkValue({
      subject: `reliability: normal distribution at ${x}`,
      source: "Abramowitz and Stegun 1964, tables 26.1 and 26.2",
      tag: "from memory",
      expected,
      computed: normalBelow(x),
      tolerance: 1e-12,
      unit: "",
    });
  const quantiles = [
    [0.9, 1.2815515655446],
    [0.975, 1.959963984540054],
    [0.999, 3.090232306167813],
    [1e-6, -4.753424308822899],
  ];
  for (const [p, expected] of quantiles)
    checkValue({
      subject: `reliability: normal quantile of ${p}`,
      source: "Abramowitz and Stegun 1964, tables 26.5 and 26.6",
      tag: "from memory",
      expected,
      computed: normalAt(p),
      tolerance: 1e-12,
      unit: "",
    });
});

test("two normals below their means are Sheppard's quarter and arc", () => {
  for (const r of [-0.9, -0.3, 0, 0.5, 0.8, 0.99])
    checkValue({
      subject: `reliability: both of two normals of correlation ${r} below their means`,
      source: "1/4 + asin(r)/(2 pi): Sheppard 1899",
      tag: "arithmetic",
      expected: 0.25 + Math.asin(r) / (2 * Math.PI),
      computed: bothBelow(0, 0, r),
      tolerance: 1e-12,
      unit: "",
    });
});

test("strength less load, both normal, has Cornell's index", () => {
  for (const [strength, load] of [
    [
      { mean: 200, deviation: 20 },
      { mean: 100, deviation: 30 },
    ],
    [
      { mean: 53, deviation: 4 },
      { mean: 50, deviation: 9 },
    ],
    [
      { mean: 80, deviation: 10 },
      { mean: 90, deviation: 5 },
    ],
  ]) {
    const r = variable({ distribution: "normal", ...strength });
    const s = variable({ distribution: "normal", ...load });
    checkValue({
      subject: `reliability: index of R ${strength.mean} ± ${strength.deviation} less S ${load.mean} ± ${load.deviation}, normal`,
      source: "(mR - mS)/sqrt(sR2 + sS2): Cornell 1969; Melchers, Structural Reliability, section 1.4",
      tag: "arithmetic",
      expected: (strength.mean - load.mean) / Math.hypot(strength.deviation, load.deviation),
      computed: firstOrder(([x, y]) => r.at(x) - s.at(y), 2).beta,
      tolerance: 1e-7,
      unit: "",
    });
  }
});

test("strength over load, both lognormal, has the index of their logarithms", () => {
  const zeta = (v: number) => Math.sqrt(Math.log(1 + v * v));
  for (const [ratio, vr, vs] of [
    [3, 0.15, 0.3],
    [2, 0.1, 0.2],
    [1.4, 0.05, 0.6],
  ]) {
    const r = variable({ distribution: "lognormal", mean: ratio, deviation: vr * ratio });
    const s = variable({ distribution: "lognormal", mean: 1, deviation: vs });
    const medians = (ratio / Math.sqrt(1 + vr * vr)) * Math.sqrt(1 + vs * vs);
    checkValue({
      subject: `reliability: index of R/S, means ${ratio} to 1, variations ${vr} and ${vs}, lognormal`,
      source:
        "ln(median R/median S)/sqrt(ln(1 + VR2) + ln(1 + VS2)): Rosenblueth and Esteva 1972; Ang and Tang, volume 2",
      tag: "arithmetic",
      expected: Math.log(medians) / Math.hypot(zeta(vr), zeta(vs)),
      // not its logarithm: curved in standard normal space
      computed: firstOrder(([x, y]) => r.at(x) - s.at(y), 2).beta,
      tolerance: 1e-6,
      unit: "",
    });
  }
});

test("a Gumbel load alone is passed with its own probability, of one year and of many", () => {
  const mean = 30;
  const deviation = 6;
  const scale = (deviation * Math.sqrt(6)) / Math.PI;
  const mode = mean - 0.577215664901532 * scale;
  for (const years of [1, 50])
    for (const strength of [38, 60]) {
      const one = Math.exp(-Math.exp(-(strength - mode) / scale));
      const wind = variable({ distribution: "gumbel", mean, deviation }, years);
      checkValue({
        subject: `reliability: greatest of ${years} Gumbel draws (30 ± 6) above ${strength}`,
        source: "1 - exp(-exp(-(x - mode)/scale))^n: Gumbel 1958",
        tag: "arithmetic",
        expected: 1 - one ** years,
        computed: firstOrder(([u]) => strength - wind.at(u), 1).probability,
        tolerance: 1e-6,
        unit: "",
      });
    }
});

import type { CostMap, Front, MapCell, Outcome } from "../../../src/search/types.ts";
import type { SearchClient } from "../../../workers/protocol.ts";
import { fixture } from "./fixture.ts";

/** Stands in for the search while the page is worked on; `?state=` picks the state to look at. Never shipped. */
const wanted = () =>
  typeof location === "undefined" ? null : new URLSearchParams(location.search).get("state");
const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));
const ft = 0.3048;

const early = { ...fixture.proof, decided: 1.29e11, analysed: 1204, bound: 3180, gap: 180, seconds: 0.4 };
const proven: Outcome = {
  status: "proven",
  best: fixture.judged(),
  proof: fixture.proof,
  whyNotCheaper: [
    [33, { what: "radius", from: 28 * ft, to: 26 * ft }, "Anchor uplift", 1.03],
    [64, { what: "level", level: 1, from: 33 * ft, to: 30 * ft }, "Leg compression", 1.02],
    [148, { what: "levels", from: 2, to: 1 }, "Whole-mast stability", Number.POSITIVE_INFINITY],
    [
      242,
      {
        what: "section",
        from: "3leg-9",
        to: "3leg-10.5-used",
        was: [],
        now: [{ section: "3leg-10.5-used", length: 70 * ft }],
      },
      "Leg compression",
      1.12,
    ],
  ].map(([saves, change, failsIn, utilisation]) => ({
    design: fixture.design,
    saves: saves as number,
    savesConcrete: 0,
    change: change as never,
    failsIn: failsIn as string,
    utilisation: utilisation as number,
  })),
};

const front: Front = {
  status: "proven",
  exactBelow: null,
  proof: { ...fixture.proof, seconds: 6.8 },
  points: [
    [3360, 1.68, 0.03],
    [3455, 1.4, 0.04],
    [3610, 1.12, 0.02],
    [3660, 1.94, 0.12],
    [3740, 1.62, 0.14],
    [3760, 0.93, 0.05],
    [3870, 1.31, 0.12],
    [3990, 0.74, 0.04],
    [4035, 1.04, 0.11],
    [4105, 2.38, 0.31],
    [4150, 2.05, 0.29],
    [4260, 0.86, 0.13],
    [4265, 1.66, 0.28],
    [4310, 0.62, 0.04],
    [4440, 1.28, 0.27],
    [4590, 0.68, 0.12],
    [4700, 1.02, 0.26],
    [4880, 2.74, 0.55],
    [5080, 0.81, 0.26],
    [5190, 1.72, 0.54],
    [5480, 1.35, 0.52],
    [5900, 1.05, 0.51],
  ].map(([cost, yards, margin]) => ({ cost, concrete: yards * 0.764555, margin, design: fixture.design })),
};

export const createSearchClient = (): SearchClient => {
  let stopped = false;
  return {
    async find(_job, onProgress) {
      stopped = false;
      const state = wanted();
      await pause(150);
      onProgress({ proof: early, best: fixture.judged(0.95) });
      while (state === "searching" && !stopped) await pause(100);
      if (stopped || state === "stopped")
        return { status: "stopped", best: fixture.judged(0.96), proof: early };
      if (state === "none")
        return {
          status: "none-safe",
          nearest: fixture.judged(1.18),
          proof: { ...fixture.proof, analysed: 611 },
        };
      return proven;
    },
    async front() {
      await pause(100);
      return front;
    },
    async map(_job, axes, onProgress) {
      const cells: MapCell[] = [];
      for (const height of axes.heights) {
        for (const area of axes.areas) {
          const load = (height / ft) * 0.012 + (area / 0.0929) * 0.03;
          const safe = (height / ft / 110) ** 1.1 + area / 0.0929 / 34 < 1.3;
          const cost = Math.round(900 + 1350 * load + 500 * load ** 2);
          cells.push({
            height,
            area,
            cost: safe ? cost : null,
            concrete: safe ? 1 : null,
            margin: safe ? 0.03 : null,
            design: safe ? fixture.design : null,
            stoppedBy: safe ? null : "Anchor uplift",
          });
        }
        onProgress({ ...axes, cells: [...cells], done: false });
        await pause(20);
      }
      const done: CostMap = { ...axes, cells, done: true };
      return done;
    },
    stop() {
      stopped = true;
    },
    resume: async () => proven,
    dispose() {},
  };
};

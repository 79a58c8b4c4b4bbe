import { afterEach, describe, expect, it, vi } from "vitest";
import { verify } from "../../src/checks/verify.ts";
import { defaultCatalog } from "../../src/model/default-catalog.ts";
import { parseCatalog, parseStudy } from "../../src/model/parse.ts";
import { startingStudies } from "../../src/model/starting-studies.ts";
import type { StudyFile } from "../../src/model/study.ts";
import { compile } from "../../src/problem/compile.ts";
import type { Outcome, Progress } from "../../src/search/types.ts";
import { createThreads } from "../../workers/node-client.ts";
import type { Pool } from "../../workers/pool.ts";

const job = (id: string) => {
  const study = startingStudies.find((s) => s.id === id)?.file;
  if (!study) throw new Error(`no starting study "${id}"`);
  return { study, catalog: defaultCatalog };
};

let pool: Pool | null = null;
afterEach(() => {
  pool?.dispose();
  pool = null;
});

const told = (outcome: Outcome) => {
  if (outcome.status !== "proven") throw new Error(`expected a proof, found "${outcome.status}"`);
  return {
    design: outcome.best.design,
    total: outcome.best.verdict.bill.total,
    passes: outcome.best.verdict.passes,
  };
};

describe("a pool of real threads", () => {
  it("find(job) gives the same design with one, two and five workers, and counts the whole grid", async () => {
    const answers = [];
    for (const count of [1, 2, 5]) {
      pool = createThreads(count);
      const outcome = await pool.find(job("used-stack"), () => {});
      answers.push(told(outcome));
      const { proof } = outcome;
      const counted = Object.values(proof.pruned).reduce((sum, n) => sum + n, 0) + 1;
      expect(counted).toBe(proof.gridSize);
      expect(proof.decided).toBe(proof.gridSize);
      expect(proof.gap).toBe(0);
      pool.dispose();
    }
    expect(answers[1]).toEqual(answers[0]);
    expect(answers[2]).toEqual(answers[0]);
    expect(answers[0].passes).toBe(true);
  });

  it("find(job) streams a bound that only rises and a best that only falls", async () => {
    pool = createThreads(2);
    const seen: Progress[] = [];
    const outcome = await pool.find(job("upper-pasture"), (p) => seen.push(p));
    const { total } = told(outcome);
    expect(seen.length).toBeGreaterThan(0);
    let best = Number.POSITIVE_INFINITY;
    for (const { proof, best: judged } of seen) {
      expect(proof.bound).toBeLessThanOrEqual(total);
      if (!judged) continue;
      expect(judged.verdict.passes).toBe(true);
      expect(judged.verdict.bill.total).toBeLessThanOrEqual(best);
      best = judged.verdict.bill.total;
    }
  });

  it("stop() ends the search soon with what it has, and resume() goes on to the same answer", async () => {
    pool = createThreads(1);
    const whole = told(await pool.find(job("upper-pasture"), () => {}));
    let asked = 0;
    const stopped = await pool.find(job("upper-pasture"), () => {
      if (asked === 0) {
        asked = performance.now();
        pool?.stop();
      }
    });
    expect(stopped.status).toBe("stopped");
    expect(stopped.proof.decided).toBeLessThan(stopped.proof.gridSize);
    expect(stopped.proof.bound).toBeLessThanOrEqual(whole.total);
    const resumed = await pool.resume(() => {});
    expect(told(resumed)).toEqual(whole);
    expect((await pool.whyNot())?.length).toBeGreaterThan(0);
  });

  it("read(job) says what the parser says, and what was refused is not remembered as read", async () => {
    pool = createThreads(1);
    const good = job("used-stack");
    const read = parseStudy(good.study, { catalog: good.catalog });
    const base = parseCatalog(good.catalog);
    const whole = { catalog: base.ok && base.catalog, read };
    expect(await pool.read(good)).toEqual(whole);
    const bad = { ...good, catalog: { ...defaultCatalog, soils: [{ id: "mud" }] } as never };
    const refused = await pool.read(bad);
    expect(refused.catalog).toBeNull();
    expect(refused.read).toEqual(parseStudy(good.study, { catalog: bad.catalog }));
    expect(refused.read.ok).toBe(false);
    expect(await pool.read(good)).toEqual(whole);
  });

  it("find(job) is answered by more workers from the second job on, where there are to be more", async () => {
    pool = createThreads(1, 2);
    const first = told(await pool.find(job("used-stack"), () => {}));
    const shares = new Set<number>();
    const of = vi.spyOn(pool as unknown as { all: () => Promise<unknown[]> }, "all");
    expect(told(await pool.find(job("used-stack"), () => {}))).toEqual(first);
    for (const { value } of of.mock.results) shares.add((await value).length);
    expect([...shares]).toEqual([2]);
    expect(told(await pool.find(job("hard-ground"), () => {})).passes).toBe(true);
  });

  it("whyNot() gives cheaper designs that fail, of whichever aim, and null where another question came first", async () => {
    pool = createThreads(2);
    await expect(pool.whyNot()).rejects.toThrow("no answer to explain");
    const used = job("used-stack");
    const { total, design } = told(await pool.find(used, () => {}));
    const rows = await pool.whyNot();
    expect(rows?.length).toBeGreaterThan(2);
    for (const { design: cheaper, saves, utilisation } of rows ?? []) {
      const read = parseStudy(used.study, { catalog: used.catalog });
      if (!read.ok) throw new Error("expected a study that parses");
      const verdict = verify(compile(read.study, read.catalog), cheaper);
      expect(verdict.passes).toBe(false);
      expect(verdict.checks[0].utilisation).toBe(utilisation);
      expect(verdict.bill.total).toBeCloseTo(total - saves, 6);
    }
    const asked = pool.whyNot();
    await pool.find(job("hard-ground"), () => {});
    expect(await asked).toBeNull();
    // the last question of the row found nothing safe: what is explained is the answer
    const [few] = design.guys?.levels ?? [];
    const narrow: StudyFile = {
      ...used.study,
      aim: "margin",
      wishes: { ...used.study.wishes, budget: total + 100 },
      parts: { ...used.study.parts, radius: [`${design.guys?.radius} m`], strands: [few.strand] },
    };
    await pool.find({ ...used, study: narrow }, () => {});
    expect((await pool.whyNot())?.length).toBeGreaterThan(0);
  }, 120_000);

  it("a job that does not parse rejects with the parser's words", async () => {
    pool = createThreads(1);
    const bad = { ...job("used-stack").study, rules: { set: "no-such-rules" } };
    await expect(pool.find({ study: bad, catalog: defaultCatalog }, () => {})).rejects.toThrow(
      /no-such-rules/,
    );
  });
});

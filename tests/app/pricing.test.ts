import { beforeEach, expect, test, vi } from "vitest";
import { askAll, pricing } from "../../src/app/state/pricing.ts";
import { questionKey } from "../../src/app/state/steps.ts";
import { defaultCatalog } from "../../src/model/default-catalog.ts";
import { startingStudies } from "../../src/model/starting-studies.ts";
import type { Outcome } from "../../src/search/types.ts";

/** The names of the studies that were asked, and what was done to the client, in order. */
const log: string[] = [];
let broken: (name: string) => boolean = () => false;

vi.mock("../../workers/client.ts", () => ({
  createSearchClient: () => {
    log.push("hired");
    return {
      find: async ({ study: { name } }: { study: { name: string } }) => {
        log.push(name);
        if (broken(name)) throw new Error(`worker of ${name} failed`);
        return { status: "none-safe", nearest: null, proof: name } as unknown as Outcome;
      },
      stop: () => log.push("stopped"),
      dispose: () => log.push("disposed"),
    };
  },
}));

const paper = (name: string) => ({
  study: { ...startingStudies[0].file, name },
  catalog: defaultCatalog,
});
/** What the tests asked: taken back before the next. */
const asked: (() => void)[] = [];
const answered = () => [...pricing.get().answers.values()].map(({ proof }) => String(proof));

beforeEach(() => {
  for (const takeBack of asked.splice(0)) takeBack();
  pricing.set({ answers: new Map() });
  log.length = 0;
});

test("askAll(questions of which one fails) answers all the others, with a new client after the failure", async () => {
  broken = (name) => name === "second";
  const papers = ["first", "second", "third", "fourth"].map(paper);
  asked.push(askAll(papers));
  await vi.waitFor(() => expect(answered()).toEqual(["first", "third", "fourth"]), 5000);
  expect(log.filter((line) => line !== "stopped")).toEqual([
    "hired",
    "first",
    "second",
    "disposed",
    "hired",
    "third",
    "fourth",
  ]);
  expect(pricing.get().answers.has(questionKey(papers[1]))).toBe(false);
});

test("askAll() asks a question again that failed before, and none that is answered", async () => {
  broken = (name) => name === "second";
  const papers = ["first", "second"].map(paper);
  asked.push(askAll(papers));
  await vi.waitFor(() => expect(log.at(-1)).toBe("disposed"), 5000);
  broken = () => false;
  asked.push(askAll(papers));
  await vi.waitFor(() => expect(answered()).toEqual(["first", "second"]), 5000);
  expect(log.filter((line) => line === "first")).toHaveLength(1);
  expect(log.filter((line) => line === "second")).toHaveLength(2);
});

test("askAll() asks the newest questions first, and what is taken back not at all", async () => {
  broken = () => false;
  const first = askAll(["early", "dropped"].map(paper));
  asked.push(askAll(["late", "later"].map(paper)));
  await vi.waitFor(() => expect(answered()).toContain("early"), 5000);
  expect(answered().slice(0, 3)).toEqual(["late", "later", "early"]);
  first();
  const taken = askAll([paper("never")]);
  taken();
  asked.push(askAll([paper("last")]));
  await vi.waitFor(() => expect(answered()).toContain("last"), 5000);
  expect(answered()).not.toContain("never");
});

import type { Page } from "../state/book.ts";
import type { WayId } from "./offers.ts";

/** One thing to look at or to try, on one page. */
export interface Step {
  readonly page: Page;
  /** What is seen here. */
  readonly look: string;
  /** What to do; absent where looking is enough. */
  readonly act?: string;
}

/** A question that people bring, with a starting study of its own and the shortest road to its answer. */
export interface Way {
  readonly id: WayId;
  /** Of `startingStudies`. */
  readonly study: string;
  readonly steps: readonly Step[];
}

export const ways: readonly Way[] = [
  {
    id: "beam-or-mast",
    study: "upper-pasture",
    steps: [
      {
        page: "answer",
        look: "The cheapest safe mast for the wishes in the line below: 70 ft and two beams. The line under the numbers says how many designs were ruled out to be sure. What governs stands first among the checks, and circled in the drawing.",
      },
      {
        page: "tradeoff",
        look: "On the right, cost over height and antenna area. Two arrows leave your wish: taller, with what it adds on the air, and bigger. Compare their prices: which one buys more for the same money?",
        act: "Wait for the arrows’ prices, then press the map where you would rather be.",
      },
      {
        page: "answer",
        look: "A step’s price stands beside each wish, as soon as it is known.",
        act: "Press “70 ft up” and type 80 ft. The new answer is searched and proven; Undo brings the old one back.",
      },
      {
        page: "sheets",
        look: "What to buy, dig, raise and tension, for the mast that you settled on. Only what passes every check gets sheets. Have them looked at by someone who is licensed to.",
      },
    ],
  },
  {
    id: "used-sections",
    study: "used-stack",
    steps: [
      {
        page: "catalog",
        look: "Each section with what it bears, used ones by the wall that was measured, beside what they bore new. On the right, what the whole mast costs with that section alone.",
      },
      {
        page: "catalog",
        look: "Below the table the study’s sections stand side by side: how high each can safely go with this antenna, how much antenna it can carry at this height, and how far the pieces on offer reach.",
        act: "Open “How far each section goes”.",
      },
      {
        page: "catalog",
        look: "Rust takes from the wall. What your edit does to the answer is said under the table.",
        act: "Press the wall 0.069 of the 10.5 in section on offer and type 0.050 in.",
      },
      {
        page: "answer",
        look: "The whole installation with the best of them: sections are a part of the money only; antennas, guys, anchors, digging and raising are the rest.",
      },
    ],
  },
  {
    id: "least-concrete",
    study: "hard-ground",
    steps: [
      {
        page: "answer",
        look: "The aim, among the rules below, is least concrete: the answer is the mast that pours least, and among equals the cheapest.",
      },
      {
        page: "tradeoff",
        look: "Every kind of anchor with every kind of base, each the least under the study’s aim: what it costs, pours and digs.",
        act: "Open “By kind of anchor and base”.",
      },
      {
        page: "tradeoff",
        look: "The stairs on the left: no design is cheaper with as little concrete. Each corner is a design; the hatched side is not safe.",
        act: "Press a ring to see its mast below.",
      },
      {
        page: "answer",
        look: "Least concrete need not be least digging.",
        act: "Press the aim and choose least digging. Compare the three numbers.",
      },
    ],
  },
];

import { type Aim, isLeast } from "../model/aim.ts";
import type { Catalog } from "../model/catalog.ts";
import type { Study, StudyFile } from "../model/study.ts";
import { compile } from "../problem/compile.ts";
import { packageArea } from "./map.ts";
import type { Judged, Outcome, Proof } from "./types.ts";

/** Asks the exact search for the least of something. Each answer is proven, or the whole is stopped. */
export type Ask = (file: StudyFile) => Promise<Outcome>;
/** An answer, and the study that it is the least of. */
export interface Pursued {
  readonly outcome: Outcome;
  readonly file: StudyFile;
}

/** What the aims need to know of a study: its choices, largest first where more is wanted. */
export interface Choices {
  readonly heights: readonly number[];
  /** Ids of the packages by effective area, the largest first. */
  readonly packages: readonly string[];
}

export const choicesOf = (study: Study, catalog: Catalog): Choices => {
  const { packages, heights } = compile(study, catalog);
  return {
    heights: [...heights].sort((a, b) => b - a),
    packages: [...packages].sort((a, b) => packageArea(b) - packageArea(a)).map((pack) => pack.row.id),
  };
};

/** A margin that differs by less is the same. */
const SAME_MARGIN = 1e-7;
/** Margins are first halved down to this, then proven by one more question. */
const HALVED = 0.005;

/**
 * Answers an aim, or one after the other, by the one exact search: the least of cost, concrete or digging is one
 * question; the most of margin, height or area within the budget is a row of them, the last of which says that
 * nothing within the budget has more.
 */
export async function pursue(study: Study, file: StudyFile, choices: Choices, ask: Ask): Promise<Pursued> {
  const spent: Proof[] = [];
  const asked: Ask = async (one) => {
    const outcome = await ask({ ...one, nextAim: undefined });
    spent.push(outcome.proof);
    return outcome;
  };
  const { aim, nextAim } = study;
  const found = await solve(aim, file, choices, study.wishes.margin, asked);
  if (nextAim === undefined || found.outcome.status !== "proven")
    return { ...found, outcome: { ...found.outcome, proof: together(spent) } };
  const held = keep(aim, found.file, found.outcome.best);
  const next = await solve(nextAim, held, choices, study.wishes.margin, asked);
  return { ...next, outcome: { ...next.outcome, proof: together(spent) } };
}

const withWishes = (file: StudyFile, wishes: Partial<StudyFile["wishes"]>, aim: Aim = "cost"): StudyFile => ({
  ...file,
  aim,
  wishes: { ...file.wishes, ...wishes },
});

async function solve(
  aim: Aim,
  file: StudyFile,
  choices: Choices,
  margin: number,
  ask: Ask,
): Promise<Pursued> {
  if (isLeast(aim)) {
    const one = { ...file, aim };
    return { outcome: await ask(one), file: one };
  }
  if (aim === "margin") return mostMargin(file, margin, ask);
  if (aim === "height")
    return firstSafe(
      choices.heights.map((height) => ({ height: [height] })),
      file,
      ask,
    );
  const packages = choices.packages.map((id) => ({
    packages: file.wishes.packages.filter((pack) => pack.id === id),
  }));
  return firstSafe(packages, file, ask);
}

/** The first of these wishes that something safe within the budget meets; of the last where none is. */
async function firstSafe(
  wishes: readonly Partial<StudyFile["wishes"]>[],
  file: StudyFile,
  ask: Ask,
): Promise<Pursued> {
  let last: Pursued | null = null;
  for (const wish of wishes) {
    const one = withWishes(file, wish);
    last = { outcome: await ask(one), file: one };
    if (last.outcome.status !== "none-safe") return last;
  }
  if (!last) throw new Error("an aim without anything to choose from: the study has no height or no package");
  return last;
}

async function mostMargin(file: StudyFile, wished: number, ask: Ask): Promise<Pursued> {
  const at = async (margin: number): Promise<Pursued> => {
    const one = withWishes(file, { margin });
    return { outcome: await ask(one), file: one };
  };
  let best = await at(wished);
  if (best.outcome.status !== "proven") return best;
  let judged = best.outcome.best;
  let least = judged.verdict.smallestMargin;
  let most = MOST_MARGIN;
  // half as much again: the last question asked for a hair more, and rounding must not ask it twice
  while (most - least > 1.5 * SAME_MARGIN) {
    // halve while it is far, then ask for a hair more than is known
    const margin = most - least > HALVED ? 0.5 * (least + most) : least + SAME_MARGIN;
    const next = await at(margin);
    if (next.outcome.status === "stopped") return { ...best, outcome: { ...next.outcome, best: judged } };
    if (next.outcome.status === "none-safe") most = margin;
    else {
      best = next;
      judged = next.outcome.best;
      least = Math.max(margin, judged.verdict.smallestMargin);
    }
  }
  return best;
}

/** As much as a study may wish for. */
const MOST_MARGIN = 5;

/** The study in which nothing that is worse in the first aim is allowed. */
function keep(aim: Aim, file: StudyFile, { design, verdict }: Judged): StudyFile {
  const cents = Math.round(verdict.bill.total * 100) / 100;
  const wishes: Readonly<Record<Aim, Partial<StudyFile["wishes"]>>> = {
    cost: { budget: cents },
    concrete: { concreteCap: verdict.concreteVolume },
    digging: { digCap: verdict.dugVolume },
    margin: { margin: Math.max(0, verdict.smallestMargin - SAME_MARGIN) },
    height: { height: [design.height] },
    area: { packages: file.wishes.packages.filter((pack) => pack.id === design.package) },
  };
  return withWishes(file, wishes[aim]);
}

/** One account of all questions; the bound and the grid are the last one's. */
function together(proofs: readonly Proof[]): Proof {
  const last = proofs[proofs.length - 1];
  return {
    ...last,
    analysed: proofs.reduce((sum, proof) => sum + proof.analysed, 0),
    seconds: proofs.reduce((sum, proof) => sum + proof.seconds, 0),
  };
}

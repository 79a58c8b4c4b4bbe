import type { CaseResponse, Check } from "../model/verdict.ts";

/** Initial tension left below which a guy is said to be nearly slack. Common practice, no source. */
const SLACK = 0.1;

const percent = (share: number) => `${(100 * share).toFixed(0)} %`;

/** Beside the strength of each level's guys: how slack the slackest gets, and what the hand method would have said. */
export function guyNotes(check: Check, cases: readonly CaseResponse[]): string {
  const level = Number(check.id.slice(check.limitState.length + 1));
  const still = cases.find((c) => c.windToward === null && c.frequencies);
  const known = cases.filter((c) => c.guys.every((guy) => guy.tensionMast > 0));
  let least = Number.POSITIVE_INFINITY;
  let where = "";
  for (const c of known)
    c.guys.forEach((guy, g) => {
      const share = guy.tensionAnchor / (still?.guys[g].tensionAnchor ?? 0);
      if (guy.level !== level || !(share < least)) return;
      least = share;
      where = `guy ${guy.anchor}, ${c.title}`;
    });
  const hand = cases.find((c) => c.title === check.loadCase)?.hand;
  const said = [
    check.note,
    still && least < 1
      ? `slackest keeps ${percent(least)} of its initial tension (${where})${least < SLACK ? ": nearly slack, it will jerk in gusts" : ""}`
      : undefined,
    hand
      ? `by hand, thrusts in proportion to height and no initial tension: ${percent(hand.tensions[level - 1] / check.demand)} of this pull`
      : undefined,
  ];
  return said.filter((note) => note).join("; ");
}

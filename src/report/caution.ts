// what every page, sheet and command says of itself, in one wording

/** Where there is room for one sentence: beside the answer, under the list of commands. */
export const shortCaution = "An estimating and learning tool: masts kill, and a licensed engineer decides.";

/** What the tool is and what masts do; then who decides, and what is kept clear. */
export const cautionSentences = [
  "An estimating and learning tool, not a permit.",
  "Masts kill by falling, by electrocution and by collapse.",
  "Local codes, the maker’s drawings and a licensed engineer decide.",
  "Keep the fall zone clear of power lines.",
] as const;

export const caution = cautionSentences.join(" ");

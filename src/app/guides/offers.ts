/** The questions that people bring, as the first page offers them; their steps come when one is chosen. */
export const offers = [
  { id: "beam-or-mast", question: "Bigger beam, or taller mast?" },
  { id: "used-sections", question: "Which used sections are worth it?" },
  { id: "least-concrete", question: "How little concrete on hard ground?" },
] as const;
export type WayId = (typeof offers)[number]["id"];

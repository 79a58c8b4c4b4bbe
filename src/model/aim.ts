/** What a study may ask for: the least of what is summed up, or the most of what a budget buys. */
export const LEAST = ["cost", "concrete", "digging"] as const;
export const MOST = ["margin", "height", "area"] as const;
export const AIMS = [...LEAST, ...MOST] as const;
export type Least = (typeof LEAST)[number];
export type Aim = (typeof AIMS)[number];
export const isLeast = (aim: Aim): aim is Least => (LEAST as readonly Aim[]).includes(aim);

import { startingStudies } from "../../model/starting-studies.ts";
import { type Way, ways } from "../guides/ways.ts";
import { turnTo } from "./address.ts";
import { type Fault, openStudy } from "./book.ts";
import { createStore } from "./store.ts";

/** Where the user is on one of the ways in; `offered` until they are put away. */
interface Walk {
  readonly way: Way | null;
  readonly step: number;
  readonly offered: boolean;
}

const KEY = "mastwright.way";
const kept = (): Walk => {
  try {
    const { id, step, offered } = JSON.parse(localStorage.getItem(KEY) ?? "{}");
    const way = ways.find((one) => one.id === id) ?? null;
    return { way, step: way?.steps[step] ? step : 0, offered: offered !== false };
  } catch {
    // nothing kept, or nothing that can be read: they are offered again
    return { way: null, step: 0, offered: true };
  }
};
export const walk = createStore<Walk>(kept());

const go = (change: Partial<Walk>) => {
  walk.set(change);
  const { way, step, offered } = walk.get();
  try {
    localStorage.setItem(KEY, JSON.stringify({ id: way?.id, step, offered }));
  } catch {
    // storage that keeps nothing is said elsewhere; the strip still works until the page closes
  }
};

/** Lays the way's study on the desk and turns to its first step. */
export const setOut = (way: Way): readonly Fault[] => {
  const starting = startingStudies.find(({ id }) => id === way.study);
  if (!starting)
    throw new Error(`the way "${way.id}" starts from "${way.study}", which is no starting study`);
  const faults = openStudy(starting.file);
  if (faults.length > 0) return faults;
  go({ way, step: 0 });
  turnTo(way.steps[0].page);
  return [];
};

/** To another step of the way; past its end the way is left. */
export const stepTo = (step: number) => {
  const { way } = walk.get();
  if (!way) return;
  if (step >= way.steps.length) return leaveWay();
  go({ step });
  turnTo(way.steps[step].page);
};
export const leaveWay = () => go({ way: null, step: 0 });
export const putAway = () => go({ offered: false });
export const offer = () => go({ offered: true });

import { offers, type WayId } from "../guides/offers.ts";
import type { Way } from "../guides/ways.ts";
import { turnTo } from "./address.ts";
import { type Fault, openStudy } from "./book.ts";
import { createStore } from "./store.ts";

/** Where the user is on one of the ways in; the ways are `offered` until they are put away. */
interface Walk {
  readonly id: WayId | null;
  /** Null until its words are fetched. */
  readonly way: Way | null;
  readonly step: number;
  readonly offered: boolean;
}

const KEY = "mastwright.way";
const kept = (): Walk => {
  try {
    const { id, step, offered } = JSON.parse(localStorage.getItem(KEY) ?? "{}");
    const known = offers.find((one) => one.id === id)?.id ?? null;
    return { id: known, way: null, step: Number(step) || 0, offered: offered !== false };
  } catch {
    // nothing kept, or nothing that can be read: they are offered again
    return { id: null, way: null, step: 0, offered: true };
  }
};
export const walk = createStore<Walk>(kept());

const go = (change: Partial<Walk>) => {
  walk.set(change);
  const { id, step, offered } = walk.get();
  try {
    localStorage.setItem(KEY, JSON.stringify({ id, step, offered }));
  } catch {
    // storage that keeps nothing is said elsewhere; the strip still works until the page closes
  }
};

const fetched = async (id: WayId): Promise<Way> => {
  const { ways } = await import("../guides/ways.ts");
  const way = ways.find((one) => one.id === id);
  if (!way) throw new Error(`the way "${id}" is offered and has no steps`);
  return way;
};

/** Comes back to the step that was left. */
export const goOnWalking = async () => {
  const { id, step } = walk.get();
  if (!id) return;
  const way = await fetched(id);
  if (walk.get().id === id) walk.set({ way, step: way.steps[step] ? step : 0 });
};

/** Lays the way's study on the desk and turns to its first step. */
export const setOut = async (id: WayId): Promise<readonly Fault[]> => {
  const [way, { startingStudies }] = await Promise.all([
    fetched(id),
    import("../../model/starting-studies.ts"),
  ]);
  const starting = startingStudies.find((one) => one.id === way.study);
  if (!starting) throw new Error(`the way "${id}" starts from "${way.study}", which is no starting study`);
  const faults = openStudy(starting.file);
  if (faults.length > 0) return faults;
  go({ id, way, step: 0 });
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
export const leaveWay = () => go({ id: null, way: null, step: 0 });
export const putAway = () => go({ offered: false });
export const offer = () => go({ offered: true });

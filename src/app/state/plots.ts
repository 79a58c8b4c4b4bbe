import { createSearchClient } from "../../../workers/client.ts";
import type { SearchClient } from "../../../workers/protocol.ts";
import type { Design } from "../../model/design.ts";
import type { CostMap, Front } from "../../search/types.ts";
import { mapAxes } from "../plots/map-axes.ts";
import type { System } from "../wording/figures.ts";
import { job, type Reading } from "./book.ts";
import { createStore } from "./store.ts";

interface Plots {
  /** The reading that both stand for. */
  readonly reading: Reading | null;
  readonly front: Front | null;
  readonly frontDone: boolean;
  readonly map: CostMap | null;
  readonly trouble: string | null;
  /** A design that the user took from a ring or a cell. */
  readonly taken: Taken | null;
}
export interface Taken {
  readonly design: Design;
  /** Height and area of the map's cell that it stands for; null where it answers the study itself. */
  readonly at: { readonly height: number; readonly area: number } | null;
  readonly from: string;
}
const none: Plots = { reading: null, front: null, frontDone: false, map: null, trouble: null, taken: null };
export const plots = createStore<Plots>(none);

/** Plots are redrawn at most once a second: a new array costs a whole mount. */
const PACE = 1000;
let client: SearchClient | null = null;
let asked: { reading: Reading; system: System } | null = null;

/** Calls at most once a pace, and never loses the last one. */
const paced = <T>(show: (value: T) => void) => {
  let last = 0;
  let timer: ReturnType<typeof setTimeout> | undefined;
  return (value: T) => {
    clearTimeout(timer);
    const wait = last + PACE - performance.now();
    const now = () => {
      last = performance.now();
      show(value);
    };
    if (wait <= 0) now();
    else timer = setTimeout(now, wait);
  };
};

/** Front first, then the map: the map alone would fill every core while the front is waited for. */
export const askPlots = async (reading: Reading, system: System) => {
  if (asked?.reading === reading && asked.system === system) return;
  const mine = { reading, system };
  asked = mine;
  client?.dispose();
  const search = createSearchClient();
  client = search;
  plots.set({ ...none, reading });
  const current = () => asked === mine;
  try {
    const showFront = paced<Front>((front) => current() && !plots.get().frontDone && plots.set({ front }));
    const front = await search.front(job(reading.paper), showFront);
    if (!current()) return;
    plots.set({ front, frontDone: true });
    const axes = mapAxes(reading.study, reading.catalog, system);
    const showMap = paced<CostMap>((map) => current() && !plots.get().map?.done && plots.set({ map }));
    const map = await search.map(job(reading.paper), axes, showMap);
    if (current()) plots.set({ map });
  } catch (error) {
    if (current()) plots.set({ trouble: error instanceof Error ? error.message : String(error) });
  }
};

/** Leaving the page frees the cores. */
export const leavePlots = () => {
  const { frontDone, map } = plots.get();
  if (frontDone && map?.done) return;
  client?.dispose();
  client = null;
  asked = null;
};

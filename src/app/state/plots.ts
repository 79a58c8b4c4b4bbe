import { createSearchClient } from "../../../workers/client.ts";
import type { MapAxes, SearchClient } from "../../../workers/protocol.ts";
import type { Design } from "../../model/design.ts";
import type { CostMap, Front, MapCell } from "../../search/types.ts";
import { mapAxes, roadCells, wishArea } from "../plots/map-axes.ts";
import type { System } from "../wording/figures.ts";
import { single } from "../wording/givens.ts";
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
/** Front and map share the cores, and leave one to the page where there are several. */
const share = Math.max(1, Math.min(4, Math.floor(((navigator.hardwareConcurrency || 2) - 1) / 2)));
let clients: readonly SearchClient[] = [];
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

/** The map is worth the most and is done first; the front has long to go and streams beside it. */
export const askPlots = (reading: Reading, system: System) => {
  if (asked?.reading === reading && asked.system === system) return;
  dropClients();
  const mine = { reading, system };
  asked = mine;
  plots.set({ ...none, reading });
  const current = () => asked === mine;
  const broken = (error: unknown) => {
    if (current()) plots.set({ trouble: error instanceof Error ? error.message : String(error) });
  };
  const [fronts, maps] = [createSearchClient(share), createSearchClient(share + 1)];
  clients = [fronts, maps];
  const showFront = paced<Front>(
    (front) => current() && !plots.get().frontDone && plots.setCalmly({ front }),
  );
  fronts
    .front(job(reading.paper), showFront)
    .then((front) => current() && plots.setCalmly({ front, frontDone: true }), broken);
  fillMap(maps, reading, system, current).catch(broken);
};

/**
 * First where the roads from the wish end, then from the wish's height down at once, then upward row by row: the cells
 * near the edge of what is safe are the hardest to prove, and must not keep the easy ones waiting.
 */
const fillMap = async (client: SearchClient, reading: Reading, system: System, current: () => boolean) => {
  const axes = mapAxes(reading.study, reading.catalog, system);
  const { areas } = axes;
  const wish = Math.ceil(axes.heights.length / 2);
  const height = single(reading.study.wishes.height);
  const area = wishArea(reading.study, reading.catalog);
  const parts: MapAxes[] = [
    ...(height === null ? [] : [roadCells(axes, { height, area }, system)]),
    { heights: axes.heights.slice(0, wish), areas },
    ...axes.heights.slice(wish).map((row) => ({ heights: [row], areas })),
  ];
  // the first part's cells come once more, remembered, in their rows
  const cells = new Map<string, MapCell>();
  const add = (more: readonly MapCell[]) => {
    for (const cell of more) cells.set(`${cell.height} ${cell.area}`, cell);
    return { ...axes, cells: [...cells.values()] };
  };
  const show = paced<CostMap>((map) => current() && !plots.get().map?.done && plots.setCalmly({ map }));
  for (const part of parts) {
    if (!current()) return;
    const found = await client.map(job(reading.paper), part, (more) =>
      show({ ...add(more.cells), done: false }),
    );
    add(found.cells);
  }
  if (current())
    plots.setCalmly({ map: { ...add([]), done: cells.size === axes.heights.length * areas.length } });
};

/** A front may take minutes: what is known so far can be kept. */
export const stopFront = () => clients[0]?.stop();

const dropClients = () => {
  for (const client of clients) client.dispose();
  clients = [];
};

/** Leaving the page frees the cores; what is finished stays. */
export const leavePlots = () => {
  const { frontDone, map } = plots.get();
  dropClients();
  if (!frontDone || !map?.done) asked = null;
};

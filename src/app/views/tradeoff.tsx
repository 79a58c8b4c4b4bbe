import { useCallback, useEffect, useMemo, useRef, useState } from "react";
import type { FrontPoint, MapCell } from "../../search/types.ts";
import { brush } from "../parts/brush.ts";
import { Glossed } from "../parts/glossed.tsx";
import { useWidth } from "../parts/measured.ts";
import { FrontPlot } from "../plots/front-plot.tsx";
import { wishArea } from "../plots/map-axes.ts";
import { MapPlot } from "../plots/map-plot.tsx";
import { behindStairs, type Marked, markedDesigns, stairsKey, thinned } from "../plots/stairs.ts";
import { type Reading, useBook } from "../state/book.ts";
import { askPlots, leavePlots, plots, stopFront, type Taken } from "../state/plots.ts";
import { useStore } from "../state/store.ts";
import { countText, money } from "../wording/figures.ts";
import { single } from "../wording/givens.ts";
import { onAir } from "../wording/on-air.ts";
import { useAnswer } from "./answer.tsx";
import { ByKind } from "./by-kind.tsx";
import { ComparisonView } from "./comparison.tsx";
import { FrontFigures, MapFigures } from "./figures-tables.tsx";
import { MarkedDesigns } from "./marked-designs.tsx";
import "../css/tradeoff.css";

const TradeoffView = () => {
  const reading = useBook((state) => state.reading);
  const system = useBook((state) => state.system);
  useEffect(() => {
    if (reading) askPlots(reading, system);
  }, [reading, system]);
  useEffect(() => leavePlots, []);
  if (!reading) return <main />;
  return (
    <main className="tradeoff" ref={brush}>
      <div className="question">
        <h1>What would more height, area or margin cost, and what would less concrete?</h1>
        <Claim />
      </div>
      <Panels reading={reading} />
    </main>
  );
};
export default TradeoffView;

const Claim = () => {
  const system = useBook((state) => state.system);
  const front = useStore(plots, (state) => state.front);
  const done = useStore(plots, (state) => state.frontDone);
  const map = useStore(plots, (state) => state.map);
  const trouble = useStore(plots, (state) => state.trouble);
  if (trouble)
    return (
      <p className="reason" role="alert">
        The search for the plots broke off, a defect of the program: {trouble}
      </p>
    );
  if (!front) return <p className="reason quiet">Looking for the first corners of the stairs.</p>;
  const exact = done && front.status === "proven";
  const words = [
    `${exact ? "front exact" : `front ${done ? "stopped, " : ""}${front.exactBelow === null ? "so far" : `exact below ${money(front.exactBelow, "$", system)}`}`}: ${countText(front.points.length, system)} designs`,
    map && `map ${map.done ? "exact" : "so far"}: ${countText(map.cells.length, system)} cells`,
    exact && `${front.proof.seconds.toFixed(1)} s`,
  ].filter(Boolean);
  return (
    <p className="reason quiet">
      {words.join(", ")}{" "}
      {!done && (
        <button type="button" className="link letter" onClick={stopFront}>
          stop here
        </button>
      )}
    </p>
  );
};

const Panels = ({ reading }: { reading: Reading }) => {
  const front = useStore(plots, (state) => state.front);
  const map = useStore(plots, (state) => state.map);
  const system = useBook((state) => state.system);
  const points = front?.points;
  const { points: drawn, certain } = useDrawn(points, front?.exactBelow ?? null);
  const taken = useStore(plots, (state) => state.taken);
  const marked = useMemo(
    () => (drawn ? markedDesigns(drawn, reading.study.wishes.margin) : []),
    [drawn, reading],
  );
  const lettered = useMemo(() => withTaken(marked, drawn, taken), [marked, drawn, taken]);
  const currency = reading.catalog.prices.currency;
  const take = useCallback(
    (point: FrontPoint) => plots.set({ taken: { design: point.design, at: null, from: "from the front" } }),
    [],
  );
  const takeCell = useCallback(
    (cell: MapCell) =>
      cell.design &&
      cell.cost !== null &&
      plots.set({
        taken: { design: cell.design, at: { height: cell.height, area: cell.area }, from: "from the map" },
      }),
    [],
  );
  return (
    <>
      <div className="panels">
        <section aria-label="Cost against concrete">
          <h2>
            Cost against concrete
            <small>
              <Glossed text="a stair for each margin; ring size is margin; press a ring" />
            </small>
          </h2>
          <FrontPanel
            points={drawn}
            count={points?.length ?? 0}
            certain={certain}
            marked={lettered}
            {...{ system, currency, take }}
          />
          {points && <FrontFigures points={points} system={system} currency={currency} take={take} />}
        </section>
        <section aria-label="Cost over height and area">
          <h2>
            Cost over height and area
            <small>
              <Glossed text="contours of cost; effective area, the antennas’ own price kept" />
            </small>
          </h2>
          <MapPanel reading={reading} takeCell={takeCell} />
          {map && <MapFigures map={map} system={system} currency={currency} />}
        </section>
      </div>
      <ByKind reading={reading} />
      <MarkedDesigns marked={marked} reading={reading} />
      <ComparisonView marked={marked} reading={reading} />
    </>
  );
};

/** The user's own design gets its letter on the front too, unless it has one. */
const withTaken = (
  marked: readonly Marked[],
  points: readonly FrontPoint[] | undefined,
  taken: Taken | null,
): readonly Marked[] => {
  const point = taken && !taken.at && points?.find((one) => one.design === taken.design);
  if (!point || marked.some((one) => one.point === point)) return marked;
  return [...marked, { letter: "E", name: "yours", point }];
};

interface Drawn {
  readonly points: readonly FrontPoint[] | undefined;
  readonly certain: number | null;
}
/** What is proven grows all the time; the hatch follows in steps of this, or the plot would never rest. */
const STEP = 100;

/** The points as last drawn, until a stair changes: a front that only grows behind its stairs costs no drawing. */
const useDrawn = (points: readonly FrontPoint[] | undefined, exactBelow: number | null): Drawn => {
  const kept = useRef<{ key: string; drawn: Drawn } | null>(null);
  return useMemo(() => {
    if (!points) {
      kept.current = null;
      return { points, certain: null };
    }
    const certain = exactBelow === null ? null : Math.floor(exactBelow / STEP) * STEP;
    const key = `${certain}|${stairsKey(points)}`;
    if (kept.current?.key !== key) kept.current = { key, drawn: { points, certain } };
    return kept.current.drawn;
  }, [points, exactBelow]);
};

interface FrontPanelProps {
  readonly count: number;
  /** Cost below which the stairs are proven; null where all of them are. */
  readonly certain: number | null;
  readonly points: readonly FrontPoint[] | undefined;
  readonly marked: readonly Marked[];
  readonly system: "us" | "si";
  readonly currency: string;
  readonly take: (point: FrontPoint) => void;
}
const FrontPanel = ({ points, count, certain, marked, system, currency, take }: FrontPanelProps) => {
  const [ref, width] = useWidth<HTMLDivElement>(590);
  const [all, setAll] = useState(false);
  const rest = useMemo(() => behindStairs(points ?? []), [points]);
  const faint = useMemo(() => (all ? thinned(rest, MOST_DOTS) : NO_POINTS), [all, rest]);
  return (
    <div ref={ref} className="plot">
      {points && points.length > 0 ? (
        <>
          <FrontPlot {...{ points, faint, certain, marked, width, system, currency, take }} />
          <p className="quiet slim">
            {rest.length > 0 && (
              <>
                Rings are the {count - rest.length} corners of the stairs.{" "}
                <button type="button" className="link" aria-pressed={all} onClick={() => setAll(!all)}>
                  {all ? "Leave out the dots" : `Show the other ${rest.length} as dots`}
                </button>
                {all && faint.length < rest.length && `, ${faint.length} of them drawn`}
                {all && ": safe, but at each dot’s concrete a stair is cheaper"}.{" "}
              </>
            )}
            The hatch is where it is proven that nothing safe is this cheap
            {certain !== null &&
              `: so far below ${money(certain, currency, system)}; above that the stairs may still fall`}
            .
          </p>
        </>
      ) : (
        <p className="quiet">No safe design yet.</p>
      )}
    </div>
  );
};
/** One array for "none", so that the plot need not be drawn anew. */
const NO_POINTS: readonly FrontPoint[] = [];
const MOST_DOTS = 4000;

const MapPanel = ({ reading, takeCell }: { reading: Reading; takeCell: (cell: MapCell) => void }) => {
  const [ref, width] = useWidth<HTMLDivElement>(680);
  const map = useStore(plots, (state) => state.map);
  const system = useBook((state) => state.system);
  const taken = useStore(plots, (state) => state.taken?.at ?? null);
  const answer = useAnswer();
  const height = single(reading.study.wishes.height);
  const air = useMemo(
    () => (height === null ? null : onAir(reading.study, reading.catalog, height)),
    [reading, height],
  );
  const wish = useMemo(
    () => ({
      air: air?.at ?? null,
      height: height ?? (answer.kind === "proven" ? answer.best.design.height : 0),
      area: wishArea(reading.study, reading.catalog),
      cost: answer.kind === "proven" && !answer.former ? answer.best.verdict.bill.total : null,
    }),
    [answer, height, reading, air],
  );
  return (
    <div ref={ref} className="plot">
      {map && map.cells.length > 0 ? (
        <MapPlot
          map={map}
          wish={wish}
          width={width}
          system={system}
          currency={reading.catalog.prices.currency}
          take={takeCell}
          taken={taken}
        />
      ) : (
        <p className="quiet">Looking for the first cells.</p>
      )}
      {air && (
        <p className="quiet slim">
          dB: mean over 3° to 12° at {air.megahertz} MHz over flat, medium dry ground. A bigger antenna’s gain
          is its own to state.
        </p>
      )}
    </div>
  );
};

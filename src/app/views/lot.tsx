import { useEffect, useRef, useState } from "react";
import { type Axis, axisValues } from "../../model/axis.ts";
import type { Design } from "../../model/design.ts";
import { LotPlan } from "../drawings/lot-plan.tsx";
import { useWidth } from "../parts/measured.ts";
import { type Fault, type Reading, useBook } from "../state/book.ts";
import { drag, freeStar, step } from "../state/lot-edits.ts";
import { judgedOf } from "../state/shown.ts";
import { barredWords } from "../wording/barred.ts";
import { figure, type System, said } from "../wording/figures.ts";
import { lotFigures, type PlacedGuys } from "../wording/lot-figures.ts";
import { useAnswer } from "./answer.tsx";
import { LotGivens, Places } from "./lot-givens.tsx";
import { LotMoves } from "./lot-moves.tsx";

/** The lot from above, to look at: where the answer stands, and where it would fall. */
const LotView = () => {
  const answer = useAnswer();
  const system = useBook((state) => state.system);
  const [ref, width] = useWidth<HTMLDivElement>(752);
  const now = useBook((state) => state.reading);
  const [faults, setFaults] = useState<readonly Fault[]>([]);
  const found = judgedOf(answer);
  const before = useRef(found);
  useEffect(() => {
    if (found) before.current = found;
  }, [found]);
  // where no mast is known the one before is drawn: what the hand moves must not go from under it
  const judged = found ?? before.current;
  if (!judged || !now || !("reading" in answer)) return <main className="reason">No mast to place yet.</main>;
  // what is drawn of the ground is what is stated now, though the answer to it may still be sought
  const stated = { ...answer.reading.study, lot: now.study.lot };
  const safe = found !== null && judged.verdict.passes;
  const guys = heldStar(now, judged.design.guys, safe);
  const lot = lotFigures(stated, answer.reading.catalog, judged.design, guys);
  return (
    <main className="spread">
      <section className="figs" aria-label="Setting out">
        <h1>Where does it stand, and where may it fall?</h1>
        {!safe && (
          <p className="reason">
            {answer.kind === "searching"
              ? "No mast is known to be safe here yet: what is drawn is the one before."
              : `✕ Nothing on this grid is safe: what is drawn is ${found ? "the nearest miss" : "the mast before"}. Don’t build it.`}
          </p>
        )}
        {judged.design.guys && (
          <dl className="big lot-big">
            <div>
              <dt>Star turned to</dt>
              <dd>
                <span className="fig">
                  {Math.round(judged.design.guys.rotation)}
                  <small>°</small>
                </span>
              </dd>
            </div>
            <div>
              <dt>{judged.design.guys.radii ? "Farthest anchor" : "Anchor radius"}</dt>
              <dd>
                <span className="fig">
                  {figure(judged.design.guys.radius, "length", system)}
                  <small>{system === "us" ? "ft" : "m"}</small>
                </span>
              </dd>
            </div>
          </dl>
        )}
        <LotGivens reading={now} />
        {isHeld(now) && (
          <p>
            The anchors stand where they were put.{" "}
            <button type="button" className="link" onClick={() => setFaults(freeStar())}>
              Free them
            </button>
          </p>
        )}
        <SettingOut lot={lot} system={system} />
        <Lines lot={lot} system={system} />
        <Places reading={now} />
        {answer.kind === "proven" && !answer.former && (
          <LotMoves reading={answer.reading} cost={answer.best.verdict.bill.total} />
        )}
        {lot.pastLot > 0 && (
          <div className="warn">
            <b>▲ The fall zone leaves the lot</b>
            <p>
              If it fell whole it would reach {said(lot.pastLot, "length", system)} past the lot line. Ask
              your local authority whether it allows this.
            </p>
          </div>
        )}
      </section>
      <section className="sketch" aria-label="Plan">
        <div ref={ref}>
          <LotPlan
            study={stated}
            lot={lot}
            width={Math.max(300, width)}
            system={system}
            crossed={!safe}
            onDrag={(hold, from, to, fine, gesture) =>
              setFaults(drag(hold, from, to, guys ?? null, { system, fine, gesture }))
            }
            onStep={(hold, from, arrow, fine, gesture) =>
              setFaults(step(hold, from, arrow, guys ?? null, { system, fine, gesture }))
            }
          />
          {faults.length > 0 && (
            <p role="alert">
              <b>✕ It can’t stand there.</b> {faults[0].message}
            </p>
          )}
          {lot.barred && lot.barred.arcs.length > 0 && (
            <p className="legend">
              <Swatch />
              <span>{barredWords(lot.barred.arcs, lot.barred.radius, system)}</span>
            </p>
          )}
          <p className="quiet">
            Drag the mast, an anchor, a corner or a line; arrow keys move the one in focus, with Shift by
            less. Anchors go to places of the grid.
          </p>
        </div>
      </section>
    </main>
  );
};
export default LotView;

/** The hatch that the sentence beside it is about. */
const Swatch = () => (
  <svg width="28" height="14" viewBox="0 0 28 14" aria-hidden="true">
    <rect x="0.5" y="0.5" width="27" height="13" fill="url(#unsafe)" className="l1" />
  </svg>
);

const one = (axis: Axis): number | null => {
  const values = axisValues(axis);
  return values.length === 1 ? values[0] : null;
};
const isHeld = ({ study: { parts } }: Reading): boolean =>
  one(parts.radius) !== null && one(parts.rotation) !== null;

/** The star as it is asked for, where the study leaves one place for it; also where no mast is safe on it. */
const heldStar = ({ study }: Reading, guys: Design["guys"], safe: boolean): PlacedGuys | undefined => {
  const { radius, rotation, guysPerLevel } = study.parts;
  const [far, turned] = [one(radius), one(rotation)];
  if (far === null || turned === null || (!guys && safe)) return guys ?? undefined;
  const perLevel = guys?.perLevel ?? guysPerLevel[0];
  return { perLevel, radius: far, rotation: turned, radii: far === guys?.radius ? guys.radii : undefined };
};

type Props = { readonly lot: ReturnType<typeof lotFigures>; readonly system: System };

const SettingOut = ({ lot, system }: Props) => (
  <div className="sec">
    <h2>
      Setting out<small>{system === "us" ? "feet" : "metres"} east and north of the origin</small>
    </h2>
    <table aria-label="Setting out">
      <thead>
        <tr>
          <th>Peg</th>
          <th className="num">Toward</th>
          <th className="num">East</th>
          <th className="num">North</th>
          <th className="num">To lot line</th>
        </tr>
      </thead>
      <tbody>
        {lot.pegs.map((peg) => (
          <tr key={peg.name}>
            <td>
              <b>{peg.name}</b>
            </td>
            <td className="num quiet">{peg.bearing === null ? "" : `${Math.round(peg.bearing)}°`}</td>
            <td className="num">{figure(peg.east, "length", system)}</td>
            <td className="num">{figure(peg.north, "length", system)}</td>
            <td className="num">{figure(peg.toLine, "length", system)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  </div>
);

const Lines = ({ lot, system }: Props) =>
  lot.lines.length === 0 ? (
    <p className="sec">
      No power line is stated. Look for one before anything else: none is assumed to be far.
    </p>
  ) : (
    <div className="sec">
      <h2>
        Distances
        <small>
          the tightest first; the mast with its antennas reaches {said(lot.reach, "length", system)}
        </small>
      </h2>
      <table aria-label="Distances to power lines">
        <thead>
          <tr>
            <th>From the mast to</th>
            <th className="num">Is</th>
            <th className="num">Beyond reach</th>
          </tr>
        </thead>
        <tbody>
          {lot.lines.map((line, i) => (
            <tr key={line.name} className={i === 0 && line.distance < lot.reach ? "gov" : undefined}>
              <td>{line.name}</td>
              <td className="num">{figure(line.distance, "length", system)}</td>
              <td className="num">
                {line.distance < lot.reach ? "▲ " : ""}
                {figure(line.distance - lot.reach, "length", system)}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {lot.lines[0].distance < lot.reach && (
        <div className="warn">
          <b>▲ {lot.lines[0].name} is within reach of a falling mast or antenna</b>
          <p>
            Move the mast, have the line moved, or don’t build. The owner of the line decides what is far
            enough.
          </p>
        </div>
      )}
    </div>
  );

import { LotPlan } from "../drawings/lot-plan.tsx";
import { Choice, Given } from "../parts/given.tsx";
import { useWidth } from "../parts/measured.ts";
import { changeStudy, type Reading, useBook } from "../state/book.ts";
import { judgedOf } from "../state/shown.ts";
import { figure, type System, said } from "../wording/figures.ts";
import { typedSlope } from "../wording/given.ts";
import { lotFigures } from "../wording/lot-figures.ts";
import { useAnswer } from "./answer.tsx";

/** The lot from above, to look at: where the answer stands, and where it would fall. */
const LotView = () => {
  const answer = useAnswer();
  const system = useBook((state) => state.system);
  const [ref, width] = useWidth<HTMLDivElement>(752);
  const judged = judgedOf(answer);
  if (!judged || !("reading" in answer)) return <main className="reason">No mast to place yet.</main>;
  const { study, catalog } = answer.reading;
  const lot = lotFigures(study, catalog, judged.design);
  const safe = judged.verdict.passes;
  return (
    <main className="spread">
      <section className="figs" aria-label="Setting out">
        <h1>Where does it stand, and where may it fall?</h1>
        {!safe && (
          <p className="reason">
            ✕ Nothing on this grid is safe: what is drawn is the nearest miss. Don’t build it.
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
        <LotGivens reading={answer.reading} />
        <SettingOut lot={lot} system={system} />
        <Lines lot={lot} system={system} />
        {lot.pastLot > 0 && (
          <div className="warn">
            <b>▲ The fall zone leaves the lot</b>
            <p>
              If it fell whole it would reach {said(lot.pastLot, "length", system)} past the lot line. Ask
              your local authority whether it allows this.
            </p>
          </div>
        )}
        <p className="quiet" style={{ marginTop: 12 }}>
          Corners, mast and lines are edited in the study’s file for now.
        </p>
      </section>
      <section className="sketch" aria-label="Plan">
        <div ref={ref}>
          <LotPlan study={study} lot={lot} width={Math.max(300, width)} system={system} crossed={!safe} />
        </div>
      </section>
    </main>
  );
};
export default LotView;

/** What the lot lets the anchors do: its slope, and whether they may stand at unlike distances. */
const LotGivens = ({ reading }: { reading: Reading }) => {
  const { slope } = reading.study.lot;
  const { drawnIn } = reading.study.parts;
  const shown = slope ? `${+(100 * slope.fall).toFixed(1)} % toward ${slope.toward}°` : "level";
  return (
    <p className="lot-givens">
      Ground{" "}
      <Given
        label="Slope of the lot"
        shown={slope ? `falls ${shown}` : shown}
        start={shown}
        read={typedSlope}
        write={({ text, si }) =>
          changeStudy(
            ["lot", "slope"],
            si > 0 ? { fall: si, toward: Number(/([\d.]+)°$/.exec(text)?.[1] ?? 0) } : undefined,
            `ground ${text}`,
          )
        }
        width={150}
      />
      {", anchors "}
      <Choice
        label="Distances of the anchors"
        value={drawnIn ? "in" : "alike"}
        options={[
          { value: "alike", name: "all equally far out" },
          { value: "in", name: "drawn in where the lot is short" },
        ]}
        write={(value) =>
          changeStudy(
            ["parts", "drawnIn"],
            value === "in",
            value === "in" ? "anchors drawn in where the lot is short" : "anchors equally far out",
          )
        }
      />
    </p>
  );
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
            <tr key={line.name} className={i === 0 ? "gov" : undefined}>
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

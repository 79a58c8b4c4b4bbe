import { useState } from "react";
import type { CheckReliability, Reliability, UncertainName } from "../../checks/reliability.ts";
import type { Design } from "../../model/design.ts";
import {
  CHANCE_MEANS,
  chance,
  importanceWords,
  pointOutcomes,
  smallestMarginWords,
  uncertainNames,
} from "../../report/chance-words.ts";
import { useChance } from "../state/asked.ts";
import { type Reading, useBook } from "../state/book.ts";
import { type System, said } from "../wording/figures.ts";

/** Lines shown: what is less probable than these hardly counts. */
const MOST = 6;

/** Where the study says what is uncertain: how probable it is that the answer misses a check. Asked for, as it takes a while. */
const Chance = ({ reading, design }: { reading: Reading; design: Design }) => {
  const [asked, setAsked] = useState<Design | null>(null);
  return (
    <section className="sec" aria-label="How probable a miss is">
      <h2>
        How probable a miss is <small>by what the study says is uncertain</small>
      </h2>
      {asked === design ? (
        <Found reading={reading} design={design} />
      ) : (
        <p>
          <button type="button" className="btn" onClick={() => setAsked(design)}>
            Work it out
          </button>
          <span className="quiet"> some hundreds of verdicts, a few seconds</span>
        </p>
      )}
    </section>
  );
};
export default Chance;

const Found = ({ reading, design }: { reading: Reading; design: Design }) => {
  const found = useChance(reading, design);
  const system = useBook((state) => state.system);
  if (found === null)
    return (
      <p className="quiet" role="status">
        Looking for the place where each check most probably is missed.
      </p>
    );
  if (found === "broken") return <p className="reason">The chance could not be worked out.</p>;
  return (
    <>
      <p className="reason" role="status">
        {smallestMarginWords(found)} {CHANCE_MEANS}
      </p>
      <div className="scroll-x">
        <Lines found={found} system={system} />
      </div>
    </>
  );
};

const Lines = ({ found: { checks, names }, system }: { found: Reliability; system: System }) => {
  const shown = checks.slice(0, MOST);
  return (
    <table className="sum" aria-label="Checks by how probably they are missed">
      <thead>
        <tr>
          <th>Check</th>
          <th className="num">Probability</th>
          <th>What weighs in it</th>
        </tr>
      </thead>
      <tbody>
        {shown.map((check) => (
          <tr key={check.id}>
            <td>
              {check.title}
              <span className="under quiet">{check.where}</span>
            </td>
            <td className="num">{chance(check.probability)}</td>
            <td className="quiet">{weighing(check, names, system)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
};

const weighing = (check: CheckReliability, names: readonly UncertainName[], system: System): string => {
  const also = pointOutcomes[check.outcome];
  if (check.outcome === "beyond") return also;
  const at = names.map((name) => placeWords(name, check.at[name], system)).join(", ");
  return `${importanceWords(names, check)}; most probably at ${at}${also && `; ${also}`}`;
};

const placeWords = (name: UncertainName, value: number, system: System): string => {
  if (name === "windSpeed") return `a wind of ${said(value, "speed", system)}`;
  if (name === "wallLoss") return `${said(value, "size", system, 3)} off the walls`;
  return `${uncertainNames[name]} of ${(100 * value).toFixed(0)} %`;
};

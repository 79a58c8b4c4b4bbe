import { governing } from "../../checks/governing.ts";
import type { Aim } from "../../model/aim.ts";
import { lowerFirst, percent } from "../../report/names.ts";
import { Glossed } from "../parts/glossed.tsx";
import { useBook } from "../state/book.ts";
import type { Answer } from "../state/shown.ts";
import { figure, inUnits, money, type System, said, unitOf } from "../wording/figures.ts";

type Shown = Extract<Answer, { kind: "searching" | "proven" | "stopped" | "unsafe" }>;

/** Cost, concrete, margin, each with one line of meaning; the labels change with the state, never the places. */
export const BigThree = ({ answer }: { answer: Shown }) => {
  const system = useBook((state) => state.system);
  const { best } = answer;
  if (!best)
    return (
      <dl className="big">
        <Figure
          label={answer.kind === "searching" ? "Nothing safe yet" : "Nothing safe found"}
          value="–"
          sub={answer.kind === "searching" ? "still looking" : "stopped before the proof"}
        />
      </dl>
    );
  const { verdict } = best;
  const currency = answer.reading.catalog.prices.currency;
  const governs = governing(verdict.checks);
  const order = verdict.concreteVolume * (1 + answer.reading.catalog.prices.concreteWaste);
  const pouredUnits = Math.ceil(inUnits(order, "volume", system) * 10 - 1e-6) / 10;
  return (
    <dl className="big" data-testid="big-three">
      <Figure
        label={label(answer)}
        value={`${verdict.passes ? "" : "✕ "}${money(verdict.bill.total, currency, system)}`}
        sub={costLine(answer, currency, system)}
      />
      <Figure
        label="Concrete"
        value={figure(verdict.concreteVolume, "volume", system)}
        unit={unitOf("volume", system)}
        sub={verdict.concreteVolume > 0 ? `order ${pouredUnits} ${unitOf("volume", system)}` : "none to pour"}
      />
      <Figure
        label="Margin"
        value={percent(verdict.smallestMargin)}
        unit="%"
        sub={
          answer.kind === "proven"
            ? "beyond every required factor"
            : governs
              ? `${lowerFirst(governs.title)} governs`
              : said(0, "length", system)
        }
      />
    </dl>
  );
};

const label = (answer: Shown): string => {
  if (answer.kind === "unsafe") return "Not safe: don’t build this";
  const aim = answer.reading.study.aim;
  if (answer.former) return "Safe, for the givens before your edit";
  if (answer.kind === "searching") return "Safe so far";
  if (answer.kind === "stopped") return "Safe, perhaps not the cheapest";
  return proven[aim];
};

const proven: Readonly<Record<Aim, string>> = {
  cost: "Cheapest safe mast",
  concrete: "Safe mast of least concrete",
  digging: "Safe mast of least digging",
  margin: "Strongest within the budget",
  height: "Highest within the budget",
  area: "Most antenna within the budget",
};

const costLine = (answer: Shown, currency: string, system: System): string => {
  if (answer.kind === "searching") return "the number only falls";
  if (answer.kind === "stopped" && answer.reading.study.aim === "cost")
    return `at most ${money(Math.ceil(answer.proof.gap), currency, system)} too dear`;
  return "all in, at your prices";
};

const Figure = ({
  label,
  value,
  unit,
  sub,
}: {
  label: string;
  value: string;
  unit?: string;
  sub: string;
}) => (
  <div>
    <dt>
      <Glossed text={label} />
    </dt>
    <dd>
      <span className="fig">
        {value}
        {unit && <small>{unit}</small>}
      </span>
      <span className="sub">{sub}</span>
    </dd>
  </div>
);

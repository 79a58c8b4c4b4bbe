import { Fragment, lazy, Suspense, useState } from "react";
import { governing } from "../../checks/governing.ts";
import type { Design } from "../../model/design.ts";
import type { Check, Verdict } from "../../model/verdict.ts";
import { limitWord } from "../../report/names.ts";
import { Term } from "../parts/glossed.tsx";
import { useMedia, usePhone } from "../parts/measured.ts";
import { book, type Reading, useBook } from "../state/book.ts";
import { mergedLimits, numberedChecks, placeWords } from "../wording/check.ts";
import { used } from "../wording/figures.ts";
import { lineOf } from "../wording/glossary.ts";

const FEW = 5;

// Formulas and sketches come when the first check is opened.
const CheckOpened = lazy(() => import("./check-opened.tsx"));

interface TableProps {
  readonly design: Design;
  readonly verdict: Verdict;
  readonly reading: Reading;
  readonly provisional?: boolean;
}
/** The shortest road to failure first; each row opens to its sum and its source. */
export const ChecksTable = ({ design, verdict, reading, provisional = false }: TableProps) => {
  const system = useBook((state) => state.system);
  const phone = usePhone();
  const tight = useMedia("(max-width: 1399px)");
  const [open, setOpen] = useState<string | null>(null);
  const [all, setAll] = useState(false);
  const rows = mergedLimits(numberedChecks(verdict.checks), (check) => placeWords(check, design, system));
  const shown = phone && !all ? rows.slice(0, FEW) : rows;
  const governs = governing(verdict.checks);
  const failed = verdict.checks.filter((check) => !check.passes && check.kind !== "warning").length;
  const gloss = failed
    ? `${failed} of ${verdict.checks.length} fail`
    : `all ${verdict.checks.length} pass${phone ? "" : "; the shortest road to failure first"}`;
  return (
    <div className="sec checks">
      <h2>
        Checks<small>{provisional ? `of the best so far, ${gloss}` : gloss}</small>
      </h2>
      <table aria-label="Checks by share used">
        <thead className={phone ? "vh" : undefined}>
          <tr>
            <th>
              <span className="vh">Number</span>
            </th>
            <th>Check</th>
            {!tight && <th>Where</th>}
            <th style={{ width: 128 }}>Used of what is allowed</th>
            <th className="num">
              <Term word="Used" line={lineOf("utilisation")} />
            </th>
          </tr>
        </thead>
        <tbody>
          {shown.map(({ check, number, where }) => (
            <Fragment key={check.id}>
              <Row
                where={where}
                check={check}
                number={number}
                governs={check === governs}
                tight={tight}
                open={open === check.id}
                toggle={() => setOpen(open === check.id ? null : check.id)}
              />
              {open === check.id && (
                <tr className="opened">
                  <td />
                  <td colSpan={tight ? 3 : 4}>
                    <Suspense>
                      <CheckOpened
                        check={check}
                        verdict={verdict}
                        system={system}
                        governs={check === governs}
                        asked={provisional ? undefined : { reading, design }}
                      />
                    </Suspense>
                  </td>
                </tr>
              )}
            </Fragment>
          ))}
        </tbody>
      </table>
      {phone && rows.length > FEW && (
        <button type="button" className="link tall" onClick={() => setAll(!all)}>
          {all ? "Only the first five" : `The other ${rows.length - FEW}`}
        </button>
      )}
    </div>
  );
};

interface RowProps {
  readonly where: string;
  readonly check: Check;
  readonly number: number | null;
  readonly governs: boolean;
  readonly tight: boolean;
  readonly open: boolean;
  readonly toggle: () => void;
}
const Row = ({ where, check, number, governs, tight, open, toggle }: RowProps) => {
  const strength = check.kind === "strength";
  const fails = !check.passes && check.kind !== "warning";
  const point = (id: string | null) => book.set({ pointed: id });
  const title = `${check.title}${fails ? " fails" : ""}${governs ? (fails ? ", governs" : " governs") : ""}`;
  return (
    <tr
      className={governs ? "gov" : undefined}
      onMouseEnter={() => point(check.id)}
      onMouseLeave={() => point(null)}
    >
      <td style={{ width: 24, whiteSpace: "nowrap" }}>
        {fails ? "✕ " : ""}
        {number}
      </td>
      <td>
        <button
          type="button"
          className="row"
          aria-expanded={open}
          onClick={toggle}
          onFocus={() => point(check.id)}
          onBlur={() => point(null)}
        >
          {title}
        </button>
        {tight && <span className={governs ? "under" : "under quiet"}>{where}</span>}
      </td>
      {!tight && (
        <td className={governs ? "place" : "place quiet"} colSpan={strength ? 1 : 2}>
          {where.replace(/(\d) (?=\S+$)/, "$1\u00a0")}
        </td>
      )}
      {(strength || tight) && <td>{strength && <Bar share={check.utilisation} governs={governs} />}</td>}
      <td className="num">{strength ? <b>{used(check.utilisation)}</b> : limitWord(check)}</td>
    </tr>
  );
};

/** 100 px are the whole of what is allowed; what goes past is cross-hatched. */
export const Bar = ({ share, governs }: { share: number; governs: boolean }) => {
  const end = Math.min(Number.isFinite(share) ? share : 1.25, 1.25) * 100;
  const stroke = governs ? "var(--govern)" : "var(--ink)";
  return (
    <svg width="126" height="14" viewBox="0 0 126 14" aria-hidden="true">
      <path d={`M0 7H${Math.min(end, 100)}`} style={{ stroke, strokeWidth: governs ? 5 : 2.2 }} />
      {end > 100 && (
        <rect
          x="100"
          y="1.5"
          width={end - 100}
          height="11"
          fill="url(#unsafe)"
          style={{ stroke, strokeWidth: 1.4 }}
        />
      )}
      <path d="M.5 2.5V11.5" className="l2" />
      <path d="M100 0V14" className="l3" />
    </svg>
  );
};

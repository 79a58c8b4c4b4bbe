import { useMemo } from "react";
import { governing } from "../../checks/governing.ts";
import type { Design } from "../../model/design.ts";
import { designKey } from "../../model/design-key.ts";
import { lowerFirst, percent } from "../../report/names.ts";
import { SmallMast } from "../drawings/small-mast.tsx";
import type { Marked } from "../plots/stairs.ts";
import { type Reading, useBook } from "../state/book.ts";
import { judge } from "../state/judging.ts";
import { plots, type Taken } from "../state/plots.ts";
import { useStore } from "../state/store.ts";
import { designSentence, holdWords } from "../wording/design-sentence.ts";
import { money, type System, said } from "../wording/figures.ts";

const DRAWN = 190;

/** The marked designs side by side, to one scale, each judged here before a figure of it is shown. */
export const MarkedDesigns = ({ marked, reading }: { marked: readonly Marked[]; reading: Reading }) => {
  const taken = useStore(plots, (state) => state.taken);
  const system = useBook((state) => state.system);
  const cards = [
    ...marked.map(({ letter, name, point }) => ({
      letter,
      name,
      design: point.design,
      at: null,
      whole: false,
    })),
    ...(taken
      ? [{ letter: "E", name: `yours, ${taken.from}`, design: taken.design, at: taken.at, whole: true }]
      : []),
  ];
  if (cards.length === 0) return null;
  const tallest = Math.max(...cards.map(({ design }) => design.height));
  const widest = Math.max(...cards.map(({ design }) => (design.guys ? design.guys.radius * 1.6 : 4)));
  const scale = Math.min((DRAWN - 18 - 16) / tallest, 140 / widest);
  return (
    <section className="marked" aria-label="Marked designs">
      <h2>
        Marked designs, to one scale
        <small>each judged again before it is shown; point at one and its marks follow</small>
      </h2>
      <div className="cards">
        {cards.map((card) => (
          <Card key={card.letter} {...card} reading={reading} scale={scale} system={system} />
        ))}
      </div>
    </section>
  );
};

interface CardProps {
  readonly letter: string;
  readonly name: string;
  readonly design: Design;
  readonly at: Taken["at"];
  readonly whole: boolean;
  readonly reading: Reading;
  readonly scale: number;
  readonly system: System;
}
const Card = ({ letter, name, design, at, whole, reading, scale, system }: CardProps) => {
  const verdict = useMemo(() => judge(reading, design, at), [reading, design, at]);
  if (!verdict)
    return (
      <article data-design={designKey(design)}>
        <SmallMast design={design} scale={scale} height={DRAWN} />
        <div>
          <h3>
            <span className="marker">{letter}</span> {name}
          </h3>
          <p className="quiet">It can’t be judged under these givens, so no figure of it is shown.</p>
        </div>
      </article>
    );
  const governs = governing(verdict.checks);
  return (
    <article data-design={designKey(design)}>
      <SmallMast design={design} scale={scale} height={DRAWN} />
      <div>
        <h3>
          <span className="marker">{letter}</span> {name}
        </h3>
        {verdict.passes ? (
          <>
            <p className="amount">{money(verdict.bill.total, reading.catalog.prices.currency, system)}</p>
            <p className="figure">{said(verdict.concreteVolume, "volume", system)}</p>
            <p className="figure">margin {percent(verdict.smallestMargin)} %</p>
          </>
        ) : (
          <p className="figure">
            <b>✕ Not safe under these givens: don’t build this</b>
          </p>
        )}
        <p className="quiet">
          {whole ? designSentence(design, reading.catalog, system) : holdWords(design, system)}
        </p>
        {governs && (
          <p className="gov">
            {lowerFirst(governs.title)} {verdict.passes ? "governs" : "fails"}
          </p>
        )}
      </div>
    </article>
  );
};

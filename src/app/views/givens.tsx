import { lazy, Suspense, useState } from "react";
import type { Catalog } from "../../model/catalog.ts";
import type { Study } from "../../model/study.ts";
import { writePrice } from "../../quantity/price.ts";
import { Choice, Given } from "../parts/given.tsx";
import { changeStudy, useBook } from "../state/book.ts";
import { inUnits, money, type System, said } from "../wording/figures.ts";
import { typedPercent, typedPrice, typedQuantity } from "../wording/given.ts";
import { antennaWords, axisWords, lotSize, openArea, rareWords, single } from "../wording/givens.ts";
import { Quantity, useReading, written } from "./givens/fields.tsx";
import { Ice } from "./givens/ice.tsx";
import { WindGivens } from "./givens/wind.tsx";
import { StepPrice } from "./step-price.tsx";

// Rarely asked, and a tenth of the first page: it comes when it is opened.
const EveryGiven = lazy(() => import("./givens/every.tsx"));

/** Five groups of givens, each value edited where it stands, with what one step of it costs. */
export const Givens = () => {
  const reading = useBook((state) => state.reading);
  const system = useBook((state) => state.system);
  if (!reading) return null;
  return (
    <>
      <section className="givens" aria-label="Givens">
        <Site />
        <Soil />
        <Lot />
        <Wishes />
        <Rules />
      </section>
      <MoreGivens study={reading.study} system={system} />
    </>
  );
};

const Site = () => (
  <div>
    <h3>Site</h3>
    <p>
      <WindGivens />
      <StepPrice id="wind" />
    </p>
    <p>
      <Quantity
        path={["site", "greatestDig"]}
        dimension="length"
        label="Deepest hole that can be dug"
        prefix="Dig to "
      />
      <Ice />
    </p>
  </div>
);

const Soil = () => {
  const { study, catalog } = useReading();
  const system = useBook((state) => state.system);
  return (
    <div>
      <h3>Soil</h3>
      <p>
        <Choice
          label="Soil"
          value={study.site.soil}
          options={catalog.soils.map((soil) => ({
            value: soil.id,
            name: `${said(soil.bearing, "pressure", system, system === "us" ? 0 : 1)}: ${soil.name.toLowerCase()}`,
          }))}
          write={(value) => changeStudy(["site", "soil"], value, "another soil")}
        />
        <StepPrice id="soil" />
      </p>
      <p>
        <Quantity path={["site", "frostDepth"]} dimension="length" label="Frost depth" prefix="Frost to " />
        <StepPrice id="frost" />
      </p>
    </div>
  );
};

const Lot = () => {
  const { study } = useReading();
  const system = useBook((state) => state.system);
  const { lot } = study;
  return (
    <div>
      <h3>Lot</h3>
      <p>
        <span>
          <a href="#/lot">{lotSize(study, system)}</a>,
        </span>
        <Quantity
          path={["lot", "setback"]}
          dimension="length"
          label="Setback of anchors from the lot line"
          prefix="setback "
        />
        <StepPrice id="setback" />
      </p>
      <p>
        <span>
          {lot.powerLines.length === 0
            ? "No power line stated"
            : lot.powerLines.length === 1
              ? lot.powerLines[0].name
              : `${lot.powerLines.length} power lines`}
        </span>
        <span className="price">keep clear</span>
      </p>
      {lot.keepOut && (
        <p>
          <span>No anchors on: {lot.keepOut.map(({ name }) => name).join(", ")}</span>
        </p>
      )}
    </div>
  );
};

const Wishes = () => {
  const { study, catalog, paper } = useReading();
  const system = useBook((state) => state.system);
  const { wishes } = study;
  const area = openArea(study);
  return (
    <div>
      <h3>Wishes</h3>
      <p>
        <Given
          label="Height of the mast"
          shown={`${axisWords(wishes.height, system)} up`}
          start={
            single(wishes.height) === null
              ? axisWords(wishes.height, system)
              : written(paper.study, ["wishes", "height"], single(wishes.height)!, "length", system)
          }
          read={(text) => typedQuantity(text, "length", system, { min: 1 })}
          write={({ text }, gesture) => changeStudy(["wishes", "height"], text, `height ${text}`, gesture)}
          grain={pieceOf(catalog, system)}
          stands={`The answer still stands for ${axisWords(wishes.height, system)}.`}
        />
        {area ? (
          <Quantity path={area.path} dimension="area" label="Antenna area" suffix=" of antenna" />
        ) : (
          <span>{antennaWords(study, catalog, system)}</span>
        )}
        <StepPrice id="height" also="area" />
      </p>
      <p>
        <Given
          label="Margin beyond every required factor"
          shown={`Margin ${figureOf(wishes.margin)} % or more,`}
          start={`${figureOf(wishes.margin)} %`}
          read={(text) => typedPercent(text, 500)}
          write={({ si, text }, gesture) =>
            changeStudy(["wishes", "margin"], si, `margin ${text} %`, gesture)
          }
          grain={1}
          stands={`The answer still stands for ${figureOf(wishes.margin)} %.`}
        />
        <Quantity
          path={["wishes", "concreteCap"]}
          dimension="volume"
          label="Most concrete"
          prefix="concrete to "
          none="concrete any"
        />
        <StepPrice id="margin" />
      </p>
    </div>
  );
};

const Rules = () => {
  const { study, catalog } = useReading();
  const system = useBook((state) => state.system);
  const { budget } = study.wishes;
  return (
    <div>
      <h3>Rules</h3>
      <p>
        <Choice
          label="Rule set"
          value={study.rules.set}
          options={catalog.rules.map((rule) => ({ value: rule.id, name: rule.name }))}
          write={(value) => changeStudy(["rules", "set"], value, "another rule set")}
        />
      </p>
      <p>
        <Choice
          label="Aim"
          value={study.aim}
          options={[
            { value: "cost", name: "Aim: least cost" },
            { value: "concrete", name: "Aim: least concrete" },
            { value: "digging", name: "Aim: least digging" },
            { value: "margin", name: "Aim: most margin" },
            { value: "height", name: "Aim: most height" },
            { value: "area", name: "Aim: most antenna" },
          ]}
          write={(value) => changeStudy(["aim"], value, `aim: ${value}`)}
        />
      </p>
      <p>
        <Given
          label="Budget"
          shown={budget === undefined ? "no budget" : `for ${money(budget, catalog.prices.currency, system)}`}
          start={budget === undefined ? "" : writePrice(budget, "each", system, catalog.prices.currency)}
          read={(text) => (text.trim() === "" ? { ok: true, text: "", si: 0 } : typedPrice(text, "each"))}
          write={({ text }, gesture) =>
            changeStudy(
              ["wishes", "budget"],
              text || undefined,
              text ? `budget ${text}` : "no budget",
              gesture,
            )
          }
        />
      </p>
    </div>
  );
};

/** What is rarely asked, by topic; what of it is stated is named where it is folded away. */
const MoreGivens = ({ study, system }: { study: Study; system: System }) => {
  const stated = rareWords(study, system);
  const [open, setOpen] = useState(false);
  return (
    <details className="more" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        <span className="link">Every given</span>
        <span className="quiet">
          {stated.length > 0
            ? `stated too: ${stated.join(", ")}`
            : "hill, gust, air, layers and water, antennas, sway and twist, what may be used"}
        </span>
      </summary>
      {open && (
        <Suspense fallback={<div className="topics" aria-busy="true" />}>
          <EveryGiven />
        </Suspense>
      )}
    </details>
  );
};

const figureOf = (ratio: number) => `${Math.round(ratio * 1000) / 10}`;

/** A mast grows by whole pieces: a shorter step of its height buys nothing. In the unit that is shown. */
const pieceOf = (catalog: Catalog, system: System): number =>
  Number(
    inUnits(
      Math.min(...catalog.sections.flatMap((section) => section.pieces.map(({ length }) => length))),
      "length",
      system,
    ).toFixed(3),
  );

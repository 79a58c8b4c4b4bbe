import { writePrice } from "../../quantity/price.ts";
import { Choice, Given } from "../parts/given.tsx";
import { changeStudy, useBook } from "../state/book.ts";
import { valueAt } from "../state/path.ts";
import { figure, type Measure, money, type System, said } from "../wording/figures.ts";
import { typedIce, typedPercent, typedPrice, typedQuantity } from "../wording/given.ts";
import {
  antennaWords,
  axisWords,
  exposureWords,
  furtherSite,
  furtherWishes,
  lotSize,
  openArea,
  single,
  terrainWords,
} from "../wording/givens.ts";
import { StepPrice } from "./step-price.tsx";

/** Five groups of givens, each value edited where it stands, with what one step of it costs. */
export const Givens = () => {
  const reading = useBook((state) => state.reading);
  const system = useBook((state) => state.system);
  if (!reading) return null;
  const { study, catalog } = reading;
  const { site, lot, wishes } = study;
  const area = openArea(study);
  return (
    <section className="givens" aria-label="Givens">
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
        <Further said={furtherSite(study, system)} />
      </div>
      <div>
        <h3>Soil</h3>
        <p>
          <Choice
            label="Soil"
            value={site.soil}
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
      </div>
      <div>
        <h3>Wishes</h3>
        <p>
          <Given
            label="Height of the mast"
            shown={`${axisWords(wishes.height, system)} up`}
            start={
              single(wishes.height) === null
                ? axisWords(wishes.height, system)
                : written(reading.paper.study, ["wishes", "height"], single(wishes.height)!, "length", system)
            }
            read={(text) => typedQuantity(text, "length", system, { min: 1 })}
            write={({ text }) => changeStudy(["wishes", "height"], text, `height ${text}`)}
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
            write={({ si, text }) => changeStudy(["wishes", "margin"], si, `margin ${text} %`)}
            stands={`The answer still stands for ${figureOf(wishes.margin)} %.`}
          />
          <Cap />
          <StepPrice id="margin" />
        </p>
        <Further said={furtherWishes(study)} />
      </div>
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
            shown={
              wishes.budget === undefined
                ? "no budget"
                : `for ${money(wishes.budget, catalog.prices.currency, system)}`
            }
            start={
              wishes.budget === undefined
                ? ""
                : writePrice(wishes.budget, "each", system, catalog.prices.currency)
            }
            read={(text) => (text.trim() === "" ? { ok: true, text: "", si: 0 } : typedPrice(text, "each"))}
            write={({ text }) =>
              changeStudy(["wishes", "budget"], text || undefined, text ? `budget ${text}` : "no budget")
            }
          />
        </p>
      </div>
    </section>
  );
};

/** What is stated in the study's file and edited there. */
const Further = ({ said: sentences }: { readonly said: readonly string[] }) =>
  sentences.length > 0 ? (
    <p>
      <span>{sentences.join("; ")}</span>
    </p>
  ) : null;

/** Each basis of wind states what it needs; the strip edits that and nothing else. */
const WindGivens = () => {
  const { wind } = useBook((state) => state.reading)!.study.site;
  if (wind.basis === "uniform")
    return (
      <Quantity
        path={["site", "wind", "pressure"]}
        dimension="pressure"
        label="Wind pressure"
        prefix="Wind "
      />
    );
  if (wind.basis === "en1991")
    return (
      <>
        <Quantity
          path={["site", "wind", "basicSpeed"]}
          dimension="speed"
          label="Wind, ten-minute mean"
          prefix="Wind "
        />
        <Choice
          label="Terrain"
          value={wind.terrain}
          options={(["0", "I", "II", "III", "IV"] as const).map((value) => ({
            value,
            name: terrainWords[value],
          }))}
          write={(value) => changeStudy(["site", "wind", "terrain"], value, `terrain ${value}`)}
        />
      </>
    );
  return (
    <>
      <Quantity
        path={["site", "wind", "speed"]}
        dimension="speed"
        label="Wind, three-second gust"
        prefix="Wind "
      />
      <Choice
        label="Exposure"
        value={wind.exposure}
        options={(["B", "C", "D"] as const).map((value) => ({ value, name: exposureWords[value] }))}
        write={(value) => changeStudy(["site", "wind", "exposure"], value, `exposure ${value}`)}
      />
    </>
  );
};

/** Ice comes with the wind that blows while it hangs: "0.5 in with 40 mph". */
const Ice = () => {
  const reading = useBook((state) => state.reading)!;
  const system = useBook((state) => state.system);
  const { ice } = reading.study.site;
  const windWords =
    ice?.speed !== undefined
      ? said(ice.speed, "speed", system)
      : ice?.pressure !== undefined
        ? said(ice.pressure, "pressure", system)
        : "";
  const shown = ice
    ? `ice ${said(ice.thickness, "size", system, system === "us" ? 2 : 0)} with ${windWords}`
    : "no ice";
  return (
    <Given
      label="Ice and the wind with it"
      shown={shown}
      start={ice ? shown.replace("ice ", "") : "none"}
      read={(text) => typedIce(text, reading.study.site.wind.basis === "uniform", system)}
      write={({ text }) => {
        const [thickness, wind] = text.split(" with ");
        const value =
          text === "none"
            ? undefined
            : { thickness, [reading.study.site.wind.basis === "uniform" ? "pressure" : "speed"]: wind };
        return changeStudy(["site", "ice"], value, text === "none" ? "no ice" : `ice ${text}`);
      }}
      stands={`The answer still stands for ${shown}.`}
      width={170}
    />
  );
};

const figureOf = (ratio: number) => `${Math.round(ratio * 1000) / 10}`;

/** As the file has it where that is text in a unit, else from the number. */
const written = (
  study: unknown,
  path: readonly (string | number)[],
  si: number,
  dimension: Measure,
  system: System,
) => {
  const raw = valueAt(study, path);
  return typeof raw === "string" ? raw : said(si, dimension, system);
};

interface QuantityProps {
  readonly path: readonly (string | number)[];
  readonly dimension: Measure;
  readonly label: string;
  readonly prefix?: string;
  readonly suffix?: string;
}
const Quantity = ({ path, dimension, label, prefix = "", suffix = "" }: QuantityProps) => {
  const reading = useBook((state) => state.reading)!;
  const system = useBook((state) => state.system);
  const si = valueAt(reading.study, path) as number;
  const shown = said(si, dimension, system);
  return (
    <Given
      label={label}
      shown={`${prefix}${shown}${suffix}`}
      start={written(reading.paper.study, path, si, dimension, system)}
      read={(text) => typedQuantity(text, dimension, system, { min: 0 })}
      write={({ text }) => changeStudy(path, text, `${label.toLowerCase()} ${text}`)}
      stands={`The answer still stands for ${shown}.`}
    />
  );
};

const Cap = () => {
  const reading = useBook((state) => state.reading)!;
  const system = useBook((state) => state.system);
  const cap = reading.study.wishes.concreteCap;
  return (
    <Given
      label="Most concrete"
      shown={cap === undefined ? "concrete any" : `concrete to ${figure(cap, "volume", system)}`}
      start={
        cap === undefined
          ? "any"
          : written(reading.paper.study, ["wishes", "concreteCap"], cap, "volume", system)
      }
      read={(text) =>
        /^\s*(any)?\s*$/i.test(text)
          ? { ok: true, text: "any", si: 0 }
          : typedQuantity(text, "volume", system, { min: 0 })
      }
      write={({ text }) =>
        changeStudy(["wishes", "concreteCap"], text === "any" ? undefined : text, `concrete ${text}`)
      }
      stands={cap === undefined ? "" : `The answer still stands for ${said(cap, "volume", system)}.`}
    />
  );
};

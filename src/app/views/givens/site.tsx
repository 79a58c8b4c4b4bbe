import { Choice } from "../../parts/given.tsx";
import { Stated } from "../../parts/stated.tsx";
import { changeStudy, useBook } from "../../state/book.ts";
import { type System, said } from "../../wording/figures.ts";
import { typedAir, typedNumber, typedQuantity, typedStiffness } from "../../wording/given.ts";
import {
  airWords,
  basisWords,
  exposureWords,
  hillWords,
  iceWords,
  terrainWords,
} from "../../wording/givens.ts";
import { Plain, Quantity, Tick, useReading, written } from "./fields.tsx";

/** Each basis of wind states what it needs; the strip edits that, the rest is folded away. */
export const WindGivens = () => {
  const { wind } = useReading().study.site;
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

/** Ice comes with the wind that blows while it hangs. */
export const Ice = () => {
  const reading = useReading();
  const system = useBook((state) => state.system);
  const { ice, wind } = reading.study.site;
  const blows = wind.basis === "uniform" ? "pressure" : "speed";
  const start = (key: "thickness" | "speed" | "pressure", dimension: "size" | "speed" | "pressure") =>
    ice?.[key] === undefined
      ? ""
      : written(reading.paper.study, ["site", "ice", key], ice[key], dimension, system);
  return (
    <Stated
      label="Ice and the wind with it"
      shown={iceWords(reading.study, system)}
      parts={[
        {
          key: "thickness",
          label: "Radial thickness",
          start: start("thickness", "size"),
          read: (text) => typedQuantity(text, "size", system),
          example: "0.5 in",
        },
        {
          key: blows,
          label: "Wind while it hangs",
          start: start(blows, blows),
          read: (text) => typedQuantity(text, blows, system),
          example: blows === "speed" ? "40 mph" : "4 psf",
        },
        {
          key: "importance",
          label: "Importance factor",
          start: `${ice?.importance ?? 1}`,
          read: (text) => typedNumber(text),
          as: "number",
        },
      ]}
      remove={ice && "State no ice"}
      write={(values) => changeStudy(["site", "ice"], values, values ? `ice ${values.thickness}` : "no ice")}
    />
  );
};

/** What is rarely asked of the wind: where its figure comes from, the hill, the gust, the height above the sea. */
export const FurtherWind = () => {
  const reading = useReading();
  const { wind } = reading.study.site;
  return (
    <>
      <Stated
        label="Where the wind's figure comes from"
        shown={basisWords[wind.basis]}
        note="A new basis asks for its own figure: the hill and the factors of the former one are left out."
        parts={[
          {
            key: "basis",
            label: "Wind by",
            start: wind.basis,
            options: Object.entries(basisWords).map(([value, name]) => ({ value, name })),
          },
          {
            key: "figure",
            label: "Its speed, or pressure",
            start: "",
            example: "115 mph, 24 m/s or 20 psf",
          },
        ]}
        write={(values) => (values ? newBasis(`${values.basis}`, `${values.figure}`) : [])}
      />
      {wind.basis !== "uniform" && <Hill />}
      {(wind.basis === "asce7-16" || wind.basis === "asce7-22") && (
        <>
          {!wind.hill && (
            <Plain
              path={["site", "wind", "topographicFactor"]}
              label="Topographic factor"
              shown={`topographic factor ${wind.topographicFactor}`}
            />
          )}
          <Choice
            label="Gust factor"
            value={wind.gustFactor === "computed" ? "computed" : "stated"}
            options={[
              {
                value: "stated",
                name: `gust factor ${wind.gustFactor === "computed" ? 0.85 : wind.gustFactor}`,
              },
              { value: "computed", name: "gust factor computed for each mast" },
            ]}
            write={(value) =>
              changeStudy(
                ["site", "wind", "gustFactor"],
                value === "computed" ? "computed" : 0.85,
                `gust factor ${value}`,
              )
            }
          />
          {wind.gustFactor !== "computed" && (
            <Plain
              path={["site", "wind", "gustFactor"]}
              label="Gust factor, stated"
              shown={`${wind.gustFactor}`}
            />
          )}
          <Quantity
            path={["site", "wind", "groundElevation"]}
            dimension="length"
            label="Ground above the sea"
            prefix="ground "
            suffix=" above the sea"
          />
        </>
      )}
      {wind.basis === "en1991" && (
        <>
          {!wind.hill && (
            <Plain
              path={["site", "wind", "orographyFactor"]}
              label="Orography factor"
              shown={`orography factor ${wind.orographyFactor}`}
            />
          )}
          <Plain
            path={["site", "wind", "airDensity"]}
            label="Density of the air, kg/m³"
            shown={`air ${wind.airDensity} kg/m³`}
          />
          <Plain
            path={["site", "wind", "structuralFactor"]}
            label="Structural factor; none: computed for each mast"
            shown={
              wind.structuralFactor === "computed"
                ? "structural factor computed for each mast"
                : `structural factor ${wind.structuralFactor}`
            }
            none="structural factor computed"
          />
        </>
      )}
    </>
  );
};

const newBasis = (basis: string, figure: string) => {
  const rest = {
    uniform: { pressure: figure },
    "asce7-16": { speed: figure, exposure: "C" },
    "asce7-22": { speed: figure, exposure: "C" },
    en1991: { basicSpeed: figure, terrain: "II" },
  }[basis];
  return changeStudy(["site", "wind"], { basis, ...rest }, `wind by ${basis}, ${figure}`);
};

const shapes: Readonly<Record<string, string>> = {
  ridge: "ridge, long across the wind",
  escarpment: "escarpment",
  axisymmetric: "round hill",
  hill: "hill or ridge",
};

const Hill = () => {
  const reading = useReading();
  const system = useBook((state) => state.system);
  const { wind } = reading.study.site;
  if (wind.basis === "uniform") return null;
  const { hill } = wind;
  const en = wind.basis === "en1991";
  const length = (key: string, label: string, example: string, optional = false) => {
    const si = hill && (hill as Readonly<Record<string, unknown>>)[key];
    return {
      key,
      label,
      example,
      optional,
      start:
        typeof si === "number"
          ? written(reading.paper.study, ["site", "wind", "hill", key], si, "length" as const, system)
          : "",
      read: (text: string) => typedQuantity(text, "length", system),
    };
  };
  return (
    <Stated
      label="Hill"
      shown={hillWords(reading.study, system)}
      parts={[
        {
          key: "shape",
          label: "Shape",
          start: hill?.shape ?? "",
          options: (en ? ["hill", "escarpment"] : ["ridge", "escarpment", "axisymmetric"]).map((value) => ({
            value,
            name: shapes[value],
          })),
        },
        length("height", "Height", "60 ft"),
        ...(en
          ? [
              length("upwindLength", "Length of the upwind slope", "100 m"),
              length("downwindLength", "Length of the downwind slope", "100 m", true),
            ]
          : [length("halfLength", "From the crest to half its height, upwind", "200 ft")]),
        length("distance", "From the crest to the mast", "0 ft"),
        {
          key: "side",
          label: "The mast stands",
          start: hill?.side ?? "downwind",
          options: [
            { value: "downwind", name: "on the downwind side" },
            { value: "upwind", name: "on the upwind side" },
          ],
        },
      ]}
      remove={hill && "State no hill"}
      write={(values) =>
        changeStudy(["site", "wind", "hill"], values, values ? `hill ${values.height} high` : "no hill")
      }
    />
  );
};

const inAir = (celsius: number | undefined, system: System): string =>
  celsius === undefined ? "" : airWords(celsius, system);

/** Air, and what the base turns against. */
export const FurtherSite = () => {
  const { site } = useReading().study;
  const system = useBook((state) => state.system);
  const { temperature, baseStiffness } = site;
  const air = (key: "installed" | "coldest" | "hottest" | "iced", label: string, example: string) => ({
    key,
    label,
    example,
    start: inAir(temperature?.[key] ?? (key === "iced" ? 0 : undefined), system),
    read: (text: string) => typedAir(text, system),
    as: "number" as const,
  });
  return (
    <>
      <Stated
        label="Temperature of the air"
        shown={
          temperature
            ? `rigged at ${inAir(temperature.installed, system)}, air ${inAir(temperature.coldest, system)} to ${inAir(temperature.hottest, system)}`
            : "temperature not counted"
        }
        parts={[
          air("installed", "When the guys are drawn taut", "50 °F"),
          air("coldest", "Coldest in wind", "−10 °F"),
          air("hottest", "Hottest in wind", "100 °F"),
          air("iced", "While ice hangs", "32 °F"),
        ]}
        remove={temperature && "Don’t count temperature"}
        write={(values) =>
          changeStudy(
            ["site", "temperature"],
            values,
            values ? "temperature stated" : "temperature not counted",
          )
        }
      />
      <Plain
        path={["site", "baseStiffness"]}
        label="What the footing of a mast without guys resists turning with"
        shown={
          baseStiffness === undefined
            ? "base of a mast without guys does not turn"
            : `base turns against ${said(baseStiffness, "moment", system)}/rad`
        }
        start={
          baseStiffness === undefined
            ? ""
            : `${said(baseStiffness, "moment", system).replace(/[,\u2009]/g, "")}/rad`
        }
        read={(text) => typedStiffness(text, system)}
        none="base does not turn"
      />
    </>
  );
};

/** Water, and how deep one may dig. */
export const FurtherSoil = () => (
  <>
    <Quantity
      path={["site", "waterTable"]}
      dimension="length"
      label="Water below grade"
      prefix="water "
      suffix=" down"
      none="no water as deep as anything dug"
    />
    <Tick path={["site", "pourBelowWater"]} label="Concrete may be poured below water" />
  </>
);

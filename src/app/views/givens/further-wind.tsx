import { Choice } from "../../parts/given.tsx";
import { Stated } from "../../parts/stated.tsx";
import { changeStudy, useBook } from "../../state/book.ts";
import { basisWords, hillWords } from "../../wording/givens.ts";
import { Plain, Quantity, useQuantityPart, useReading } from "./fields.tsx";

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
  const part = useQuantityPart(["site", "wind", "hill"]);
  const { wind } = reading.study.site;
  if (wind.basis === "uniform") return null;
  const { hill } = wind;
  const en = wind.basis === "en1991";
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
        part("height", "Height", "length", "60 ft"),
        ...(en
          ? [
              part("upwindLength", "Length of the upwind slope", "length", "100 m"),
              part("downwindLength", "Length of the downwind slope", "length", "100 m", { optional: true }),
            ]
          : [part("halfLength", "From the crest to half its height, upwind", "length", "200 ft")]),
        part("distance", "From the crest to the mast", "length", "0 ft"),
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

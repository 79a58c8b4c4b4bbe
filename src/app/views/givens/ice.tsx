import { Stated } from "../../parts/stated.tsx";
import { changeStudy, useBook } from "../../state/book.ts";
import { typedNumber, typedQuantity } from "../../wording/given.ts";
import { iceWords } from "../../wording/givens.ts";
import { useReading, written } from "./fields.tsx";

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

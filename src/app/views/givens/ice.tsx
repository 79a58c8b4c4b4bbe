import { Stated } from "../../parts/stated.tsx";
import { changeStudy, useBook } from "../../state/book.ts";
import { typedNumber } from "../../wording/given.ts";
import { iceWords } from "../../wording/givens.ts";
import { useQuantityPart, useReading } from "./fields.tsx";

/** Ice comes with the wind that blows while it hangs. */
export const Ice = () => {
  const reading = useReading();
  const system = useBook((state) => state.system);
  const { ice, wind } = reading.study.site;
  const blows = wind.basis === "uniform" ? "pressure" : "speed";
  const part = useQuantityPart(["site", "ice"]);
  return (
    <Stated
      label="Ice and the wind with it"
      shown={iceWords(reading.study, system)}
      parts={[
        part("thickness", "Radial thickness", "size", "0.5 in"),
        part(blows, "Wind while it hangs", blows, blows === "speed" ? "40 mph" : "4 psf"),
        {
          key: "importance",
          label: "Importance factor",
          start: `${ice?.importance ?? 1}`,
          read: (text) => typedNumber(text),
          as: "number",
        },
      ]}
      note="Thickness of a 500-year map, as ASCE 7-16 prints it; of the 50-year maps before it, twice theirs."
      remove={ice && "State no ice"}
      write={(values) => changeStudy(["site", "ice"], values, values ? `ice ${values.thickness}` : "no ice")}
    />
  );
};

import { Choice } from "../../parts/given.tsx";
import { changeStudy } from "../../state/book.ts";
import { exposureWords, terrainWords } from "../../wording/givens.ts";
import { Quantity, useReading } from "./fields.tsx";

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

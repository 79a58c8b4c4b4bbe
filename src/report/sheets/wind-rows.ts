import type { Study, WindGivens } from "../../model/study.ts";
import { risingGround } from "../../physics/wind/wind-action.ts";
import type { Cell } from "./types.ts";
import { both } from "./words.ts";

const basisName = {
  uniform: "uniform pressure on flats",
  "asce7-16": "ASCE 7-16",
  "asce7-22": "ASCE 7-22",
  en1991: "EN 1991-1-4",
} as const;

/** A factor as stated, or what a hill makes of it at the ground. */
function riseWords(wind: WindGivens): string {
  const { factor, reason } = risingGround(wind);
  const hill = wind.basis !== "uniform" && wind.hill;
  if (!hill) return `${factor(0)}`;
  return reason === null ? `${factor(0).toFixed(2)} at the ground, by the ${hill.shape}` : `1: ${reason}`;
}

const gustWords = (factor: number | "computed"): string =>
  factor === "computed" ? "by this mast's sway, see checks" : `${factor}`;

/** Wind and ice of a study, a row for each given of its basis. */
export function windRows({ wind, ice }: Study["site"]): Cell[][] {
  const iced: Cell[] = ["Ice", ice ? both(ice.thickness, "size") : "none stated"];
  const basis: Cell[] = ["Wind basis", basisName[wind.basis]];
  switch (wind.basis) {
    case "uniform":
      return [basis, ["Wind pressure", both(wind.pressure, "pressure")], iced];
    case "en1991":
      return [
        basis,
        ["Wind speed", both(wind.basicSpeed, "speed")],
        ["Terrain", wind.terrain],
        ["Orography factor", riseWords(wind)],
        ["Air", `${wind.airDensity} kg/m³`],
        ["Structural factor", gustWords(wind.structuralFactor)],
        iced,
      ];
    default:
      return [
        basis,
        ["Wind speed", both(wind.speed, "speed")],
        ["Exposure", wind.exposure],
        ["Topographic factor", riseWords(wind)],
        ["Ground over sea", both(wind.groundElevation, "length", 0)],
        ["Gust factor", gustWords(wind.gustFactor)],
        iced,
      ];
  }
}

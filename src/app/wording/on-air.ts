import type { Catalog } from "../../model/catalog.ts";
import { mountHeight } from "../../model/mount-height.ts";
import type { Study } from "../../model/study.ts";
import { meanPowerGain } from "../../physics/radio/figure-of-merit.ts";
import { byId } from "./parts.ts";

/** Elevation angles that long paths come in at. Common practice, no source. */
export const WINDOW = { from: (3 * Math.PI) / 180, to: (12 * Math.PI) / 180 };
/** Average ground. ITU-R P.527 medium dry ground, from memory. */
const GROUND = { relativePermittivity: 15, conductivity: 0.001 };

/** Middle of the amateur bands by their names in metres, Hz. */
const BANDS: Readonly<Record<string, number>> = {
  "80": 3.7e6,
  "40": 7.1e6,
  "30": 10.12e6,
  "20": 14.2e6,
  "17": 18.12e6,
  "15": 21.2e6,
  "12": 24.94e6,
  "10": 28.5e6,
  "6": 50.3e6,
  "2": 144.3e6,
};

/** The lowest band of the package's largest antenna, in MHz and as a figure of merit over height. */
export const onAir = (
  study: Study,
  catalog: Catalog,
  mast: number,
): { megahertz: number; at: (more: number) => number } | null => {
  const items = study.wishes.packages[0].items.flatMap((item) => {
    if (!("antenna" in item)) return [];
    const antenna = byId(catalog.antennas, item.antenna);
    return antenna ? [{ antenna, item }] : [];
  });
  const [main] = items.sort((a, b) => b.antenna.area - a.antenna.area);
  const bands = main?.antenna.bands.split(/\s+/).flatMap((name) => (BANDS[name] ? [BANDS[name]] : [])) ?? [];
  if (!main || bands.length === 0) return null;
  const frequency = Math.min(...bands);
  return {
    megahertz: Math.round(frequency / 1e6),
    at: (more) =>
      meanPowerGain(
        {
          height: mountHeight(main.item, mast + more),
          frequency,
          ground: GROUND,
          polarisation: "horizontal",
        },
        WINDOW,
      ),
  };
};

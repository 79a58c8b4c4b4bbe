import { statedSpeed } from "../model/place.ts";
import type { Study } from "../model/study.ts";
import { ledByFirst } from "./place.ts";

const share = (value: number) => `${Math.round(100 * value)} %`;
const metres = (value: number) => `${(1000 * value).toFixed(2)} mm`;

/** What is demanded over the study's ranges, and for which of them that is proven. docs/theory/robust.md. */
export function rangeWords({ ranges, site }: Study, places: number): string[] {
  if (!ranges) return [];
  const { soilStrength, windSpeed, wallLoss, tension } = ranges;
  const stated = statedSpeed(site.wind);
  const said: string[] = [];
  if (soilStrength)
    said.push(
      `Safe is demanded in soil of ${share(soilStrength.from)} to ${share(soilStrength.to)} of the strength stated; the weakest stands for all of it, stronger soil never does harm here.`,
    );
  const others = [
    windSpeed &&
      stated &&
      `wind speed ${share(windSpeed.from / stated)} to ${share(windSpeed.to / stated)} of what is stated`,
    wallLoss && `leg walls thinner by ${metres(wallLoss.from)} to ${metres(wallLoss.to)} than measured`,
    tension && `initial tension ${share(tension.from)} to ${share(tension.to)} of what is stated`,
  ].filter(Boolean);
  if (others.length === 0) return said;
  const free = ledByFirst(site)
    ? "A mast without guys is at its worst in the fastest wind with the thinnest walls, which is tried."
    : "So is a mast without guys: its computed gusts or its turning base leave nothing proven between.";
  said.push(
    `Safe is demanded over ${others.join("; ")}. A guyed mast is tried at ${places} ${places === 1 ? "place" : "places"} of that box, its corners among them; between them nothing is proven. ${free}`,
  );
  return said;
}

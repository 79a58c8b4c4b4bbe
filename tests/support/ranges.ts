import fc from "fast-check";
import type { StudyFile } from "../../src/model/study.ts";

type Ranges = NonNullable<StudyFile["ranges"]>;
type Wind = StudyFile["site"]["wind"];

/** The stated speed as a number and its unit, where the basis states one. */
const speedOf = (wind: Wind): { value: number; unit: string } | null => {
  const text = "speed" in wind ? wind.speed : "basicSpeed" in wind ? wind.basicSpeed : null;
  if (typeof text !== "string") return null;
  const [value, unit] = text.split(" ");
  return { value: Number(value), unit };
};

/** Ranges about what a study states, at least one of them; some speak of no wind. */
export const rangesFor = (wind: Wind): fc.Arbitrary<Ranges> =>
  fc
    .record({
      soil: fc.constantFrom(undefined, { from: 0.7, to: 1.3 }, { from: 0.9, to: 1 }),
      wind: fc.constantFrom(undefined, [0.8, 1.1], [0.9, 1], [1, 1.15]),
      wall: fc.constantFrom(undefined, { to: "0.3 mm" }, { from: "0.2 mm", to: "0.6 mm" }),
      tension: fc.constantFrom(undefined, { from: 0.8, to: 1.2 }, { from: 0.7, to: 1 }),
      between: fc.constantFrom(0, 0, 1),
    })
    .map(({ soil, wind: factors, wall, tension, between }) => {
      const speed = speedOf(wind);
      return {
        ...(soil && { soilStrength: soil }),
        ...(wall && { wallLoss: wall }),
        ...(factors &&
          speed && {
            windSpeed: {
              from: `${speed.value * factors[0]} ${speed.unit}`,
              to: `${speed.value * factors[1]} ${speed.unit}`,
            },
          }),
        tension: tension ?? { from: 0.95, to: 1.05 },
        between,
      };
    });

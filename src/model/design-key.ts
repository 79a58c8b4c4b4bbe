import type { Design } from "./design.ts";

/** Micrometres and a millionth of a degree: two designs that a builder can't tell apart have one key. */
const canonical = (_key: string, value: unknown) =>
  typeof value === "number" ? Math.round(value * 1e6) / 1e6 : value;

/** The one key of a design: equal designs have equal keys, and keys order ties. */
export const designKey = (design: Design): string =>
  JSON.stringify(
    [
      design.package,
      design.height,
      design.stack.map((part) => [part.section, part.length]),
      design.guys && [
        design.guys.perLevel,
        design.guys.radii ? [...design.guys.radii] : design.guys.radius,
        design.guys.tension,
        design.guys.levels.map(({ height, strand, tension, arm }) => [
          height,
          strand,
          ...(tension === undefined ? [] : [tension]),
          ...(arm === undefined ? [] : [arm]),
        ]),
        Object.entries(design.guys.anchor).sort(([a], [b]) => (a < b ? -1 : 1)),
        design.guys.rotation,
      ],
      Object.entries(design.footing).sort(([a], [b]) => (a < b ? -1 : 1)),
    ],
    canonical,
  );

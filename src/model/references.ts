import type { Catalog } from "./catalog.ts";
import type { Design } from "./design.ts";
import { type InputError, inputError } from "./input-error.ts";
import { nearest } from "./nearest.ts";
import type { AntennaPackage, Study } from "./study.ts";

type Path = readonly (string | number)[];
interface Reference {
  readonly path: Path;
  readonly id: string;
  /** "a strand of the catalog". */
  readonly what: string;
  readonly rows: readonly { readonly id: string }[];
}

const unknown = ({ path, id, what, rows }: Reference): InputError[] => {
  const known = rows.map((row) => row.id);
  if (known.includes(id)) return [];
  const near = nearest(id, known);
  return [
    inputError(
      path,
      JSON.stringify(id),
      near === undefined ? `${what}, which has none` : `${what}; the nearest is "${near}"`,
    ),
  ];
};

const packageReferences = (set: AntennaPackage, index: number, catalog: Catalog): Reference[] => {
  const path = ["wishes", "packages", index];
  return [
    { path: [...path, "pipe"], id: set.pipe, what: "a pipe of the catalog", rows: catalog.pipes },
    ...set.items.flatMap((item, at) =>
      "antenna" in item
        ? [
            {
              path: [...path, "items", at, "antenna"],
              id: item.antenna,
              what: "an antenna of the catalog",
              rows: catalog.antennas,
            },
          ]
        : [],
    ),
  ];
};

/** Ids in a study that no row of the (merged) catalog has. */
export const unknownInStudy = (study: Study, catalog: Catalog): InputError[] => {
  const listed = (
    key: "sections" | "strands" | "anchors" | "footings" | "insulators" | "torqueArms",
    what: string,
    rows: Reference["rows"],
  ) => {
    const ids = study.parts[key] ?? "all";
    return ids === "all" ? [] : ids.map((id, index) => ({ path: ["parts", key, index], id, what, rows }));
  };
  const barred = (study.parts.barred ?? []).flatMap((entry, at) =>
    (["anchors", "footings", "sections", "strands"] as const).flatMap((key) =>
      (entry[key] ?? []).map((id, index) => ({
        path: ["parts", "barred", at, key, index],
        id,
        what: `${key === "anchors" ? "an" : "a"} ${key.slice(0, -1)} of the catalog`,
        rows: key === "strands" ? catalog.strand : catalog[key],
      })),
    ),
  );
  return [
    ...barred,
    { path: ["site", "soil"], id: study.site.soil, what: "a soil of the catalog", rows: catalog.soils },
    ...study.wishes.packages.flatMap((set, index) => packageReferences(set, index, catalog)),
    { path: ["rules", "set"], id: study.rules.set, what: "a rule set of the catalog", rows: catalog.rules },
    ...listed("sections", "a section of the catalog", catalog.sections),
    ...listed("strands", "a strand of the catalog", catalog.strand),
    ...listed("anchors", "an anchor of the catalog", catalog.anchors),
    ...listed("footings", "a footing of the catalog", catalog.footings),
    ...listed("torqueArms", "a torque arm of the catalog", catalog.torqueArms),
    ...listed("insulators", "a base insulator of the catalog", catalog.insulators),
  ].flatMap(unknown);
};

/** What a study pays as it is sold, and the prices that say how. */
const asSold = { concreteAsSold: "concreteSupply", barsAsSold: "barStock" } as const;

/** A study that pays something as it is sold needs to know how. */
export const notForSale = ({ parts }: Study, { prices }: Catalog): InputError[] =>
  (["concreteAsSold", "barsAsSold"] as const).flatMap((key) =>
    parts[key] && !prices[asSold[key]]
      ? [inputError(["parts", key], "true", `false, or "${asSold[key]}" among the prices`)]
      : [],
  );

/** Ids in a design that no row of the catalog has; a row of another kind doesn't count. */
export const unknownInDesign = (
  design: Design,
  catalog: Catalog,
  packages?: Reference["rows"],
): InputError[] => {
  const { guys, footing } = design;
  const ofKind = <Row extends { id: string; kind: string }>(rows: readonly Row[], kind: string) =>
    rows.filter((row) => row.kind === kind);
  const references: Reference[] = [
    ...design.stack.map((part, index) => ({
      path: ["stack", index, "section"],
      id: part.section,
      what: "a section of the catalog",
      rows: catalog.sections,
    })),
    ...(guys?.levels ?? []).map((level, index) => ({
      path: ["guys", "levels", index, "strand"],
      id: level.strand,
      what: "a strand of the catalog",
      rows: catalog.strand,
    })),
    ...(guys?.levels ?? []).flatMap(({ arm }, index) =>
      arm === undefined
        ? []
        : [
            {
              path: ["guys", "levels", index, "arm"],
              id: arm,
              what: "a torque arm of the catalog",
              rows: catalog.torqueArms,
            },
          ],
    ),
    {
      path: ["footing", "row"],
      id: footing.row,
      what: `a ${footing.kind} footing of the catalog`,
      rows: ofKind(catalog.footings, footing.kind),
    },
  ];
  if (footing.insulator !== undefined)
    references.push({
      path: ["footing", "insulator"],
      id: footing.insulator,
      what: "a base insulator of the catalog",
      rows: catalog.insulators,
    });
  if (guys)
    references.push({
      path: ["guys", "anchor", "row"],
      id: guys.anchor.row,
      what: `a ${guys.anchor.kind} anchor of the catalog`,
      rows: ofKind(catalog.anchors, guys.anchor.kind),
    });
  if (packages)
    references.push({
      path: ["package"],
      id: design.package,
      what: "an antenna package of the study",
      rows: packages,
    });
  return references.flatMap(unknown);
};

import anchors from "../../catalog/anchors.json" with { type: "json" };
import antennas from "../../catalog/antennas.json" with { type: "json" };
import footings from "../../catalog/footings.json" with { type: "json" };
import insulators from "../../catalog/insulators.json" with { type: "json" };
import pipes from "../../catalog/pipes.json" with { type: "json" };
import prices from "../../catalog/prices.json" with { type: "json" };
import rules from "../../catalog/rules.json" with { type: "json" };
import sections from "../../catalog/sections.json" with { type: "json" };
import soils from "../../catalog/soils.json" with { type: "json" };
import strand from "../../catalog/strand.json" with { type: "json" };
import torqueArms from "../../catalog/torque-arms.json" with { type: "json" };
import type { CatalogFile } from "./catalog.ts";

/** The catalog of the folder `catalog/`, as written. TypeScript reads "block" as any text: `parseCatalog` checks. */
export const defaultCatalog = {
  sections,
  strand,
  anchors,
  footings,
  insulators,
  torqueArms,
  soils,
  antennas,
  pipes,
  rules,
  prices,
} as unknown as CatalogFile;

import type { RuleSet } from "../../model/catalog.ts";
import { valueAt } from "../state/path.ts";

/** One number of a rule set: where it stands, what it is called, and where its source stands. */
export interface RuleLine {
  readonly path: readonly string[];
  readonly name: string;
  readonly gloss: string;
  readonly source: readonly string[];
  readonly unit: "factor" | "list" | "share" | "degrees" | "stress" | "unitWeight";
}

const names: Readonly<Record<string, readonly [name: string, gloss: string]>> = {
  leg: ["Leg pressed", "strength over force"],
  legTension: ["Leg pulled", "strength over force"],
  bracing: ["Bracing", "strength over force"],
  stability: ["Whole mast", "buckling load over load"],
  guy: ["Guy", "breaking strength over tension"],
  pipe: ["Antenna pipe", "strength over moment"],
  anchorPost: ["Anchor post", "strength over moment"],
  uplift: ["Anchor pulled up", "weight held over pull"],
  anchorLateral: ["Anchor pulled sideways", "soil over pull"],
  screw: ["Earth screw", "rating over pull"],
  rockRod: ["Rock rod", "strength over pull"],
  bearing: ["Bearing", "beyond what the soil's own value holds"],
  overturning: ["Overturning", "what restores over what turns"],
  sliding: ["Sliding", "what holds over what pushes"],
  baseCompression: ["Concrete under the plate", "strength over thrust"],
  lossOfGuy: ["With a guy lost", "strength of mast and guys over force"],
  baseInsulator: ["Base insulator", "rating over thrust and push"],
};

/** Every "required" factor of a rule set, in the order in which it is written. */
const factors = (rule: RuleSet): RuleLine[] =>
  Object.entries(rule).flatMap(([key, value]) =>
    typeof value === "object" && value !== null && "required" in value
      ? [
          {
            path: [key, "required"],
            name: names[key]?.[0] ?? key,
            gloss: names[key]?.[1] ?? "capacity over demand",
            source: [key, "source"],
            unit: "factor" as const,
          },
        ]
      : [],
  );

const line = (path: string, name: string, gloss: string, unit: RuleLine["unit"] = "factor"): RuleLine => {
  const parts = path.split(".");
  return { path: parts, name, gloss, source: [parts[0], "source"], unit };
};

const loads: readonly RuleLine[] = [
  line("windFactor.service", "Wind of service level", "on stated pressures, and on EN speeds"),
  line("windFactor.strength", "Wind of strength level", "on the speeds of ASCE 7 maps"),
  line("deadFactors.values", "Dead weight", "one for each combination", "list"),
  line("deadFactors.guyed", "Dead weights asked of guyed masts", "how many of the list, from its first"),
  line("iced.dead", "Dead weight, with ice", ""),
  line("iced.ice", "Ice", "on its weight"),
  line("iced.wind", "Wind, with ice", "where it is of strength level"),
  line("iced.service", "Wind of service level, with ice", "on stated pressures, and on EN speeds"),
  line("icedWind.ice", "Ice that goes along", "where wind leads"),
  line("icedWind.wind", "Wind that leads, with ice", ""),
  line("ownWeight.share", "Own weight of concrete", "what counts of it in its favour", "share"),
];

const limits: readonly RuleLine[] = [
  line("tension.least", "Guys at least", "of breaking strength", "share"),
  line("tension.most", "Guys at most", "of breaking strength", "share"),
  line("tilt.most", "Lean at most", "from plumb", "degrees"),
  line("lossOfGuy.wind", "Wind with a guy lost", "of the design wind", "share"),
  line("upliftAngle.degrees", "Soil that an anchor lifts", "from the vertical", "degrees"),
  line("concrete.strength", "Concrete", "its strength in 28 days", "stress"),
  line("concrete.unitWeight", "Concrete weighs", "", "unitWeight"),
  line("concreteDesign.loadFactor", "Loads on reinforced concrete", "from reactions to strength level"),
];

export const ruleGroups = (
  rules: readonly RuleSet[],
): readonly { readonly title: string; readonly lines: readonly RuleLine[] }[] => {
  const known = new Map(rules.flatMap(factors).map((one) => [one.name, one]));
  const there = (one: RuleLine) => rules.some((rule) => valueAt(rule, one.path) !== undefined);
  return [
    { title: "On loads", lines: loads.filter(there) },
    { title: "Strength must be so many times the force", lines: [...known.values()] },
    { title: "Limits and material", lines: limits.filter(there) },
  ];
};

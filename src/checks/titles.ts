import type { CheckUnit } from "../model/verdict.ts";

/** What each limit state is called on site. */
export const limitStateTitles: Readonly<Record<string, string>> = {
  "leg-compression": "Leg compression",
  "leg-tension": "Leg tension",
  "bracing-shear": "Bracing shear",
  stability: "Whole-mast stability",
  "guy-strength": "Guy strength",
  tilt: "Lean of the mast",
  "twist-range": "Twist that can be worked out",
  "gust-factor": "Gust factor",
  "pipe-bending": "Antenna pipe bending",
  "initial-tension": "Initial tension",
  "anchor-uplift": "Anchor uplift",
  "anchor-lateral": "Anchor lateral",
  "screw-pull-out": "Screw pull-out",
  "screw-sideways": "Screw sideways",
  "rod-pull-out": "Rock rod pull-out",
  "base-bearing": "Base bearing",
  overturning: "Overturning",
  sliding: "Sliding",
  "pier-as-post": "Pier held sideways, code post",
  "pier-in-sand": "Pier held sideways, sand",
  "pier-in-clay": "Pier held sideways, clay",
  "pier-bending": "Pier bending",
  "base-compression": "Base compression",
};

export const limitStateUnits: Readonly<Record<string, CheckUnit>> = {
  stability: "ratio",
  "gust-factor": "ratio",
  tilt: "angle",
  "twist-range": "angle",
  "pipe-bending": "moment",
  "base-bearing": "pressure",
  overturning: "moment",
  "pier-as-post": "moment",
  "pier-in-sand": "moment",
  "pier-in-clay": "moment",
  "pier-bending": "moment",
};

/** Wind of a map in open country at sea level, ASCE 7, without its edition. */
export const asce7 = {
  speed: 50,
  exposure: "C",
  topographicFactor: 1,
  groundElevation: 0,
  gustFactor: 0.85,
} as const;

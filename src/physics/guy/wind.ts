/** Load of a guy, per unstressed length, N/m: along the wind, across it, up. */
export interface GuyLoad {
  qx: number;
  qy: number;
  qz: number;
}

/**
 * Wind and weight of a guy. Wind square to the chord, taken to the chord as rigged: qw |e| e, e the wind's part
 * across the guy. docs/theory/guys.md.
 * @param ax anchor from the head at rest, along the wind, m
 * @param ay the same across it
 * @param rise head over the anchor, m
 * @param wind on a guy that lies square to it, N/m
 * @param weight N/m
 */
export function loadGuy(
  load: GuyLoad,
  ax: number,
  ay: number,
  rise: number,
  wind: number,
  weight: number,
): void {
  const chord = Math.sqrt(ax * ax + ay * ay + rise * rise);
  const along = -ax / chord;
  const ex = 1 - along * along;
  const ey = (along * ay) / chord;
  const ez = (-along * rise) / chord;
  const norm = Math.sqrt(ex * ex + ey * ey + ez * ez) * wind;
  load.qx = norm * ex;
  load.qy = norm * ey;
  load.qz = norm * ez - weight;
}

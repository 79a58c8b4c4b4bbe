import { fieldFactor, type RaisedAntenna } from "./ground-reflection.ts";

/** Elevation angles that matter, rad above the horizon. */
export interface ElevationWindow {
  readonly from: number;
  readonly to: number;
}

const PANELS = 64;

/**
 * Mean power over a window of elevation angles relative to free space, dB; add the antenna's own gain.
 * Simpson's rule, 64 panels, fine for antennas up to about ten wavelengths high.
 * @throws RangeError where the window is empty or leaves the half-space above the ground
 */
export function meanPowerGain(antenna: RaisedAntenna, window: ElevationWindow): number {
  if (!(window.to > window.from))
    throw new RangeError(
      `elevation window: found ${window.from} to ${window.to} rad, expected from below to`,
    );
  const step = (window.to - window.from) / PANELS;
  let sum = 0;
  for (let point = 0; point <= PANELS; point++) {
    const weight = point === 0 || point === PANELS ? 1 : point % 2 === 1 ? 4 : 2;
    sum += weight * fieldFactor(antenna, window.from + point * step) ** 2;
  }
  return 10 * Math.log10(sum / (3 * PANELS));
}

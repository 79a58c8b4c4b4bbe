import { GREATEST_TWIST } from "../physics/mast/twist.ts";
import type { MastLimitState } from "./mast-checks.ts";

/** Twist anywhere on the mast, where antennas beside the axis turn it: beyond the range of the method it is refused. */
export const twistRange: MastLimitState = {
  id: "twist-range",
  title: "Twist that can be worked out",
  unit: "angle",
  kind: "limit",
  measure({ mast, twist }) {
    if (!twist) return [];
    let worst = 0;
    for (let i = 1; i < mast.nodes; i++) if (twist.turn[i] > twist.turn[worst]) worst = i;
    const turn = twist.turn[worst];
    return [
      {
        limitState: twistRange.id,
        demand: turn,
        capacity: GREATEST_TWIST,
        required: 1,
        source: "range of the method: a turn this small moves a guy's head along its tangent",
        of: 0,
        at: mast.z[worst],
        note:
          turn > GREATEST_TWIST
            ? `found a twist of ${((turn * 180) / Math.PI).toFixed(1)} degrees, expected at most 5: hang antennas nearer to the axis`
            : undefined,
      },
    ];
  },
};

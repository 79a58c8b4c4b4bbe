import {
  type Bar,
  developed,
  developmentLength,
  EARTH_COVER,
  INCH,
  LOST,
  PLAIN,
  PSI,
  rootOf,
  tieBar,
} from "./bars.ts";
import { type EdgeCage, edgeCage } from "./cage.ts";
import { rectangleMoment, tiedShear } from "./section-strength.ts";

/** A block that a rod pulls in its middle, m. */
export interface AnchorBlock {
  readonly length: number;
  readonly height: number;
  /** Along the pull. */
  readonly width: number;
  /** Along its four edges; null of plain concrete. */
  readonly bar: Bar | null;
}

/** How the ground holds it along its length, m. */
export interface AnchorBeam {
  readonly length: number;
  /**
   * What the soil beyond its ends holds of an upward pull, as a share: it hangs on the ends. Of 0 the pull is held evenly
   * all along.
   */
  readonly ends: number;
}

/** Design strengths one way of its two: N m and N. */
interface OneWay {
  readonly moment: number;
  readonly shear: number;
}

/** The block as one sort of concrete. */
export interface BeamStrength {
  readonly sort: "plain" | "barred";
  /** Pulled up, it bends over its height; pulled sideways, over its width. */
  readonly up: OneWay;
  readonly level: OneWay;
  /** Of the plate of its rod through the block, N. */
  readonly punching: number;
}

/**
 * Arm of the inner forces of a block that is stout for its length, of that of a slender one, 0.8 of its depth: 0.2 (l + 2 h)
 * to l = 2 h, 0.6 l to l = h. CEB-FIP Model Code 1978 18.1.8 for walls on two supports, from memory.
 */
export const stoutArm = (length: number, depth: number): number =>
  Math.min(1, (length + 2 * depth) / (4 * depth), (0.75 * length) / depth);

/** ACI 318-19 14.5.2.1, 14.5.5.1, from memory: 5 root S and 4/3 root b h. */
function plainWay(length: number, depth: number, breadth: number, strength: number): OneWay {
  const root = PSI * rootOf(strength);
  const [h, b] = [Math.max(0, depth - LOST), Math.max(0, breadth - LOST)];
  return {
    moment: (PLAIN * stoutArm(length, depth) * 5 * root * b * h ** 2) / 6,
    shear: PLAIN * (4 / 3) * root * b * h,
  };
}

function barredWay(
  { length, depth, breadth, top }: { length: number; depth: number; breadth: number; top: boolean },
  { bar, ties }: EdgeCage,
  row: number,
  strength: number,
  barYield: number,
): OneWay {
  const toBars = depth / 2 + row;
  // from the middle to the end of a bar
  const room = length / 2 - EARTH_COVER;
  const share = developed(room, developmentLength(bar, strength, barYield, top));
  const area = 2 * bar.area * share;
  // fewer than 9.6.1.2 asks: a third more than wanted, 9.6.1.3
  const least = (Math.max(3 * rootOf(strength), 200) * PSI * breadth * toBars) / barYield;
  const warns = area < least ? 0.75 : 1;
  const section = { depth, breadth };
  return {
    moment:
      warns *
      stoutArm(length, depth) *
      rectangleMoment(section, row, 2, bar.area * share, strength, barYield),
    shear: tiedShear({ depth: toBars, breadth }, area, 2 * tieBar.area, ties, strength, barYield),
  };
}

/** What a block is made of and may be judged as: plain, and by its bars where it has any. docs/theory/concrete.md. */
export function beamStrengths(
  block: AnchorBlock,
  strength: number,
  barYield: number,
): { readonly cage: EdgeCage | null; readonly ways: readonly BeamStrength[] } {
  const { length, height, width, bar } = block;
  const root = PSI * rootOf(strength);
  // 14.5.5.1: twice 4/3 root on a square of plate and depth; the plate counts as a point
  const through = Math.max(0, Math.min(height, width) - EARTH_COVER);
  const punching = PLAIN * (8 / 3) * root * 4 * through ** 2;
  const plain: BeamStrength = {
    sort: "plain",
    up: plainWay(length, height, width, strength),
    level: plainWay(length, width, height, strength),
    punching,
  };
  const cage = bar && edgeCage(length, height, width, bar);
  if (!cage) return { cage: null, ways: [plain] };
  // bars with more than 12 in. of fresh concrete under them
  const top = height - EARTH_COVER > 12 * INCH;
  const side = { length, top };
  return {
    cage,
    ways: [
      plain,
      {
        sort: "barred",
        up: barredWay({ ...side, depth: height, breadth: width }, cage, cage.rows.height, strength, barYield),
        level: barredWay(
          { ...side, depth: width, breadth: height },
          cage,
          cage.rows.width,
          strength,
          barYield,
        ),
        punching,
      },
    ],
  };
}

/** Moments in the middle, N m: held evenly, and what the soil beyond the ends holds, at the ends. Statics. Hot. */
export const momentUp = ({ length, ends }: AnchorBeam, up: number): number => (up * length * (1 + ends)) / 8;
export const momentLevel = ({ length }: AnchorBeam, level: number): number => (level * length) / 8;

const share = (demand: number, strength: number): number =>
  demand <= 0 ? 0 : strength <= 0 ? Number.POSITIVE_INFINITY : demand / strength;

/**
 * Share of its bending strength: both ways added, which is the stress at a corner of plain concrete, and inside what a
 * barred section holds, whose moments both ways bound a convex set (a test sums such sections in cells). Pulls in N,
 * strength level. Hot.
 */
export const bendingUse = (
  beam: AnchorBeam,
  { up, level }: BeamStrength,
  pulledUp: number,
  pulledLevel: number,
): number => share(momentUp(beam, pulledUp), up.moment) + share(momentLevel(beam, pulledLevel), level.moment);

/**
 * Share of its shear strength, half of the pull on either side of the rod, at the rod: both ways as the sides of a right
 * angle, less than the sum of 1.5 that ACI 318-19 22.5.1.11 allows; or of what its plate punches through, if that is
 * more. Hot.
 */
export const shearUse = (
  { up, level, punching }: BeamStrength,
  pulledUp: number,
  pulledLevel: number,
): number =>
  Math.max(
    aslant(share(pulledUp / 2, up.shear), share(pulledLevel / 2, level.shear)),
    share(aslant(pulledUp, pulledLevel), punching),
  );

/** Of the two sides of a right angle; `Math.hypot` guards against numbers of 1e150 and takes more than twice as long. */
export const aslant = (a: number, b: number): number => Math.sqrt(a * a + b * b);

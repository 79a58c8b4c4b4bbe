/** Exact factors from the units in which American tables print to SI. */
export const INCH = 0.0254;
export const FOOT = 0.3048;
export const MILE_PER_HOUR = 0.44704;
export const POUND = 4.4482216152605;
export const FOOT_POUND = FOOT * POUND;
export const PSF = POUND / FOOT ** 2;
export const PCF = POUND / FOOT ** 3;
export const KSI = (1000 * POUND) / INCH ** 2;

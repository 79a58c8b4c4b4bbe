/** A length in parts of its unit, in lowest terms: "7", "3/8", "1 1/2". */
export const fraction = (value: number, parts: number): string => {
  const count = Math.round(value * parts);
  const whole = Math.floor(count / parts);
  let top = count % parts;
  let under = parts;
  while (top > 0 && top % 2 === 0) {
    top /= 2;
    under /= 2;
  }
  return top === 0 ? `${whole}` : whole === 0 ? `${top}/${under}` : `${whole} ${top}/${under}`;
};

/** Inches as a rule reads them, to the sixteenth; null for what lies between its marks. @param si metres */
export const onRule = (si: number): string | null => {
  const sixteenths = (si / 0.0254) * 16;
  return Math.abs(sixteenths - Math.round(sixteenths)) > 0.02 ? null : fraction(si / 0.0254, 16);
};

/** Inches as a gauge reads a wall: always a decimal, ".065". @param si metres */
export const onGauge = (si: number): string => (si / 0.0254).toFixed(3).replace(/^0/, "");

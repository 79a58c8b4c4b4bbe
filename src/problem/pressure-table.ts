/** Step of the pressure table, m: its chords stay within a millionth of the power law. */
const TABLE_STEP = 0.02;

/** Pressure by height as a fine table: the hot path never raises to a power. */
export function pressureTable(pressure: (z: number) => number, top: number): (z: number) => number {
  const count = Math.ceil(top / TABLE_STEP) + 3;
  const values = Float64Array.from({ length: count }, (_, i) => pressure(i * TABLE_STEP));
  return (z) => {
    const x = z / TABLE_STEP;
    const i = x <= 0 ? 0 : x >= count - 2 ? count - 2 : Math.floor(x);
    return values[i] + (x - i) * (values[i + 1] - values[i]);
  };
}

/** The same few heights are asked for again and again. */
export function remembered(of: (from: number, to: number) => number): (from: number, to: number) => number {
  const known = new Map<number, Map<number, number>>();
  return (from, to) => {
    let row = known.get(from);
    if (!row) known.set(from, (row = new Map()));
    let value = row.get(to);
    if (value === undefined) row.set(to, (value = of(from, to)));
    return value;
  };
}

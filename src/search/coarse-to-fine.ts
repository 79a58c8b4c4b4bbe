/** Cells coarse to fine: the corners first, then halfway between what is known. */
export function coarseToFine(rows: number, columns: number): readonly (readonly [number, number])[] {
  const order: [number, number][] = [];
  const seen = new Set<number>();
  let step = 1;
  while (step < Math.max(rows, columns) - 1) step *= 2;
  for (; step >= 1; step /= 2)
    for (let r = 0; r < rows; r++)
      for (let c = 0; c < columns; c++) {
        const onGrid = (r % step === 0 || r === rows - 1) && (c % step === 0 || c === columns - 1);
        if (!onGrid || seen.has(r * columns + c)) continue;
        seen.add(r * columns + c);
        order.push([r, c]);
      }
  return order;
}

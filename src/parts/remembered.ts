/**
 * Remembers what a row and some numbers make, whatever the ground: whoever drags the soil asks for the same blocks and
 * bars again. Rows are objects that stay as long as their catalog does; with them goes what was remembered.
 */
export function remembered<Row extends object, Numbers extends readonly number[], T>(
  make: (row: Row, ...numbers: Numbers) => T,
): (row: Row, ...numbers: Numbers) => T {
  const ofRow = new WeakMap<Row, Map<string, T>>();
  return (row, ...numbers) => {
    let known = ofRow.get(row);
    if (!known) ofRow.set(row, (known = new Map()));
    const key = numbers.join(" ");
    let made = known.get(key);
    if (made === undefined) known.set(key, (made = make(row, ...numbers)));
    return made;
  };
}

/** Runs in the page: every pair of words, or of a check's number and a word, whose boxes meet in a drawing. */
export const collisions = (drawing: Element) => {
  type Quad = [number, number][];
  const quadOf = (element: SVGGraphicsElement): Quad => {
    const { x, y, width, height } = element.getBBox();
    const turn = element.getCTM()!;
    // lettering is lower than its line: a fifth above and below holds no ink
    const [top, bottom] = [y + height * 0.2, y + height * 0.8];
    return [
      [x, top],
      [x + width, top],
      [x + width, bottom],
      [x, bottom],
    ].map(([px, py]) => [turn.a * px + turn.c * py + turn.e, turn.b * px + turn.d * py + turn.f]);
  };
  const apart = (a: Quad, b: Quad) =>
    [a, b].some((quad) =>
      quad.some(([x1, y1], i) => {
        const [x2, y2] = quad[(i + 1) % 4];
        const along = (one: Quad) => one.map(([x, y]) => (x - x1) * (y2 - y1) - (y - y1) * (x2 - x1));
        const [first, second] = [along(a), along(b)];
        return Math.max(...first) <= Math.min(...second) || Math.max(...second) <= Math.min(...first);
      }),
    );
  const words = [...drawing.querySelectorAll<SVGTextElement>("text")]
    .filter((text) => !text.closest(".balloon") && text.textContent?.trim())
    .map((text) => ({ name: text.textContent!, quad: quadOf(text) }));
  const circles = [...drawing.querySelectorAll<SVGGElement>(".balloon")].map((balloon) => {
    const circle = balloon.querySelector("circle")!;
    const [x, y, r] = [circle.cx, circle.cy, circle.r].map((one) => one.baseVal.value);
    const quad: Quad = [
      [x - r, y - r],
      [x + r, y - r],
      [x + r, y + r],
      [x - r, y + r],
    ];
    return { name: `(${balloon.textContent})`, quad };
  });
  const met: string[] = [];
  words.forEach((word, i) => {
    for (const other of [...words.slice(i + 1), ...circles])
      if (!apart(word.quad, other.quad)) met.push(`${word.name} | ${other.name}`);
  });
  return { met, words: words.length, circles: circles.length };
};

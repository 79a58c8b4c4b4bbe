const SVG = "http://www.w3.org/2000/svg";
/** What the page's style sheet says of a line or a word; a file has to say it itself. */
const STYLES = [
  "fill",
  "stroke",
  "stroke-width",
  "stroke-dasharray",
  "stroke-linecap",
  "stroke-linejoin",
  "paint-order",
  "opacity",
  "font-family",
  "font-size",
  "font-weight",
  "letter-spacing",
];

const styled = (from: Element, to: Element): void => {
  const style = getComputedStyle(from);
  for (const name of ["class", "style", "tabindex", "role"]) to.removeAttribute(name);
  // as attributes of their own: the page's policy bars a style attribute, and complains of one in a copy too
  for (const name of STYLES) {
    const value = style.getPropertyValue(name);
    if (value && value !== "normal") to.setAttribute(name, value.replaceAll('"', "'"));
  }
  [...from.children].forEach((child, i) => {
    styled(child, to.children[i]);
  });
};

/** A drawing of the page as a file of its own: styles and hatches in it, on paper of the page's colour. */
export const svgText = (svg: SVGSVGElement): string => {
  const copy = svg.cloneNode(true) as SVGSVGElement;
  styled(svg, copy);
  const page = svg.ownerDocument;
  const defs = page.createElementNS(SVG, "defs");
  for (const known of page.querySelectorAll("svg > defs > *")) {
    // a plot's own are in the copy already
    if (svg.contains(known)) continue;
    const own = known.cloneNode(true) as Element;
    styled(known, own);
    defs.append(own);
  }
  const paper = page.createElementNS(SVG, "rect");
  paper.setAttribute("width", "100%");
  paper.setAttribute("height", "100%");
  paper.setAttribute("fill", getComputedStyle(page.documentElement).backgroundColor);
  const title = page.createElementNS(SVG, "title");
  title.textContent = svg.getAttribute("aria-label");
  copy.prepend(title, defs, paper);
  copy.setAttribute("xmlns", SVG);
  copy.setAttribute("role", "img");
  return new XMLSerializer().serializeToString(copy);
};

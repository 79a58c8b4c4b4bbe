import { formatNumber, formatQuantity } from "../../quantity/format.ts";
import { cautionSentences } from "../caution.ts";
import { style } from "./style.ts";
import type { Band, Cell, Drawing, Figure, Section, Shape, Sheet, Table, Ticks, Words } from "./types.ts";
import { tape } from "./words.ts";

const escaped = (text: string): string =>
  text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;").replaceAll('"', "&quot;");

/** One sheet as a page that needs nothing beside itself. */
export const renderSheet = (sheet: Sheet): string => page(`${sheet.title}, ${sheet.study}`, [sheet]);

/** All sheets in one page, each on its own paper: what a PDF is made of. */
export const renderSheets = (all: readonly Sheet[]): string => page(`Sheets, ${all[0]?.study ?? ""}`, all);

const page = (title: string, all: readonly Sheet[]): string =>
  `<!doctype html>\n<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width,initial-scale=1"><title>${escaped(title)}</title><style>${style}</style></head><body>${hatches}${all.map(paper).join("\n")}</body></html>\n`;

const hatches = `<svg width="0" height="0" style="position:absolute" aria-hidden="true"><defs><pattern id="ground" width="2.4" height="2.4" patternUnits="userSpaceOnUse" patternTransform="rotate(-45)"><path d="M0 1.2H2.4" style="stroke:#000;stroke-width:.1"/></pattern><pattern id="concrete" width="6" height="5" patternUnits="userSpaceOnUse"><rect width="6" height="5" fill="#fff"/><circle cx=".8" cy="1" r=".16"/><circle cx="3" cy="2.2" r=".14"/><circle cx="5" cy=".8" r=".16"/><circle cx="1.7" cy="4" r=".16"/><circle cx="4.4" cy="4.2" r=".14"/><path d="M3.5 .8l.8.3-.65.55zM.9 2.4l.75.15-.5.6zM4.2 2.8l.7.35-.75.4z" style="fill:none;stroke:#000;stroke-width:.13"/></pattern></defs></svg>`;

function paper(sheet: Sheet): string {
  const [tool, kills, ...rest] = cautionSentences;
  return `<section class="sheet" id="${sheet.id}"><header><h1>${escaped(sheet.title)}<span>${escaped(sheet.study)}</span></h1><p>sheet ${sheet.number} of ${sheet.of}, design ${sheet.design}</p></header><p class="caution"><b>${tool} ${kills}</b> ${rest.join(" ")} Demo sections, antennas and prices are invented.</p>${sheet.bands
    .map((band) => bandHtml(band, sheet.currency))
    .join("")}<footer>${sheet.foot.map((line) => `<p>${escaped(line)}</p>`).join("")}</footer></section>`;
}

function bandHtml(band: Band, currency: string): string {
  const all = (sections: readonly Section[]) => sections.map((one) => sectionHtml(one, currency)).join("");
  if (band.kind === "whole") return all(band.sections);
  const column = (sections: readonly Section[]) => {
    const drawn = sections.some((one) => one.parts.some((part) => part.kind === "drawing"));
    return sections.length === 0 ? "" : `<div${drawn ? ' class="drawn"' : ""}>${all(sections)}</div>`;
  };
  return `<div class="pair">${column(band.left)}${column(band.right)}</div>`;
}

function sectionHtml({ title, gloss, parts }: Section, currency: string): string {
  const small = gloss ? ` <small>${escaped(gloss)}</small>` : "";
  return `<h2>${escaped(title)}${small}</h2>${parts.map((part) => partHtml(part, currency)).join("")}`;
}

function partHtml(part: Table | Words | Ticks | Drawing, currency: string): string {
  switch (part.kind) {
    case "words":
      return `<p class="${part.boxed ? "boxed" : "note"}">${escaped(part.text)}</p>`;
    case "ticks":
      return `<ul class="ticks">${part.steps
        .map((step) => `<li><i></i><span>${escaped(step)}</span><u>name</u><u>date</u></li>`)
        .join("")}</ul>`;
    case "table":
      return tableHtml(part, currency);
    case "drawing":
      return drawingHtml(part);
  }
}

function tableHtml({ head, rows, sum, heavy, words }: Table, currency: string): string {
  const side = (column: number) => (column === 0 || words?.includes(column) ? ' class="w"' : "");
  const row = (cells: readonly Cell[], of = "") =>
    `<tr${of && ` class="${of}"`}>${cells.map((cell, i) => `<td${side(i)}>${cellHtml(cell, currency)}</td>`).join("")}</tr>`;
  return `<table><thead><tr>${head.map((name, i) => `<th${side(i)}>${escaped(name)}</th>`).join("")}</tr></thead><tbody>${rows
    .map((cells, i) => row(cells, heavy?.includes(i) ? "heavy" : ""))
    .join("")}${sum ? row(sum, "sum") : ""}</tbody></table>`;
}

const cellHtml = (cell: Cell, currency: string): string =>
  typeof cell === "string"
    ? escaped(cell)
    : `<span class="n">${escaped(shown(cell, currency))}</span>${siOf(cell)}`;

/** US units, as a crew reads them. */
function shown({ si, as, digits }: Figure, currency: string): string {
  switch (as) {
    case "feet":
      return tape(si);
    case "inches":
      return `${formatNumber(si / 0.0254, "us", digits ?? 1)} in`;
    case "money":
      return `${currency}${formatNumber(si, "us", 2)}`;
    case "share":
      return `${formatNumber(si * 100, "us", digits ?? 0)} %`;
    case "celsius":
      return `${formatNumber(si * 1.8 + 32, "us", 0)} °F`;
    case "count":
      return formatNumber(si, "us", 0);
    case "degrees":
      return `${formatNumber(si, "us", digits ?? 0)}°`;
    case "angle":
      return `${formatNumber((si * 180) / Math.PI, "us", digits ?? 1)}°`;
    default: {
      const { value, unit } = formatQuantity(si, as, "us", digits);
      return `${value} ${unit}`;
    }
  }
}

function siOf({ si, as, both }: Figure): string {
  if (!both) return "";
  const small = (text: string) => ` <small>${escaped(text)}</small>`;
  if (as === "celsius") return small(`${formatNumber(si, "si", 0)} °C`);
  if (as === "feet") return small(`${formatNumber(si, "si", 2)} m`);
  if (as === "money" || as === "share" || as === "count" || as === "degrees" || as === "inches") return "";
  const { value, unit } = formatQuantity(si, as, "si");
  return small(`${value} ${unit}`);
}

const drawingHtml = ({ label, width, height, shapes }: Drawing): string =>
  `<svg width="${mm(width)}mm" height="${mm(height)}mm" viewBox="0 0 ${mm(width)} ${mm(height)}" role="img" aria-label="${escaped(label)}">${shapes
    .map(shapeSvg)
    .join("")}</svg>`;

const mm = (value: number): string => `${Math.round(value * 100) / 100}`;

const fills = { ground: "url(#ground)", concrete: "url(#concrete)", paper: "#fff", ink: "#000" } as const;

function shapeSvg(shape: Shape): string {
  if (shape.kind === "text") {
    const { at, text, anchor, turn, bold } = shape;
    if (text === "") return "";
    const turned = turn ? ` transform="rotate(${turn} ${mm(at[0])} ${mm(at[1])})"` : "";
    return `<text x="${mm(at[0])}" y="${mm(at[1])}"${turned}${anchor && anchor !== "start" ? ` text-anchor="${anchor}"` : ""}${bold ? ' class="b"' : ""}>${escaped(text)}</text>`;
  }
  const look = `class="${shape.pen}${shape.dash ? ` ${shape.dash}` : ""}"${shape.fill ? ` style="fill:${fills[shape.fill]}"` : ""}`;
  if (shape.kind === "circle")
    return `<circle cx="${mm(shape.at[0])}" cy="${mm(shape.at[1])}" r="${mm(shape.radius)}" ${look}/>`;
  const d = shape.points.map(([x, y], i) => `${i === 0 ? "M" : "L"}${mm(x)} ${mm(y)}`).join("");
  return `<path d="${d}${shape.closed ? "Z" : ""}" ${look}/>`;
}

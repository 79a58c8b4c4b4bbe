import type { Catalog } from "../../model/catalog.ts";
import type { AnchorChoice, Design, FootingChoice } from "../../model/design.ts";
import { levelNames } from "../../report/names.ts";
import { anchorKind } from "../../report/part-names.ts";
import type { Change } from "../../search/types.ts";
import { figure, type System, said } from "./figures.ts";
import { byId, inWords, rowName, sectionName } from "./parts.ts";

/** "anchors at 26 ft, not 28": how a rejected design differs, as said on site. */
export const changeWords = (change: Change, catalog: Catalog, system: System, levelCount = 0): string => {
  const level = (number: number) => levelNames(levelCount)[number - 1] ?? `guys of level ${number}`;
  switch (change.what) {
    case "radius":
      return `anchors at ${step(change.to, change.from, system)}`;
    case "level":
      return `${level(change.level)} at ${step(change.to, change.from, system)}`;
    case "strand":
      return `${level(change.level)} of ${rowName(catalog, change.to, system)}`;
    case "section":
      return stackWords(change.now, catalog, system);
    case "anchor":
      return anchorWords(change.was, change.now, catalog, system);
    case "footing":
      return footingWords(change.was, change.now, catalog, system);
    case "arm":
      return change.to === null
        ? "no torque arm"
        : `${rowName(catalog, change.to, system).toLowerCase()} at the top guys`;
    case "tension":
      return `${change.level === null ? "guys" : level(change.level)} drawn to ${share(change.to)} of breaking strength, not ${share(change.from)}`;
    case "levels":
      if (change.to === 0) return "no guys at all";
      return `${inWords(change.to)} guy level${change.to === 1 ? "" : "s"}, not ${inWords(change.from)}`;
  }
};

const share = (of: number): string => `${+(100 * of).toFixed(1)} %`;

const step = (to: number, from: number, system: System): string =>
  `${said(to, "length", system)}, not ${figure(from, "length", system)}`;

const stackWords = (stack: Design["stack"], catalog: Catalog, system: System): string => {
  const name = (id: string) => {
    const section = byId(catalog.sections, id);
    return section ? sectionName(section, system) : id;
  };
  if (stack.length === 1) return `${name(stack[0].section)} sections`;
  return stack
    .map((part) => `${said(part.length, "length", system)} of ${name(part.section)}`)
    .join(" under ");
};

/** The sides that differ: "2.5 ft long, not 3". */
const differing = <T extends object>(
  was: T,
  now: T,
  sides: readonly (readonly [key: string, word: string])[],
  system: System,
): string => {
  const value = (of: T, key: string) => (of as Record<string, unknown>)[key] as number;
  return sides
    .filter(([key]) => value(was, key) !== undefined && Math.abs(value(was, key) - value(now, key)) > 1e-6)
    .map(
      ([key, word]) =>
        `${said(value(now, key), "length", system)} ${word}, not ${figure(value(was, key), "length", system)}`,
    )
    .join("; ");
};

const anchorSides = [
  ["length", "long"],
  ["width", "wide"],
  ["height", "high"],
  ["depth", "down"],
  ["socket", "socketed"],
] as const;
const anchorWords = (was: AnchorChoice, now: AnchorChoice, catalog: Catalog, system: System): string => {
  if (was.kind !== now.kind || was.row !== now.row)
    return `${rowName(catalog, now.row, system).toLowerCase()} as anchors`;
  return `${anchorKind(now.kind, 2)} ${differing(was, now, anchorSides, system)}`;
};

const footingSides = [
  ["width", "wide"],
  ["diameter", "across"],
  ["depth", "deep"],
  ["thickness", "thick"],
  ["socket", "socketed"],
] as const;
type Pad = Extract<FootingChoice, { kind: "pad" }>;
const barWords = (was: Pad, now: Pad): string[] => [
  ...(was.mats === now.mats ? [] : [now.mats > was.mats ? "with bars above too" : "with bars below only"]),
  ...(was.steel === now.steel
    ? []
    : [`with ${(100 * now.steel).toFixed(2)} % of bars, not ${(100 * was.steel).toFixed(2)}`]),
];

const footingWords = (was: FootingChoice, now: FootingChoice, catalog: Catalog, system: System): string => {
  if (was.kind !== now.kind || was.row !== now.row)
    return `${rowName(catalog, now.row, system).toLowerCase()} as base`;
  const other = now.insulator !== undefined && now.insulator !== was.insulator ? now.insulator : undefined;
  return `base ${[
    ...(other === undefined ? [] : [`on ${rowName(catalog, other, system).toLowerCase()}`]),
    differing(was, now, footingSides, system),
    ...("mats" in was && "mats" in now ? barWords(was, now) : []),
    ...("dowels" in was && "dowels" in now && was.dowels !== now.dowels
      ? [`on ${inWords(now.dowels)} dowels, not ${inWords(was.dowels)}`]
      : []),
  ]
    .filter((part) => part !== "")
    .join("; ")}`;
};

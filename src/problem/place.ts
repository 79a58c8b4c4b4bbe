import type { AnchorRow, Catalog, Section, Soil } from "../model/catalog.ts";
import { AS_STATED, type Place, statedSpeed } from "../model/place.ts";
import type { Study, WindGivens } from "../model/study.ts";
import { jakyFriction } from "../physics/ground/anchor-post.ts";
import { wallOf } from "../physics/steel/member.ts";
import { gustComputed } from "../physics/wind/gust-response.ts";

const RADIANS = Math.PI / 180;

const blown = (wind: WindGivens, factor: number): WindGivens => {
  if (wind.basis === "uniform") return { ...wind, pressure: wind.pressure * factor ** 2 };
  if (wind.basis === "en1991") return { ...wind, basicSpeed: wind.basicSpeed * factor };
  return { ...wind, speed: wind.speed * factor };
};

/** The site at a place: its wind, and the wind in its ice. */
export function siteAt(site: Study["site"], { windSpeed }: Place): Study["site"] {
  if (windSpeed === 1) return site;
  const { ice } = site;
  return {
    ...site,
    wind: blown(site.wind, windSpeed),
    ice: ice && {
      ...ice,
      speed: ice.speed === undefined ? undefined : ice.speed * windSpeed,
      pressure: ice.pressure === undefined ? undefined : ice.pressure * windSpeed ** 2,
    },
  };
}

type Layer = Omit<Soil, "id" | "name" | "layers" | "values" | "source">;

/** Every strength times a factor; docs/theory/robust.md. */
const weakened = <L extends Layer>(layer: L, factor: number): L => {
  const times = (value: number | undefined) => (value === undefined ? undefined : value * factor);
  const { frictionAngle: angle, sideFriction } = layer;
  return {
    ...layer,
    bearing: layer.bearing * factor,
    lateralPerDepth: layer.lateralPerDepth * factor,
    lateralCap: times(layer.lateralCap),
    friction: times(layer.friction),
    cohesion: times(layer.cohesion),
    undrainedStrength: times(layer.undrainedStrength),
    groutBond: times(layer.groutBond),
    // tan(phi) is the strength; what it makes of a side would grow as phi falls below the steepest, so it is scaled apart
    frictionAngle:
      angle === undefined ? undefined : Math.min(50, Math.atan(factor * Math.tan(angle * RADIANS)) / RADIANS),
    sideFriction: times(sideFriction ?? (angle === undefined ? undefined : jakyFriction(angle))),
  };
};

const soilAtPlace = (soil: Soil, factor: number): Soil => ({
  ...weakened(soil, factor),
  layers: soil.layers?.map((layer) => weakened(layer, factor)),
});

const anchorAtPlace = (row: AnchorRow, factor: number): AnchorRow =>
  row.kind === "screw"
    ? {
        ...row,
        holds: Object.fromEntries(Object.entries(row.holds).map(([kind, force]) => [kind, force * factor])),
      }
    : row;

/** Thinner than this no wall is computed with: the section is left out, with the reason, where the loss takes all. */
const THINNEST = 1e-6;

/** A section whose tubes or angles have lost a wall; solid bars have none to lose. */
export function sectionAtPlace(row: Section, loss: number): Section {
  const wall = wallOf(row.leg);
  if (loss === 0 || wall === undefined) return row;
  return { ...row, measuredWall: Math.max(THINNEST, (row.measuredWall ?? wall) - loss) };
}

/** The catalog at a place: soil, what is turned into it, walls. */
export function catalogAt(catalog: Catalog, { soilStrength, wallLoss }: Place): Catalog {
  if (soilStrength === 1 && wallLoss === 0) return catalog;
  return {
    ...catalog,
    sections: catalog.sections.map((row) => sectionAtPlace(row, wallLoss)),
    ...(soilStrength === 1
      ? {}
      : {
          soils: catalog.soils.map((row) => soilAtPlace(row, soilStrength)),
          anchors: catalog.anchors.map((row) => anchorAtPlace(row, soilStrength)),
        }),
  };
}

/** Points of one axis: its ends, what is stated, and `between` in each gap. */
function points(from: number, stated: number, to: number, between: number): number[] {
  const known = [...new Set([from, Math.min(Math.max(stated, from), to), to])].sort((a, b) => a - b);
  return known.flatMap((value, i) =>
    i === 0
      ? [value]
      : Array.from(
          { length: between + 1 },
          (_, k) => known[i - 1] + ((value - known[i - 1]) * (k + 1)) / (between + 1),
        ),
  );
}

/**
 * Is a mast without guys worst in the fastest wind with the thinnest walls? It feels more of everything there, as
 * long as its gusts are stated and its base does not turn. docs/theory/robust.md.
 */
export const ledByFirst = ({ wind, baseStiffness }: Study["site"]): boolean =>
  !gustComputed(wind) && baseStiffness === undefined;

/**
 * Every place of the box that a guyed mast is tried at. The first leads: weakest soil, fastest wind, thinnest walls,
 * tension as stated; a mast without guys is worst there. Soil is at its weakest in all: stronger soil never does harm.
 */
export function placesOf(study: Study): Place[] {
  const { ranges } = study;
  if (!ranges) return [AS_STATED];
  const { soilStrength, windSpeed, wallLoss, tension, between } = ranges;
  const stated = statedSpeed(study.site.wind) ?? 1;
  const winds = windSpeed
    ? points(windSpeed.from / stated, 1, windSpeed.to / stated, between)
    : [AS_STATED.windSpeed];
  const losses = wallLoss ? points(wallLoss.from, wallLoss.from, wallLoss.to, between) : [AS_STATED.wallLoss];
  const tensions = tension ? points(tension.from, 1, tension.to, between) : [AS_STATED.tension];
  const weakest = soilStrength?.from ?? AS_STATED.soilStrength;
  const all = winds.flatMap((speed) =>
    losses.flatMap((loss) =>
      tensions.map((drawn) => ({
        soilStrength: weakest,
        windSpeed: speed,
        wallLoss: loss,
        tension: drawn,
      })),
    ),
  );
  const lead: Place = {
    soilStrength: weakest,
    windSpeed: winds[winds.length - 1],
    wallLoss: losses[losses.length - 1],
    tension: 1,
  };
  const same = (a: Place) =>
    a.windSpeed === lead.windSpeed && a.wallLoss === lead.wallLoss && a.tension === lead.tension;
  return [lead, ...all.filter((place) => !same(place))];
}

import { describe, expect, test } from "vitest";
import {
  anchorPoints,
  nearestAnchors,
  placedStars,
  radiiAt,
  spareOf,
  starOf,
} from "../../src/problem/star.ts";

/** A strip 40 m long and 20 m wide, the mast in the middle. */
const lot = {
  corners: [
    [0, 0],
    [40, 0],
    [40, 20],
    [0, 20],
  ] as [number, number][],
  mast: [20, 10] as [number, number],
  setback: 1,
  powerLines: [],
};
const sloping = { ...lot, slope: { toward: 90, fall: 0.2 } };

describe("starOf", () => {
  test("on a level lot with equal radii the star is even", () => {
    const star = starOf(lot, { perLevel: 3, radius: 8, rotation: 30 });
    expect(star.even).toBe(true);
    expect(star.anchors).toEqual([
      { radius: 8, elevation: 0 },
      { radius: 8, elevation: 0 },
      { radius: 8, elevation: 0 },
    ]);
  });

  test("on a lot that falls a fifth toward the east, anchors stand by their bearings", () => {
    const star = starOf(sloping, { perLevel: 4, radius: 10, rotation: 0 });
    expect(star.even).toBe(false);
    const [north, east, south, west] = star.anchors.map((a) => a.elevation);
    expect(east).toBeCloseTo(-2, 12);
    expect(west).toBeCloseTo(2, 12);
    expect(north).toBeCloseTo(0, 12);
    expect(south).toBeCloseTo(0, 12);
  });
});

describe("placedStars", () => {
  const axes = { lot, radii: [6, 8, 10, 12], rotations: [0, 30], drawnIn: false };

  test("level and equal: a star a radius, with the bearing that leaves most room; every place is counted", () => {
    const stars = placedStars(axes, 4);
    expect(stars.map((star) => star.radius)).toEqual([6, 8, 10, 12]);
    expect(stars.reduce((sum, star) => sum + star.places, 0)).toBe(8);
    // 10 m north is outside; at 30 degrees the worst anchor is 8.66 m out, 0.34 m inside the setback
    const [, , ten, twelve] = stars;
    expect(ten.rotation).toBe(30);
    expect(ten.spare).toBeCloseTo(10 - 10 * Math.cos(Math.PI / 6) - 1, 12);
    expect(twelve.rotation).toBeNull();
  });

  test("drawn in: each anchor as far out as the list and the lot allow, none without one at the radius itself", () => {
    expect(radiiAt({ ...axes, drawnIn: true }, 4, 12, 0)).toEqual([8, 12, 8, 12]);
    // toward 30 and 210 degrees 10 m is the farthest that fits, toward 120 and 300 all do
    expect(radiiAt({ ...axes, drawnIn: true }, 4, 12, 30)).toEqual([10, 12, 10, 12]);
    const stars = placedStars({ ...axes, drawnIn: true }, 4);
    expect(stars.reduce((sum, star) => sum + star.places, 0)).toBe(8);
    expect(stars.filter((star) => !star.even).length).toBeGreaterThan(1);
    for (const star of stars) if (star.rotation !== null) expect(star.spare).toBeGreaterThanOrEqual(-1e-6);
  });

  test("a narrower lot than any radius has no place at all", () => {
    const narrow = { ...lot, setback: 9.5 };
    for (const drawnIn of [false, true])
      for (const star of placedStars({ ...axes, lot: narrow, drawnIn }, 3)) expect(star.rotation).toBeNull();
  });
});

test("spareOf is the least distance of anchorPoints inside the lot, less the setback", () => {
  const guys = { perLevel: 4 as const, radius: 12, radii: [8, 12, 8, 12], rotation: 0 };
  expect(anchorPoints(lot.mast, guys).map(([e, n]) => [Math.round(e), Math.round(n)])).toEqual([
    [20, 18],
    [32, 10],
    [20, 2],
    [8, 10],
  ]);
  expect(spareOf(lot, guys)).toBeCloseTo(1, 12);
});

test("nearestAnchors(star) is the side of its triangle or square, and of an uneven star the shortest side", () => {
  const star = (perLevel: 3 | 4, radii: readonly number[]) => ({
    perLevel,
    anchors: radii.map((radius) => ({ radius, elevation: 0 })),
  });
  expect(nearestAnchors(star(3, [10, 10, 10]))).toBeCloseTo(10 * Math.sqrt(3), 12);
  expect(nearestAnchors(star(4, [10, 10, 10, 10]))).toBeCloseTo(10 * Math.SQRT2, 12);
  expect(nearestAnchors(star(4, [10, 10, 3, 4]))).toBeCloseTo(5, 12);
});

test("starOf(posts) holds its guys above the ground: alike all round, and not even with the base", () => {
  const guys = { perLevel: 3, radius: 12, rotation: 0 } as const;
  expect(starOf(lot, guys)).toMatchObject({ head: 0, alike: true, even: true });
  const held = starOf(lot, guys, 0.6);
  expect(held).toMatchObject({ head: 0.6, alike: true, even: false });
  expect(held.anchors.map((anchor) => anchor.elevation)).toEqual([0.6, 0.6, 0.6]);
  expect(held.key).not.toBe(starOf(lot, guys).key);
});

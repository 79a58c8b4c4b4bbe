import { shape } from "../../physics/mast/element.ts";
import { Forces, recoverForces } from "../../physics/mast/recover.ts";
import { Mast } from "../../physics/mast/solver.ts";
import type { LoadCase, MastInput } from "../../physics/mast/types.ts";

/** A reference mast as its file states it; SI, angles in degrees from +x towards +y. */
export interface GuyedMastCase {
  readonly kind: "guyed-mast";
  readonly id: string;
  readonly input: {
    readonly mast: {
      readonly height_m: number;
      readonly base: "pinned" | "fixed";
      readonly segments: readonly {
        readonly z_from_m: number;
        readonly z_to_m: number;
        readonly EI_N_m2: number;
        readonly EA_N: number;
        readonly GAs_N: number | null;
        readonly weight_N_per_m: number;
      }[];
      readonly point_weights: readonly { readonly z_m: number; readonly weight_N: number }[];
    };
    readonly guy_levels: readonly {
      readonly z_m: number;
      readonly azimuths_deg: readonly number[];
      readonly anchor_radius_m: number;
      readonly anchor_elevations_m: readonly number[];
      readonly cable: {
        readonly area_m2: number;
        readonly E_Pa: number;
        readonly weight_N_per_m: number;
        readonly breaking_strength_N: number;
        readonly alpha_per_K: number;
      };
      readonly initial_tension_fraction: number;
      readonly guy_wind_N_per_m: number;
    }[];
    readonly loads: {
      readonly wind_towards_azimuth_deg: number;
      readonly wind_line_load_N_per_m: readonly (readonly [number, number])[];
      readonly point_loads: readonly {
        readonly z_m: number;
        readonly wind_force_N: number;
        readonly weight_N: number;
      }[];
    };
    readonly temperature: { readonly delta_K: number; readonly mast_alpha_per_K: number };
  };
}

const radians = (degrees: number) => (degrees * Math.PI) / 180;

/** Piecewise linear through the points; at a repeated height the value of the side that z lies on. */
export const piecewise = (points: readonly (readonly [number, number])[]) => (z: number) => {
  for (let i = 1; i < points.length; i++) {
    const [z0, q0] = points[i - 1];
    const [z1, q1] = points[i];
    if (z <= z1 && z1 > z0) return q0 + ((q1 - q0) * (z - z0)) / (z1 - z0);
  }
  return points[points.length - 1][1];
};

/** The mast of a case on the project's own solver. */
export function guyedMastInput(c: GuyedMastCase, elementsPerSpan: number): MastInput {
  const { mast, guy_levels, loads } = c.input;
  return {
    base: mast.base,
    elementsPerSpan,
    segments: mast.segments.map((s) => ({
      from: s.z_from_m,
      to: s.z_to_m,
      ei: s.EI_N_m2,
      ea: s.EA_N,
      ga: s.GAs_N ?? Number.POSITIVE_INFINITY,
      weight: s.weight_N_per_m,
    })),
    pointWeights: [
      ...mast.point_weights.map((p) => ({ z: p.z_m, weight: p.weight_N, arm: 0 })),
      ...loads.point_loads.map((p) => ({ z: p.z_m, weight: p.weight_N, arm: 0 })),
    ],
    kinks: loads.wind_line_load_N_per_m.map(([z]) => z),
    levels: guy_levels.map((level) => ({
      z: level.z_m,
      anchors: level.azimuths_deg.map((azimuth, i) => ({
        x: level.anchor_radius_m * Math.cos(radians(azimuth)),
        y: level.anchor_radius_m * Math.sin(radians(azimuth)),
        z: level.anchor_elevations_m[i],
      })),
      ea: level.cable.area_m2 * level.cable.E_Pa,
      weight: level.cable.weight_N_per_m,
      tension: level.initial_tension_fraction * level.cable.breaking_strength_N,
    })),
  };
}

export function guyedMastLoad(c: GuyedMastCase, input: MastInput): LoadCase {
  const { loads, temperature, guy_levels } = c.input;
  const azimuth = radians(loads.wind_towards_azimuth_deg);
  const toward = [Math.cos(azimuth), Math.sin(azimuth)] as const;
  return {
    toward,
    line: piecewise(loads.wind_line_load_N_per_m),
    points: loads.point_loads.map((p) => ({ z: p.z_m, force: p.wind_force_N, moment: 0 })),
    guyWind: guy_levels.map((level) => level.guy_wind_N_per_m),
    planar: mirrored(input, toward),
    guyStretch: guy_levels.map((level) => 1 + level.cable.alpha_per_K * temperature.delta_K),
    mastStrain: temperature.mast_alpha_per_K * temperature.delta_K,
  };
}

/** Is every guy matched by one that mirrors it in the vertical plane of the wind? */
export function mirrored(input: MastInput, [cx, cy]: readonly [number, number]): boolean {
  return input.levels.every((level) => {
    const turned = level.anchors.map((a) => ({ x: cx * a.x + cy * a.y, y: -cy * a.x + cx * a.y, z: a.z }));
    const size = Math.max(...turned.map((a) => Math.hypot(a.x, a.y)));
    const near = (a: number, b: number) => Math.abs(a - b) < 1e-9 * size;
    return turned.every((a) => turned.some((b) => near(a.x, b.x) && near(a.y, -b.y) && near(a.z, b.z)));
  });
}

/** Elements a span in the reference command: the audit's mesh, finer than the one mesh of search and verdict. */
export const REFERENCE_ELEMENTS = 12;

/**
 * Solves a reference mast and reports it in the blocks and with the names of its `output`.
 * A refusal says why: what the solver can't do is named, never guessed.
 */
export function guyedMastCase(c: GuyedMastCase, elementsPerSpan = REFERENCE_ELEMENTS) {
  const refuse = (error: string) => ({ id: c.id, kind: c.kind, error });
  const input = guyedMastInput(c, elementsPerSpan);
  const load = guyedMastLoad(c, input);
  const mast = new Mast(input);
  if (!mast.solve(load)) return refuse("no equilibrium: unstable under this load");
  const forces = new Forces(mast.elements);
  recoverForces(mast, forces);
  if (!mast.stable()) return refuse("the equilibrium found is unstable under this load");

  const [cx, cy] = load.toward;
  const per = mast.perNode;
  const world = (along: number, across: number) => ({
    x: cx * along - cy * across,
    y: cy * along + cx * across,
  });
  const at = (node: number) => {
    const along = mast.d[node * per + 1];
    const across = per === 5 ? mast.d[node * per + 3] : 0;
    return { ...world(along, across), z: mast.d[node * per], u: Math.hypot(along, across) };
  };
  const top = mast.nodes - 1;
  const levelNodes = input.levels.map((level) => mast.nodeAt(level.z));
  const below = (node: number) => 3 * (node - 1) + 2;

  const guys = mast.guys.map((guy) => {
    const onMast = world(guy.state.fx, guy.state.fy);
    const onAnchor = world(guy.state.ax, guy.state.ay);
    return {
      level: guy.level + 1,
      guy: guy.anchor + 1,
      azimuth_deg: c.input.guy_levels[guy.level].azimuths_deg[guy.anchor],
      anchor_xyz_m: [guy.x, guy.y, guy.z],
      unstressed_length_ref_m: guy.length,
      tension_anchor_N: guy.state.tensionAnchor,
      tension_mast_N: guy.state.tensionMast,
      utilisation_of_breaking:
        Math.max(guy.state.tensionAnchor, guy.state.tensionMast) /
        c.input.guy_levels[guy.level].cable.breaking_strength_N,
      force_on_mast_N: [onMast.x, onMast.y, guy.state.fz],
      force_on_anchor_N: [onAnchor.x, onAnchor.y, guy.state.az],
    };
  });
  const guy_levels = input.levels.map((level, i) => {
    const node = levelNodes[i];
    const u = at(node);
    const on = guys.filter((guy) => guy.level === i + 1);
    const sum = (axis: number) => on.reduce((total, guy) => total + guy.force_on_mast_N[axis], 0);
    const m = world(forces.along[below(node)], forces.across[below(node)]);
    return {
      level: i + 1,
      z_m: level.z,
      ux_m: u.x,
      uy_m: u.y,
      uz_m: u.z,
      u_horizontal_m: u.u,
      guy_force_on_mast_x_N: sum(0),
      guy_force_on_mast_y_N: sum(1),
      guy_force_on_mast_z_N: sum(2),
      M_xz_Nm: m.x,
      M_yz_Nm: m.y,
      M_resultant_Nm: forces.moment[below(node)],
      axial_below_N: -forces.compression[below(node)],
      axial_above_N: node < top ? -forces.compression[below(node) + 1] : 0,
    };
  });
  // the turn of the section, which is what an antenna feels; the axis leans by the slope of shear more
  const slope = world(mast.d[top * per + 2], per === 5 ? mast.d[top * per + 4] : 0);
  const atTop = at(top);
  const bounds = [...new Set([0, ...input.levels.map((level) => level.z), mast.z[top]])];
  const spans = bounds.slice(1).map((to, i) => {
    const from = bounds[i];
    let worst = -1;
    let interior = -1;
    let shear = 0;
    let compression = 0;
    for (let s = 0; s < forces.count; s++) {
      if (mast.z[forces.element[s]] < from - 1e-9 || mast.z[forces.element[s] + 1] > to + 1e-9) continue;
      if (worst < 0 || forces.moment[s] > forces.moment[worst]) worst = s;
      const inside = forces.z[s] > from + 1e-6 && forces.z[s] < to - 1e-6;
      if (
        inside &&
        s % 3 === 1 &&
        forces.z[s] > mast.z[forces.element[s]] &&
        forces.z[s] < mast.z[forces.element[s] + 1]
      )
        if (interior < 0 || forces.moment[s] > forces.moment[interior]) interior = s;
      // cases state shear along the section; square to the axis, as bracing is judged, it is more by P/GA
      const ga = input.segments[mast.segment[forces.element[s]]].ga;
      shear = Math.max(shear, forces.shear[s] * (1 - forces.compression[s] / ga));
      compression = Math.max(compression, forces.compression[s]);
    }
    return {
      z_from_m: from,
      z_to_m: to,
      is_cantilever: i === bounds.length - 2 && !input.levels.some((level) => Math.abs(level.z - to) < 1e-9),
      max_M_resultant_Nm: forces.moment[worst],
      max_M_z_m: forces.z[worst],
      interior_peak_M_Nm: interior < 0 ? null : forces.moment[interior],
      interior_peak_z_m: interior < 0 ? null : forces.z[interior],
      max_shear_section_N: shear,
      max_compression_N: compression,
    };
  });
  const anchors = anchorResultants(guys);
  const shear = world(mast.baseReaction[1], per === 5 ? mast.baseReaction[3] : 0);
  const baseMoment = input.base === "fixed" ? world(forces.along[0], forces.across[0]) : { x: 0, y: 0 };
  let worst = 0;
  let compression = 0;
  for (let s = 0; s < forces.count; s++) {
    if (forces.moment[s] > forces.moment[worst]) worst = s;
    compression = Math.max(compression, forces.compression[s]);
  }
  const furthest = furthestFromPlumb(mast);
  return {
    id: c.id,
    kind: c.kind,
    computed: {
      guy_levels,
      top: {
        z_m: mast.z[top],
        ux_m: atTop.x,
        uy_m: atTop.y,
        uz_m: atTop.z,
        u_horizontal_m: atTop.u,
        slope_x_rad: slope.x,
        slope_y_rad: slope.y,
      },
      spans,
      guys,
      anchors,
      base: {
        compression_N: mast.baseReaction[0],
        shear_x_N: shear.x,
        shear_y_N: shear.y,
        shear_resultant_N: Math.hypot(shear.x, shear.y),
        M_xz_Nm: baseMoment.x,
        M_yz_Nm: baseMoment.y,
        moment_resultant_Nm: Math.hypot(baseMoment.x, baseMoment.y),
      },
      max: {
        M_resultant_Nm: forces.moment[worst],
        M_z_m: forces.z[worst],
        compression_N: compression,
        u_horizontal_m: furthest.u,
        u_z_m: furthest.z,
      },
      buckling_factor_linearised: mast.bucklingFactor(),
    },
  };
}

/** Looks inside every element by its shape functions: a peak between nodes would be missed by a part in a hundred. */
function furthestFromPlumb(mast: Mast): { u: number; z: number } {
  const per = mast.perNode;
  const n = new Float64Array(4);
  let furthest = { u: 0, z: 0 };
  for (let e = 0; e < mast.elements; e++)
    for (let k = 0; k <= SAMPLES; k++) {
      shape(k / SAMPLES, mast.length[e], mast.shear[e], n, 0);
      const inPlane = (plane: number) => {
        const low = e * per + 1 + 2 * plane;
        const [a, b, c, d] = [mast.d[low], mast.d[low + 1], mast.d[low + per], mast.d[low + per + 1]];
        return n[0] * a + n[1] * b + n[2] * c + n[3] * d;
      };
      const u = Math.hypot(inPlane(0), per === 5 ? inPlane(1) : 0);
      if (u > furthest.u) furthest = { u, z: mast.z[e] + (k / SAMPLES) * mast.length[e] };
    }
  return furthest;
}
const SAMPLES = 16;

interface GuyEnd {
  readonly level: number;
  readonly azimuth_deg: number;
  readonly anchor_xyz_m: readonly number[];
  readonly force_on_anchor_N: readonly number[];
}

/** Guys that meet at one anchor, added up. */
function anchorResultants(guys: readonly GuyEnd[]) {
  const groups = new Map<string, GuyEnd[]>();
  for (const guy of guys) {
    const key = guy.anchor_xyz_m.map((x) => Math.round(x * 1e6)).join(",");
    groups.set(key, [...(groups.get(key) ?? []), guy]);
  }
  return [...groups.values()].map((at) => {
    const force = [0, 1, 2].map((axis) => at.reduce((sum, guy) => sum + guy.force_on_anchor_N[axis], 0));
    const azimuth = radians(at[0].azimuth_deg);
    return {
      anchor_xyz_m: [...at[0].anchor_xyz_m],
      azimuth_deg: at[0].azimuth_deg,
      levels: at.map((guy) => guy.level),
      force_on_anchor_N: force,
      horizontal_N: Math.hypot(force[0], force[1]),
      uplift_N: force[2],
      radial_inward_N: -(force[0] * Math.cos(azimuth) + force[1] * Math.sin(azimuth)),
      resultant_N: Math.hypot(force[0], force[1], force[2]),
    };
  });
}

import { type CalculixModel, SEGMENTS } from "../../../src/report/reference/calculix-deck.ts";

/** What CalculiX says of a mast. */
export interface CalculixAnswer {
  /** Tension at the anchor and at the mast of each guy, N. */
  readonly tensionAnchor: readonly number[];
  readonly tensionMast: readonly number[];
  /** Height of every node as rigged, m. */
  readonly z: readonly number[];
  /** Displacement from where it stands when rigged, m: x, y, up. */
  readonly displacement: readonly (readonly number[])[];
  /** Resultant moment, N m, by statics of what stands above, in the shape that CalculiX found. */
  readonly moment: readonly number[];
  /** Reaction of the base, N. */
  readonly base: readonly number[];
}

/** Reads the .dat file that belongs to a deck. */
export function readAnswer(model: CalculixModel, dat: string): CalculixAnswer {
  const displacements = table(dat, "displacements");
  const reactions = table(dat, "forces");
  const row = (of: ReadonlyMap<number, readonly number[]>, node: number): readonly number[] => {
    const found = of.get(node);
    if (!found) throw new Error(`CalculiX printed nothing for node ${node}`);
    return found;
  };
  const place = model.mastNodes.map((node, i) => {
    const [x, y, z] = row(displacements, node);
    return [x, y, model.mastHeights[i] + z];
  });
  // RF is what elements bring to a node: the ground holds that less the load on the node itself
  const pulls = model.guys.map(({ anchorNode, load }) => {
    const held = row(reactions, anchorNode).map((rf, axis) => rf - (0.5 * load[axis]) / SEGMENTS);
    return { anchor: held, mast: load.map((component, axis) => component + held[axis]) };
  });
  const forces = model.loads.map((load) => [...load]);
  model.guys.forEach(({ node }, g) => {
    pulls[g].mast.forEach((component, axis) => {
      forces[node][axis] += component;
    });
  });
  // what pulls at the tip of an arm turns the mast there by as much as it stands off the axis
  const couples = model.loads.map(() => [0, 0]);
  model.guys.forEach(({ node, tip }, g) => {
    if (!tip) return;
    const moved = row(displacements, tip.node);
    const [x, y, z] = tip.at.map((from, axis) => from + moved[axis] - place[node][axis]);
    const [fx, fy, fz] = pulls[g].mast;
    couples[node][0] += fx * z - fz * x;
    couples[node][1] += fy * z - fz * y;
  });
  const moment = place.map((at, i) => {
    // at a level with arms the moment jumps: it is that under it
    let [mx, my] = couples[i];
    for (let j = i + 1; j < place.length; j++) {
      const [x, y, z] = place[j].map((to, axis) => to - at[axis]);
      mx += forces[j][0] * z - forces[j][2] * x;
      my += forces[j][1] * z - forces[j][2] * y;
      mx += couples[j][0];
      my += couples[j][1];
    }
    return Math.hypot(mx, my);
  });
  return {
    tensionAnchor: pulls.map(({ anchor }) => Math.hypot(...anchor)),
    tensionMast: pulls.map(({ mast }) => Math.hypot(...mast)),
    z: model.riggedHeights,
    displacement: place.map(([x, y, z], i) => [x, y, z - model.riggedHeights[i]]),
    moment,
    base: row(reactions, 1).map((rf, axis) => rf - model.loads[0][axis]),
  };
}

/** The last table of a kind, by node. */
function table(dat: string, kind: "displacements" | "forces"): Map<number, number[]> {
  const rows = new Map<number, number[]>();
  let inside = false;
  for (const line of dat.split("\n")) {
    if (line.includes("(")) inside = line.trim().startsWith(kind);
    else if (inside) {
      const [node, ...values] = line.trim().split(/\s+/).map(Number);
      if (values.length === 3) rows.set(node, values);
    }
  }
  return rows;
}

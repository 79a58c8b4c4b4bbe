import type { Catalog } from "../model/catalog.ts";
import type { Study } from "../model/study.ts";
import { compile } from "../problem/compile.ts";
import type { AntennaModel, PackageModel, Problem } from "../problem/types.ts";

/** Effective area of a package, m2: what its antennas multiply the wind's pressure by. */
export const packageArea = (pack: PackageModel): number =>
  [...pack.antennas, ...pack.sides].reduce((sum, antenna) => sum + antenna.dragArea, 0);

/**
 * The study at another height and antenna area. The study's antennas grow or shrink in area and weight where they
 * stand, and keep their price: a cell says what the mast costs, and at the wish itself it is the answer.
 */
export function problemAt(study: Study, catalog: Catalog, height: number, area: number): Problem {
  const at = compile({ ...study, wishes: { ...study.wishes, height: [height] } }, catalog);
  return { ...at, packages: at.packages.map((pack) => scaled(pack, area)) };
}

function scaled(pack: PackageModel, area: number): PackageModel {
  const own = packageArea(pack);
  const factor = own > 0 ? area / own : 1;
  const grown = <A extends AntennaModel>(antenna: A): A => ({
    ...antenna,
    area: antenna.area * factor,
    dragArea: antenna.dragArea * factor,
    icedDragArea: antenna.icedDragArea && antenna.icedDragArea * factor,
    icedWeight: antenna.icedWeight && antenna.icedWeight * factor,
    weight: antenna.weight * factor,
  });
  return { ...pack, antennas: pack.antennas.map(grown), sides: pack.sides.map(grown) };
}

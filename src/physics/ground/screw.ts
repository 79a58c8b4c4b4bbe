/** Rating of an earth screw; a catalog row is one. */
export interface ScrewRating {
  /** Ultimate pull along the shaft by digging class of the soil, N. */
  readonly holds: Readonly<Record<string, number>>;
  /** Greatest angle between pull and shaft, degrees. */
  readonly offAxis: number;
  /** Share of the ultimate pull that it holds across the shaft at the surface. */
  readonly lateralShare: number;
}

export interface ScrewCapacity {
  /** N along the shaft; 0 in a class that the rating does not list. */
  readonly axial: number;
  /** N across the shaft. */
  readonly across: number;
  /** Degrees. */
  readonly offAxis: number;
}

/** What a screw holds in soil of this digging class, ultimate. */
export function screwCapacity(screw: ScrewRating, digging: string): ScrewCapacity {
  const axial = screw.holds[digging] ?? 0;
  return { axial, across: axial * screw.lateralShare, offAxis: screw.offAxis };
}

/**
 * CalculiX strains by Green and stresses by Piola: a bar drawn with length 1 and stretched to l carries
 * l (S + E (l2 - 1)/2). The three functions below give mast and guys the force and the stiffness of Hooke's law
 * where the mast is rigged: left alone, a compression of 0.1 % makes a bar 0.3 % too soft in bending too.
 */
export function pressed(compressionByStiffness: number): number {
  let l = 1;
  for (let i = 0; i < 20; i++) l -= (0.5 * l * (l * l - 1) + compressionByStiffness) / (1.5 * l * l - 0.5);
  return l;
}

/** How much stiffer a bar must be made for its tangent under a compression to be Hooke's. */
export function stifferBy(compressionByStiffness: number): number {
  let by = 1;
  for (let i = 0; i < 20; i++) by = 2 / (3 * pressed(compressionByStiffness / by) ** 2 - 1);
  return by;
}

/** Initial force and stiffness for a guy drawn with length `chord` whose rigged length is l times that. */
export function stretched(
  l: number,
  ea: number,
  chord: number,
  unstressed: number,
): { initial: number; stiffness: number } {
  const force = ea * ((l * chord) / unstressed - 1);
  const slope = (ea * chord) / unstressed;
  // l (S + E (l2 - 1)/2) = force and S + E (3 l2 - 1)/2 = slope
  const stiffness = (slope - force / l) / (l * l);
  return { initial: force / l - 0.5 * stiffness * (l * l - 1), stiffness };
}

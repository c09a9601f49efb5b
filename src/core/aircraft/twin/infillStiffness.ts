import type { Pattern } from '../../model/settings.ts'

/*
 * Stiffness of infill as a share of the solid plastic's, f being the share of the room it fills. Thin-wall limits: Gibson
 * and Ashby, Cellular Solids, 2nd ed. 1997 (derivable; the limits are recalled, no measured exponents were found in
 * readable text for printed infill).
 */

/** Across the layers, up through prismatic infill: the walls carry by their area alone. */
export function infillStiffnessUp(share: number): number {
  return within(share)
}

/**
 * Along a beam that lies in the layer plane, walls of a grid taken as running along it. One-direction lines alternate, so
 * half the layers carry. Gyroid is taken as an open-cell foam, f² (it lies between f^1.5 and f²).
 *
 * The limits hold for open infill and would make a full room half as stiff as plastic or stiffer than it: the solid end
 * is blended in with f⁶ (ours), which is nothing at 20 % and right at 100 %, never above f.
 */
export function infillStiffnessAlong(pattern: Pattern, share: number): number {
  const f = within(share)
  const sparse = thinWallLimit(pattern, f)
  const solid = f ** 6
  return Math.min(f, sparse * (1 - solid) + solid)
}

function thinWallLimit(pattern: Pattern, f: number): number {
  switch (pattern) {
    case 'lines':
    case 'grid':
      return f / 2
    case 'triangles':
      return f / 3
    case 'honeycomb':
      return 1.5 * f ** 3
    case 'gyroid':
      return f ** 2
  }
}

const within = (share: number): number => Math.min(1, Math.max(0, share))

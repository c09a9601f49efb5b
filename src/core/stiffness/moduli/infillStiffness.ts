import type { Pattern } from '../../model/settings.ts'

/*
 * Stiffness of infill as a share of the solid plastic's, f being the share of the room it fills.
 * Thin-wall limits: Gibson and Ashby, Cellular Solids, 2nd ed. 1997 (derivable; the limits are
 * recalled, no measured exponents were found in readable text for printed infill). No pattern
 * passes what theory allows it: Z. Hashin, S. Shtrikman, Journal of the Mechanics and Physics of
 * Solids 11, 1963.
 */

/**
 * Across the layers: the walls of prismatic infill carry by their area alone. Lines that turn from
 * layer to layer stand on each other where they cross, on f² of the plane; gyroid is a foam.
 */
export function infillStiffnessUp(pattern: Pattern, share: number): number {
  const f = within(share)
  return pattern === 'lines' || pattern === 'gyroid' ? f ** 2 : f
}

/** Most that infill alike in all directions of its plane can reach. */
export function planeBound(share: number): number {
  return share / (3 - 2 * share)
}

/**
 * Along a beam that lies in the layer plane. `angleDeg` is the beam's to the infill lines; only
 * grid and lines, whose directions cross at right angles, depend on it: along a line they pull,
 * half-way between they bend. One-direction lines alternate from layer to layer and hold each other
 * like a grid. Triangles reach f/3 and bend little; honeycomb bends. Gyroid is taken as an
 * open-cell foam, f² (it lies between f^1.5 and f²), which stays below the bound in space, f/(2 −
 * f) at a Poisson's ratio of 0.35.
 */
export function infillStiffnessAlong(pattern: Pattern, share: number, angleDeg = 0): number {
  const f = within(share)
  if (f === 0 || f === 1) return f
  switch (pattern) {
    case 'lines':
    case 'grid':
      return crossed(f, angleDeg)
    case 'triangles':
      return toSolid(f / 3, f)
    case 'honeycomb':
      return bent(1.5 * f ** 3, f)
    case 'gyroid':
      return f ** 2
  }
}

/**
 * A sheet of two like directions at right angles, turned: its compliance goes with sin² of twice
 * the angle (exact).
 */
function crossed(f: number, angleDeg: number): number {
  const alongLine = toSolid(f / 2, f)
  const between = bent(f ** 3 / 4, f)
  const sine = Math.sin((2 * angleDeg * Math.PI) / 180) ** 2
  return 1 / ((1 - sine) / alongLine + sine / between)
}

/**
 * Walls that pull: the solid end is blended in with f⁶ (ours), which is nothing at 20 % and right
 * at 100 %.
 */
export function toSolid(thinWalls: number, f: number): number {
  return thinWalls * (1 - f ** 6) + f ** 6
}

/**
 * Walls that bend: from their thin-wall limit over to the bound of the plane, never past it (the
 * cubes are ours).
 */
function bent(thinWalls: number, f: number): number {
  const bound = planeBound(f)
  return bound * (1 + (1 - f ** 3) * (bound / thinWalls) ** 3) ** (-1 / 3)
}

const within = (share: number): number => Math.min(1, Math.max(0, share))

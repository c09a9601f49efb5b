/**
 * Stiffness of an orthotropic material about the grid's own axes, MPa: stress = c · strain for
 * stretches along x, y, z, and g for shear (engineering strain) in the planes xy, xz and yz.
 */
export interface Elastic {
  readonly c11: number
  readonly c22: number
  readonly c33: number
  readonly c12: number
  readonly c13: number
  readonly c23: number
  readonly g12: number
  readonly g13: number
  readonly g23: number
}

/**
 * What tests of bars give: Young's moduli along x, y, z, MPa, and how much a pull along the first
 * axis narrows the second.
 */
export interface EngineeringModuli {
  readonly e1: number
  readonly e2: number
  readonly e3: number
  readonly nu12: number
  readonly nu13: number
  readonly nu23: number
  readonly g12: number
  readonly g13: number
  readonly g23: number
}

/**
 * The compliance of those moduli, inverted (S. G. Lekhnitskii, Theory of Elasticity of an
 * Anisotropic Body, 1963).
 */
export function elasticOf(moduli: EngineeringModuli): Elastic {
  const { e1, e2, e3, nu12, nu13, nu23, g12, g13, g23 } = moduli
  const [s11, s22, s33] = [1 / e1, 1 / e2, 1 / e3]
  const [s12, s13, s23] = [-nu12 / e1, -nu13 / e1, -nu23 / e2]
  const c11 = s22 * s33 - s23 * s23
  const c12 = s13 * s23 - s12 * s33
  const c13 = s12 * s23 - s13 * s22
  const determinant = s11 * c11 + s12 * c12 + s13 * c13
  return {
    c11: c11 / determinant,
    c22: (s11 * s33 - s13 * s13) / determinant,
    c33: (s11 * s22 - s12 * s12) / determinant,
    c12: c12 / determinant,
    c13: c13 / determinant,
    c23: (s12 * s13 - s11 * s23) / determinant,
    g12,
    g13,
    g23,
  }
}

/** The same in every direction: Young's modulus in MPa and Poisson's ratio below 0.5. */
export function isotropic(youngsMPa: number, poisson: number): Elastic {
  const shear = youngsMPa / (2 * (1 + poisson))
  return elasticOf({
    e1: youngsMPa,
    e2: youngsMPa,
    e3: youngsMPa,
    nu12: poisson,
    nu13: poisson,
    nu23: poisson,
    g12: shear,
    g13: shear,
    g23: shear,
  })
}

/** What a cell carries that holds shares of several materials side by side, all stretched alike. */
export function mixElastic(
  parts: readonly (readonly [share: number, elastic: Elastic])[],
): Elastic {
  const sum = (pick: (elastic: Elastic) => number): number =>
    parts.reduce((total, [share, elastic]) => total + share * pick(elastic), 0)
  return {
    c11: sum(({ c11 }) => c11),
    c22: sum(({ c22 }) => c22),
    c33: sum(({ c33 }) => c33),
    c12: sum(({ c12 }) => c12),
    c13: sum(({ c13 }) => c13),
    c23: sum(({ c23 }) => c23),
    g12: sum(({ g12 }) => g12),
    g13: sum(({ g13 }) => g13),
    g23: sum(({ g23 }) => g23),
  }
}

import type { Field, Level } from './types.ts'
import { MODE_STRIDE } from './types.ts'

/**
 * Forces that hold a level's nodes where `moves` puts them: the stiffness matrix times the moves,
 * without ever making the matrix.
 *
 * The element is the eight-node box with incompatible modes (E. L. Wilson, R. L. Taylor, W. P.
 * Doherty, J. Ghaboussi, Incompatible displacement models, 1973), nine of them condensed. A box of
 * orthotropic plastic along its own axes is like its mirror images, so its 24 × 24 matrix falls
 * apart under sums and differences of its corners (Walsh–Hadamard): three normal strains, three
 * bendings of two numbers, three shears, a twist of three, three hourglasses. Along a run of cells
 * the sums across x are taken once for both cells that share them.
 */
export function applyLevel(level: Level, moves: Field, forces: Field): void {
  forces.fill(0)
  const { linesMm, runs, rowOf, table } = level
  const [xs, ys, zs] = linesMm
  let cell = 0
  for (let run = 0; run < runs.length; run += 8) {
    const x0 = runs[run]!
    const y0 = runs[run + 1]!
    const z0 = runs[run + 2]!
    const count = runs[run + 3]!
    let p0 = 3 * runs[run + 4]!
    let p1 = 3 * runs[run + 5]!
    let p2 = 3 * runs[run + 6]!
    let p3 = 3 * runs[run + 7]!
    const dy = ys[y0 + 1]! - ys[y0]!
    const dz = zs[z0 + 1]! - zs[z0]!
    const ay = 2 / dy
    const az = 2 / dz
    // Sums over the four nodes of a face across x: plain, by y, by z, by both.
    let a = moves[p0]!
    let b = moves[p1]!
    let c = moves[p2]!
    let d = moves[p3]!
    let uo = a + b + c + d
    let uy = b + d - a - c
    let uz = c + d - a - b
    let ut = a + d - b - c
    a = moves[p0 + 1]!
    b = moves[p1 + 1]!
    c = moves[p2 + 1]!
    d = moves[p3 + 1]!
    let vo = a + b + c + d
    let vy = b + d - a - c
    let vz = c + d - a - b
    let vt = a + d - b - c
    a = moves[p0 + 2]!
    b = moves[p1 + 2]!
    c = moves[p2 + 2]!
    d = moves[p3 + 2]!
    let wo = a + b + c + d
    let wy = b + d - a - c
    let wz = c + d - a - b
    let wt = a + d - b - c
    // Forces on the face that are known from the cell before it.
    let fuo = 0
    let fuy = 0
    let fuz = 0
    let fut = 0
    let fvo = 0
    let fvy = 0
    let fvz = 0
    let fvt = 0
    let fwo = 0
    let fwy = 0
    let fwz = 0
    let fwt = 0
    let left = xs[x0]!
    for (let i = 0; i < count; i++) {
      const right = xs[x0 + i + 1]!
      const dx = right - left
      left = right
      const q0 = p0 + 3
      const q1 = p1 + 3
      const q2 = p2 + 3
      const q3 = p3 + 3
      a = moves[q0]!
      b = moves[q1]!
      c = moves[q2]!
      d = moves[q3]!
      const nuo = a + b + c + d
      const nuy = b + d - a - c
      const nuz = c + d - a - b
      const nut = a + d - b - c
      a = moves[q0 + 1]!
      b = moves[q1 + 1]!
      c = moves[q2 + 1]!
      d = moves[q3 + 1]!
      const nvo = a + b + c + d
      const nvy = b + d - a - c
      const nvz = c + d - a - b
      const nvt = a + d - b - c
      a = moves[q0 + 2]!
      b = moves[q1 + 2]!
      c = moves[q2 + 2]!
      d = moves[q3 + 2]!
      const nwo = a + b + c + d
      const nwy = b + d - a - c
      const nwz = c + d - a - b
      const nwt = a + d - b - c

      const m = rowOf[cell++]! * MODE_STRIDE
      const ax = 2 / dx
      const v = (dx * dy * dz) / 64
      const v3 = v / 3
      const v9 = v / 9
      const c11 = table[m]!
      const c22 = table[m + 1]!
      const c33 = table[m + 2]!
      const c12 = table[m + 3]!
      const c13 = table[m + 4]!
      const c23 = table[m + 5]!
      const g12 = table[m + 6]!
      const g13 = table[m + 7]!
      const g23 = table[m + 8]!

      // Even: alike on both faces; odd: opposite. Normal strains.
      const e1 = ax * (nuo - uo)
      const e2 = ay * (nvy + vy)
      const e3 = az * (nwz + wz)
      const ouo = v * ax * (c11 * e1 + c12 * e2 + c13 * e3)
      const evy = v * ay * (c12 * e1 + c22 * e2 + c23 * e3)
      const ewz = v * az * (c13 * e1 + c23 * e2 + c33 * e3)
      // Shears.
      let t = v * g12 * (ay * (nuy + uy) + ax * (nvo - vo))
      const euy = ay * t
      const ovo = ax * t
      t = v * g13 * (az * (nuz + uz) + ax * (nwo - wo))
      const euz = az * t
      const owo = ax * t
      t = v * g23 * (az * (nvz + vz) + ay * (nwy + wy))
      const evz = az * t
      const ewy = ay * t
      // Bendings: strains that change along x, along y, along z.
      let p = ay * (nvy - vy)
      let q = az * (nwz - wz)
      const ovy = v3 * ay * (table[m + 9]! * p + table[m + 10]! * q)
      const owz = v3 * az * (table[m + 10]! * p + table[m + 11]! * q)
      p = ax * (nuy - uy)
      q = az * (nwt + wt)
      const ouy = v3 * ax * (table[m + 12]! * p + table[m + 13]! * q)
      const ewt = v3 * az * (table[m + 13]! * p + table[m + 14]! * q)
      p = ax * (nuz - uz)
      q = ay * (nvt + vt)
      const ouz = v3 * ax * (table[m + 15]! * p + table[m + 16]! * q)
      const evt = v3 * ay * (table[m + 16]! * p + table[m + 17]! * q)
      // Twist.
      const tu = nut + ut
      const tv = nvz - vz
      const tw = nwy - wy
      const s1 = v3 * g12 * (ay * tu + ax * tv)
      const s2 = v3 * g23 * (az * tv + ay * tw)
      const s3 = v3 * g13 * (az * tu + ax * tw)
      const eut = ay * s1 + az * s3
      const ovz = ax * s1 + az * s2
      const owy = ay * s2 + ax * s3
      // Hourglasses.
      const xx = ax * ax
      const yy = ay * ay
      const zz = az * az
      const out = v9 * (c11 * xx + g12 * yy + g13 * zz) * (nut - ut)
      const ovt = v9 * (g12 * xx + c22 * yy + g23 * zz) * (nvt - vt)
      const owt = v9 * (g13 * xx + g23 * yy + c33 * zz) * (nwt - wt)

      // The left face is done with.
      fuo -= ouo
      fuy += euy - ouy
      fuz += euz - ouz
      fut += eut - out
      fvo -= ovo
      fvy += evy - ovy
      fvz += evz - ovz
      fvt += evt - ovt
      fwo -= owo
      fwy += ewy - owy
      fwz += ewz - owz
      fwt += ewt - owt
      forces[p0]! += fuo - fuy - fuz + fut
      forces[p1]! += fuo + fuy - fuz - fut
      forces[p2]! += fuo - fuy + fuz - fut
      forces[p3]! += fuo + fuy + fuz + fut
      forces[p0 + 1]! += fvo - fvy - fvz + fvt
      forces[p1 + 1]! += fvo + fvy - fvz - fvt
      forces[p2 + 1]! += fvo - fvy + fvz - fvt
      forces[p3 + 1]! += fvo + fvy + fvz + fvt
      forces[p0 + 2]! += fwo - fwy - fwz + fwt
      forces[p1 + 2]! += fwo + fwy - fwz - fwt
      forces[p2 + 2]! += fwo - fwy + fwz - fwt
      forces[p3 + 2]! += fwo + fwy + fwz + fwt
      fuo = ouo
      fuy = euy + ouy
      fuz = euz + ouz
      fut = eut + out
      fvo = ovo
      fvy = evy + ovy
      fvz = evz + ovz
      fvt = evt + ovt
      fwo = owo
      fwy = ewy + owy
      fwz = ewz + owz
      fwt = ewt + owt

      uo = nuo
      uy = nuy
      uz = nuz
      ut = nut
      vo = nvo
      vy = nvy
      vz = nvz
      vt = nvt
      wo = nwo
      wy = nwy
      wz = nwz
      wt = nwt
      p0 = q0
      p1 = q1
      p2 = q2
      p3 = q3
    }
    forces[p0]! += fuo - fuy - fuz + fut
    forces[p1]! += fuo + fuy - fuz - fut
    forces[p2]! += fuo - fuy + fuz - fut
    forces[p3]! += fuo + fuy + fuz + fut
    forces[p0 + 1]! += fvo - fvy - fvz + fvt
    forces[p1 + 1]! += fvo + fvy - fvz - fvt
    forces[p2 + 1]! += fvo - fvy + fvz - fvt
    forces[p3 + 1]! += fvo + fvy + fvz + fvt
    forces[p0 + 2]! += fwo - fwy - fwz + fwt
    forces[p1 + 2]! += fwo + fwy - fwz - fwt
    forces[p2 + 2]! += fwo - fwy + fwz - fwt
    forces[p3 + 2]! += fwo + fwy + fwz + fwt
  }
}

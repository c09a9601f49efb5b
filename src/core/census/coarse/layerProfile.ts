import type { Mesh } from '../../model/mesh.ts'
import type { LayerPlan } from '../cut/layerPlan.ts'
import { firstCutAbove } from '../cut/planeCutter.ts'

/** What is known of every layer without joining or scanning any; bottom first. */
export interface LayerProfile {
  /**
   * One a layer, by Green's theorem over its loose segments: exact where bodies neither overlap nor
   * gape, and no more than the box around the part. mm²
   */
  readonly areaMm2: Float64Array
  /** One a layer: summed length of its segments. mm */
  readonly lengthMm: Float64Array
  /**
   * Faces that look up, and down, as seen from above; entry i between the cuts i − 1 and i, one
   * entry more than layers. mm²
   */
  readonly upMm2: Float64Array
  readonly downMm2: Float64Array
}

/**
 * Profile of a placed mesh. Between the heights of its corners a triangle's segment grows evenly,
 * and what it adds to the area is a square in the height; so a triangle takes as long whether it
 * meets one layer or a thousand.
 */
export function profileLayers({ positions, indices }: Mesh, plan: LayerPlan): LayerProfile {
  const { count, cutMm } = plan
  const pitchMm = count > 1 ? cutMm[count - 1]! - cutMm[count - 2]! : 0
  const area = createSums(cutMm)
  const length = createSums(cutMm)
  const facing = { up: createSums(cutMm), down: createSums(cutMm) }
  const low = [Infinity, Infinity]
  const high = [-Infinity, -Infinity]
  const gaps = { up: new Float64Array(count + 1), down: new Float64Array(count + 1) }
  for (let t = 0; t < indices.length; t += 3) {
    // Corners by height; every swap turns the triangle over.
    let a = 3 * indices[t]!
    let b = 3 * indices[t + 1]!
    let c = 3 * indices[t + 2]!
    let turn = 1
    if (positions[a + 2]! > positions[b + 2]!) [a, b, turn] = [b, a, -turn]
    if (positions[b + 2]! > positions[c + 2]!) [b, c, turn] = [c, b, -turn]
    if (positions[a + 2]! > positions[b + 2]!) [a, b, turn] = [b, a, -turn]
    const ax = positions[a]!
    const ay = positions[a + 1]!
    const az = positions[a + 2]!
    const bx = positions[b]!
    const by = positions[b + 1]!
    const bz = positions[b + 2]!
    const cx = positions[c]!
    const cy = positions[c + 1]!
    const cz = positions[c + 2]!
    low[0] = Math.min(low[0]!, ax, bx, cx)
    low[1] = Math.min(low[1]!, ay, by, cy)
    high[0] = Math.max(high[0]!, ax, bx, cx)
    high[1] = Math.max(high[1]!, ay, by, cy)
    const seenMm2 = (turn * ((bx - ax) * (cy - ay) - (by - ay) * (cx - ax))) / 2
    const side = seenMm2 > 0 ? 'up' : 'down'
    const first = firstCutAbove(plan, az)
    const past = firstCutAbove(plan, cz)
    if (first === past) {
      gaps[side][first]! += Math.abs(seenMm2)
      continue
    }
    // Through a to c, at height bz + τ: l + τ·long.
    const longX = (cx - ax) / (cz - az)
    const longY = (cy - ay) / (cz - az)
    const lx = ax + longX * (bz - az)
    const ly = ay + longY * (bz - az)
    const wideMm = Math.sqrt((bx - lx) ** 2 + (by - ly) ** 2)
    const wayMm = (wideMm * (cz - az)) / 2
    const stepMm = wayMm > 0 ? (Math.abs(seenMm2) / wayMm) * pitchMm : 0
    const middle = firstCutAbove(plan, bz)
    for (let half = 0; half < 2; half++) {
      const from = half === 0 ? first : middle
      const to = half === 0 ? middle : past
      if (from >= to) continue
      // Along the two shorter sides, at the same height: b + τ·short.
      const riseMm = half === 0 ? bz - az : cz - bz
      const shortX = (half === 0 ? bx - ax : cx - bx) / riseMm
      const shortY = (half === 0 ? by - ay : cy - by) / riseMm
      const sense = turn / 2
      area.add(
        from,
        to,
        bz,
        sense * (lx * by - ly * bx),
        sense * (lx * shortY - ly * shortX + longX * by - longY * bx),
        sense * (longX * shortY - longY * shortX),
      )
      const perMm = half === 0 ? wideMm / riseMm : -wideMm / riseMm
      length.add(from, to, bz, wideMm, perMm, 0)
      if (stepMm > 0) facing[side].add(from, to, bz, wideMm * stepMm, perMm * stepMm, 0)
    }
  }
  for (const side of ['up', 'down'] as const) {
    facing[side].finish().forEach((mm2, layer) => {
      gaps[side][layer]! += mm2 / 2
      gaps[side][layer + 1]! += mm2 / 2
    })
  }
  const boxMm2 = (high[0]! - low[0]!) * (high[1]! - low[1]!)
  return {
    areaMm2: area.finish().map((mm2) => Math.min(Math.abs(mm2), boxMm2)),
    lengthMm: length.finish(),
    upMm2: gaps.up,
    downMm2: gaps.down,
  }
}

/**
 * What meets no more cuts than this is added to each; more than that is mild enough for sums of
 * polynomials to stay exact.
 */
const FEW = 6

/** Adds up polynomials of the height over stretches of layers. */
function createSums(cutMm: Float64Array): {
  /**
   * k0 + k1·τ + k2·τ² on the layers `from` up to `to`, where τ is the cut's height above `atMm`.
   */
  add(from: number, to: number, atMm: number, k0: number, k1: number, k2: number): void
  finish(): Float64Array
} {
  const count = cutMm.length
  const middleMm = count > 0 ? (cutMm[0]! + cutMm[count - 1]!) / 2 : 0
  const sums = new Float64Array(count)
  const steps = [0, 1, 2].map(() => new Float64Array(count + 1)) as [
    Float64Array,
    Float64Array,
    Float64Array,
  ]
  const [step0, step1, step2] = steps
  return {
    add(from, to, atMm, k0, k1, k2) {
      if (to - from <= FEW) {
        for (let i = from; i < to; i++) {
          const up = cutMm[i]! - atMm
          sums[i]! += k0 + up * (k1 + up * k2)
        }
        return
      }
      const shift = middleMm - atMm
      const c0 = k0 + shift * (k1 + shift * k2)
      const c1 = k1 + 2 * shift * k2
      step0[from]! += c0
      step0[to]! -= c0
      step1[from]! += c1
      step1[to]! -= c1
      step2[from]! += k2
      step2[to]! -= k2
    },
    finish() {
      let c0 = 0
      let c1 = 0
      let c2 = 0
      for (let i = 0; i < count; i++) {
        c0 += step0[i]!
        c1 += step1[i]!
        c2 += step2[i]!
        const up = cutMm[i]! - middleMm
        sums[i]! += c0 + up * (c1 + up * c2)
      }
      return sums
    },
  }
}

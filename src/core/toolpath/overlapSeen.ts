import type { LineKind } from '../model/toolpath.ts'
import type { LayerLines, LookAtLayer } from './layerLines.ts'
import { beside, isClosed } from './layerLines.ts'
import { planLength } from './layerMoves.ts'

/** Fill begins no further from the middle of the innermost wall line, in widths of that line. */
const BESIDE = 3
/**
 * An innermost line has fill beside it along so much of its length (a look along skin lines may
 * pass between two of them), any other along less than this. What is in between is neither.
 */
const INNERMOST = 0.3
const OTHERS = 0.05
/**
 * Skins that reach further, in widths of the wall's line, are strands; that do not reach it leave
 * rooms.
 */
const FURTHEST = 0.6
/** Of what is not wall, infill and gap lines are less than this in a solid layer. */
const MOST_OTHER = 0.08
/** Layers, and mm of edge, that are enough to tell. */
const ENOUGH_LAYERS = 3
const ENOUGH_MM = 200
/** Loops are looked at so far apart. mm */
const SAMPLE_MM = 2

/** How far skins reach over the innermost wall line, layer by layer. */
export interface OverlapSeen {
  readonly add: LookAtLayer
  /** mm by the widths that were given; null where no layers are solid inside all their walls. */
  readonly overlapMm: () => number | null
}

/**
 * What skins hold beyond the area that the innermost wall lines enclose, over the length of those
 * lines' inner edge: in layers that are skin all through, the mean of their middle half, for lines
 * of every second layer end on other edges. The area is exact, from the loops' corners.
 */
export function overlapSeen(): OverlapSeen {
  const seen: { overlapMm: number; edgeMm: number }[] = []
  return {
    add(layer, kinds, widths) {
      const one = overlapOf(layer, kinds, widths)
      if (one) seen.push(one)
    },
    overlapMm() {
      const edgeMm = seen.reduce((sum, one) => sum + one.edgeMm, 0)
      if (seen.length < ENOUGH_LAYERS || edgeMm < ENOUGH_MM) return null
      let [from, sum] = [0, 0]
      for (const one of seen.toSorted((a, b) => a.overlapMm - b.overlapMm)) {
        const to = from + one.edgeMm
        const middleMm = Math.min(to, 0.75 * edgeMm) - Math.max(from, 0.25 * edgeMm)
        sum += Math.max(0, middleMm) * one.overlapMm
        from = to
      }
      return sum / (edgeMm / 2)
    },
  }
}

function overlapOf(
  layer: LayerLines,
  kinds: readonly (LineKind | null)[],
  widths: Float64Array,
): { overlapMm: number; edgeMm: number } | null {
  const { moves, lines, runs, runOf } = layer
  let skinMm2 = 0
  let otherMm2 = 0
  for (const move of lines) {
    if (isClosed(layer, move)) continue
    const mm2 = widths[move]! * planLength(moves, move)
    if (kinds[move] === 'skin') skinMm2 += mm2
    else otherMm2 += mm2
  }
  if (skinMm2 <= 0 || otherMm2 > MOST_OTHER * skinMm2) return null
  const filled = new Float64Array(runs.length)
  const looked = new Float64Array(runs.length)
  for (const move of lines) {
    if (!isClosed(layer, move)) continue
    const length = planLength(moves, move)
    const samples = Math.max(1, Math.round(length / SAMPLE_MM))
    for (let k = 0; k < samples; k++) {
      looked[runOf[move]!]! += length / samples
      if (hasFill(layer, move, (k + 0.5) / samples, widths)) {
        filled[runOf[move]!]! += length / samples
      }
    }
  }
  const loops: Loop[] = []
  for (const [r, run] of runs.entries()) {
    if (!run.closed) continue
    const share = filled[r]! / looked[r]!
    if (share > OTHERS && share < INNERMOST) return null
    if (share >= INNERMOST) loops.push(loopOf(layer, r, widths))
  }
  let [areaMm2, edgeMm] = [0, 0]
  for (const loop of loops) {
    const depth = loops.filter((other) => other !== loop && contains(other, loop)).length
    const sign = depth % 2 === 0 ? 1 : -1
    const half = loop.widthMm / 2
    // The edge lies half a line further in; round a hole further out.
    areaMm2 += sign * loop.areaMm2 - half * loop.lengthMm + sign * Math.PI * half * half
    edgeMm += loop.lengthMm - sign * 2 * Math.PI * half
  }
  if (edgeMm <= 0 || areaMm2 <= 0) return null
  const overlapMm = (skinMm2 + otherMm2 - areaMm2) / edgeMm
  return overlapMm < 0 || overlapMm > FURTHEST * loops[0]!.widthMm ? null : { overlapMm, edgeMm }
}

function hasFill(layer: LayerLines, move: number, share: number, widths: Float64Array): boolean {
  return ([1, -1] as const).some((side) => {
    const [next] = beside(layer, move, share, side, BESIDE * widths[move]!)
    return next !== undefined && !isClosed(layer, next.move)
  })
}

interface Loop {
  /** x and y by turns. mm */
  readonly points: readonly number[]
  readonly areaMm2: number
  readonly lengthMm: number
  readonly widthMm: number
}

function loopOf({ moves, runs }: LayerLines, r: number, widths: Float64Array): Loop {
  const { first, end, lengthMm } = runs[r]!
  const points: number[] = []
  let mm2 = 0
  for (let i = first; i < end; i++) {
    points.push(moves.fromX[i]!, moves.fromY[i]!)
    mm2 += widths[i]! * planLength(moves, i)
  }
  // A loop that stops short of its start is as long as if it did not.
  const last = end - 1
  const shortMm = Math.hypot(
    moves.toX[last]! - moves.fromX[first]!,
    moves.toY[last]! - moves.fromY[first]!,
  )
  if (shortMm > 0) points.push(moves.toX[last]!, moves.toY[last]!)
  let twice = 0
  const n = points.length
  for (let i = 0; i < n; i += 2) {
    twice += points[i]! * points[(i + 3) % n]! - points[(i + 2) % n]! * points[i + 1]!
  }
  return {
    points,
    areaMm2: Math.abs(twice) / 2,
    lengthMm: lengthMm + shortMm,
    widthMm: mm2 / lengthMm,
  }
}

/** Whether a loop goes round the first point of another. */
function contains({ points }: Loop, { points: [x, y] }: Loop): boolean {
  let inside = false
  const n = points.length
  for (let i = 0; i < n; i += 2) {
    const [ax, ay] = [points[i]!, points[i + 1]!]
    const [bx, by] = [points[(i + 2) % n]!, points[(i + 3) % n]!]
    const [fromAbove, toAbove] = [ay > y!, by > y!]
    if (fromAbove === toAbove) continue
    if (x! < ax + ((y! - ay) / (by - ay)) * (bx - ax)) inside = !inside
  }
  return inside
}

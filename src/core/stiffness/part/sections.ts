import type { Vec3 } from '../../model/mesh.ts'
import type { Level } from '../solid/types.ts'
import { readShare, type CellShare } from './cellShares.ts'
import type { PartCells } from './types.ts'

/** Area, mm², with its first and second moment, mm³ and mm⁴, about the grid's zero across. */
type AreaMoments = readonly [areaMm2: number, firstMm3: number, secondMm4: number]

/** One slice of a part across its length. */
export interface SectionSlice {
  /** Its ends, from the end of what is held on; below zero where it is held. mm */
  readonly fromMm: number
  readonly toMm: number
  readonly depthMm: number
  /** Of walls and skins, then of infill rooms: outside all zones, then in each zone. */
  readonly parts: readonly AreaMoments[]
}

/**
 * A part as a beam: its sections along its length, before it is known of what plastic and how
 * sparse it lies. Some kilobytes, free to send: plastic, infill and load then cost nothing to
 * change.
 */
export interface PartSections {
  readonly kind: 'sections'
  /** Axes of the grid: along the part, and the one it is pushed along. */
  readonly along: 0 | 1 | 2
  readonly across: 0 | 1 | 2
  readonly turnDeg: number
  /** From the end of what is held to the middle of what is pushed. mm */
  readonly spanMm: number
  /** From the held end to the free one. */
  readonly slices: readonly SectionSlice[]
}

/** It is no beam, and why. */
export interface NoBeam {
  readonly kind: 'no'
  readonly why: string
}

/** A beam is at least so many times as long as it is deep; below, its supports decide (ours). */
const SLENDER = 6
/** Lever and load lie this near to lines of the grid (cosine). */
const ALONG = 0.97

/**
 * @param level of the same cells, with the nodes that are held and pushed.
 * @param direction of the load, in the grid's frame.
 */
export function sectionsOf(
  cells: PartCells,
  level: Level,
  hold: readonly number[],
  push: readonly number[],
  direction: Vec3,
): PartSections | NoBeam {
  const [from, to] = [middleOf(level, hold), middleOf(level, push)]
  const way = [0, 1, 2].map((k) => to[k]! - from[k]!)
  const along = axisOf(way)
  const across = axisOf(direction)
  if (along === null || across === null || along === across) {
    return { kind: 'no', why: 'it is not pushed straight across its length' }
  }
  const sense = way[along]! > 0 ? 1 : -1
  const lines = cells.linesMm[along]
  const heldTo = hold.reduce(
    (most, node) => Math.max(most, sense * lines[level.lineOf[3 * node + along]!]!),
    -Infinity,
  )
  const spanMm = sense * to[along]! - heldTo
  const slices = slicesOf(cells, along, across).map(({ low, high, ...slice }) => {
    const ends = [sense * low - heldTo, sense * high - heldTo]
    return { fromMm: Math.min(...ends), toMm: Math.max(...ends), ...slice }
  })
  if (sense < 0) slices.reverse()
  const deepest = slices.reduce(
    (most, { fromMm, toMm, depthMm }) =>
      toMm > 0 && fromMm < spanMm ? Math.max(most, depthMm) : most,
    0,
  )
  if (!(spanMm > SLENDER * deepest)) {
    return { kind: 'no', why: 'it is too short and deep for a beam' }
  }
  return { kind: 'sections', along, across, turnDeg: cells.turnDeg, spanMm, slices }
}

function slicesOf(cells: PartCells, along: number, across: number) {
  const { linesMm, rooms } = cells
  const size = linesMm.map((lines) => lines.length - 1)
  const third = 3 - along - across
  const slices = Array.from({ length: size[along]! }, (_, i) => ({
    low: linesMm[along]![i]!,
    high: linesMm[along]![i + 1]!,
    parts: Array.from({ length: rooms.length + 1 }, (): [number, number, number] => [0, 0, 0]),
    lowest: Infinity,
    highest: -Infinity,
  }))
  const share: CellShare = { solid: 0, room: 0, zone: 0 }
  const at = [0, 0, 0]
  const add = (into: [number, number, number], area: number, middle: number, high: number) => {
    into[0] += area
    into[1] += area * middle
    into[2] += area * (middle ** 2 + high ** 2 / 12)
  }
  for (let cell = 0; cell < cells.solid.length; cell++) {
    if (!readShare(cells, cell, share)) continue
    at[0] = cell % size[0]!
    at[1] = Math.floor(cell / size[0]!) % size[1]!
    at[2] = Math.floor(cell / (size[0]! * size[1]!))
    const [low, high] = [linesMm[across]![at[across]!]!, linesMm[across]![at[across]! + 1]!]
    const [left, right] = [linesMm[third]![at[third]!]!, linesMm[third]![at[third]! + 1]!]
    const area = (high - low) * (right - left)
    const middle = (low + high) / 2
    const into = slices[at[along]!]!
    add(into.parts[0]!, share.solid * area, middle, high - low)
    add(into.parts[1 + share.zone]!, share.room * area, middle, high - low)
    into.lowest = Math.min(into.lowest, low)
    into.highest = Math.max(into.highest, high)
  }
  return slices.map(({ lowest, highest, ...slice }) => ({
    ...slice,
    depthMm: Math.max(0, highest - lowest),
  }))
}

function axisOf(way: ArrayLike<number>): 0 | 1 | 2 | null {
  const length = Math.hypot(way[0]!, way[1]!, way[2]!)
  for (const k of [0, 1, 2] as const) if (Math.abs(way[k]!) > ALONG * length) return k
  return null
}

function middleOf({ linesMm, lineOf }: Level, nodes: readonly number[]): number[] {
  return [0, 1, 2].map(
    (k) => nodes.reduce((sum, node) => sum + linesMm[k]![lineOf[3 * node + k]!]!, 0) / nodes.length,
  )
}

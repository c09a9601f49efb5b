import type { CutLayer, Grids } from '../cut/cutLayer.ts'
import { insetOf } from '../cut/cutLayer.ts'
import { dropSmallPieces, measureBoundary } from './rooms.ts'
import { overlapsOf } from '../habits/overlap.ts'
import { layWalls } from '../habits/thinWalls.ts'
import { roomBetween } from '../habits/holdSkins.ts'
import type { Laying } from './laying.ts'
import { subtractRows } from '../rows/rowAlgebra.ts'
import type { RowSet } from '../rows/rowSet.ts'
import { rowLengthMm } from '../rows/rowSet.ts'
import type { ScanGrid } from '../rows/scanGrid.ts'

/** What one layer holds, in its own scan direction. Areas mm², lengths mm. */
export interface LayerAreas {
  /** The rows that skin and room are on. */
  readonly grid: ScanGrid
  /** Worked out when asked for: most layers are like one before and need no more than its area. */
  readonly skin: () => RowSet
  readonly room: RowSet
  /** What the walls enclose. */
  readonly inside: RowSet
  readonly areaMm2: number
  readonly wallMm2: number
  /** The part of it in gap lines. */
  readonly gapMm2: number
  readonly skinMm2: number
  readonly roomMm2: number
  readonly roomSeenMm: number
  readonly roomWalkMm: number
  readonly roomEdgeMm: number
  /** See `HabitVolumes`. */
  readonly heldMm2: number
  readonly overlapMm2: number
  readonly roomOverlapMm2: number
  readonly smallSolidMm2: number
  readonly smallSparseMm2: number
  readonly thinMm2: number
  readonly rooms: number
  readonly contours: number
  readonly islands: number
}

/**
 * Divides a layer into walls, skin and infill room.
 *
 * Skin is what lies inside the walls and is not covered by all T layers above and B below: covered
 * by their full areas, so that skins end under the walls of the next layer, not at their inner
 * edge, and form a ring around every inner step. `neighbours` are the T layers above and B below
 * that must cover a place for it to be room; null stands for air beyond the part's top or bottom.
 */
export function measureLayer(
  layer: CutLayer,
  neighbours: readonly (CutLayer | null)[],
  along: 0 | 1,
  laying: Laying,
  grids: Grids,
): LayerAreas {
  const grid = grids[along]
  const { pitchMm } = grid
  const { habits, wallMm } = laying
  const inside = insetOf(layer, along, wallMm, grids)
  const between = roomBetween(layer, neighbours, inside, along, laying, grids)
  const small = dropSmallPieces(between.room, pitchMm, habits.smallRoomMm2, SMALL_ROOMS_MM2)
  const { kept: room, pieces } = small
  const boundary = measureBoundary(room, pitchMm)
  const scale = layer.correction[along] * pitchMm
  const insideMm2 = rowLengthMm(inside) * scale
  const roomMm2 = rowLengthMm(room) * scale
  const walls = layWalls(layer, layer.areaMm2 - insideMm2, laying, grids)
  const overlap = overlapsOf(layer, inside, room, walls.innerMm, along, laying, grids)
  return {
    grid,
    skin: () => subtractRows(inside, room),
    room,
    inside,
    areaMm2: layer.areaMm2,
    wallMm2: walls.wallMm2,
    gapMm2: walls.gapMm2,
    skinMm2: insideMm2 - roomMm2 + overlap.skinMm2,
    roomMm2: roomMm2 + overlap.roomMm2,
    roomSeenMm: boundary.seenMm,
    roomWalkMm: boundary.walkMm,
    roomEdgeMm: boundary.edgeMm,
    heldMm2: between.heldMm * scale,
    overlapMm2: overlap.skinMm2,
    roomOverlapMm2: overlap.roomMm2,
    smallSolidMm2: small.droppedMm2,
    smallSparseMm2: small.nearlyMm2,
    thinMm2: walls.thinMm2,
    rooms: pieces,
    contours: layer.outline.start.length - 1,
    islands: layer.islands,
  }
}

/** Rooms that some printer lays solid and another sparse (common practice, no source). */
const SMALL_ROOMS_MM2 = [10, 100] as const

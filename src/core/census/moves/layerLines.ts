import type { LayerAreas } from '../areas/layerAreas.ts'
import type { Lines } from './lines.ts'
import { measureLines } from './lines.ts'
import type { Boundary } from '../areas/rooms.ts'
import { measureBoundary } from '../areas/rooms.ts'

/** Line spacings, in line widths, at which zigzags of infill are followed. */
export const ROOM_STEPS: readonly number[] = [1, 2, 3, 4, 6, 8, 12, 16, 32]
const SKIN_STEPS: readonly number[] = [1]

/** The lines of one layer, which stand for those of the layers like it as well. */
export interface LayerLines {
  readonly areas: LayerAreas
  readonly skin: Lines
  readonly room: Lines
  readonly skinBoundary: Boundary
}

export function linesOf(areas: LayerAreas, lineMm: number): LayerLines {
  const skin = areas.skin()
  return {
    areas,
    skin: measureLines(skin, areas.grid, lineMm, SKIN_STEPS),
    room: measureLines(areas.room, areas.grid, lineMm, ROOM_STEPS),
    skinBoundary: measureBoundary(skin, areas.grid.pitchMm),
  }
}

/** Layers whose every measure differs by less than this share have lines alike. */
const ALIKE = 0.08
/** Differences below so many line widths squared (or line widths) make none. */
const TRIFLE_LINES = 2

/**
 * Whether a layer's lines go where those of another, cut the same way, do: as many outlines and
 * rooms, and all areas and the rooms' boundary as large. Skins that appear, rooms that close and
 * holes that open all show in one of them.
 */
export function isAlike(a: LayerAreas, b: LayerAreas, lineMm: number): boolean {
  const near = (p: number, q: number, trifle: number): boolean =>
    Math.abs(p - q) <= Math.max(ALIKE * Math.max(p, q), trifle)
  const area = TRIFLE_LINES * lineMm * lineMm
  return (
    a === b ||
    (a.contours === b.contours &&
      a.rooms === b.rooms &&
      a.islands === b.islands &&
      near(a.wallMm2, b.wallMm2, area) &&
      near(a.skinMm2, b.skinMm2, area) &&
      near(a.roomMm2, b.roomMm2, area) &&
      near(a.roomSeenMm, b.roomSeenMm, TRIFLE_LINES * lineMm))
  )
}

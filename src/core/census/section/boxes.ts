import type { RowSet } from '../rows/rowSet.ts'
import type { SectionRegion } from './types.ts'

/** Gathers the boxes of each kind of region while the layers are gone through downwards. */
export interface SectionBoxes {
  /** Adds the stretches of one row as boxes between two heights. */
  add(kind: SectionRegion['kind'], rows: RowSet, row: number, bottom: number, top: number): void
  /** The same for the room inside a zone. */
  addZone(zone: number, rows: RowSet, row: number, bottom: number, top: number): void
  finish(): readonly SectionRegion[]
}

/** Boxes whose sides are this near to those of the one above go on as one. mm */
const SAME_MM = 1e-3

export function createSectionBoxes(): SectionBoxes {
  const all = new Map<string, { kind: SectionRegion['kind']; zone: number; list: BoxList }>()

  function put(
    kind: SectionRegion['kind'],
    zone: number,
    { start, spans }: RowSet,
    row: number,
    bottom: number,
    top: number,
  ): void {
    const name = `${kind} ${zone}`
    const known = all.get(name) ?? { kind, zone, list: createBoxList() }
    all.set(name, known)
    for (let j = start[row]!; j < start[row + 1]!; j++) {
      known.list.add(spans[2 * j]!, spans[2 * j + 1]!, bottom, top)
    }
  }

  return {
    add: (kind, rows, row, bottom, top) => put(kind, -1, rows, row, bottom, top),
    addZone: (zone, rows, row, bottom, top) => put('zone', zone, rows, row, bottom, top),
    finish: () =>
      [...all.values()].flatMap(({ kind, zone, list }) => {
        const boxes = list.toArray()
        return boxes.length === 0 ? [] : [{ kind, zone, boxes }]
      }),
  }
}

interface BoxList {
  add(left: number, right: number, bottom: number, top: number): void
  toArray(): Float64Array
}

function createBoxList(): BoxList {
  const boxes: number[] = []
  /** By its sides, where the lowest box between them begins in `boxes`. */
  const lowest = new Map<string, number>()
  return {
    add(left, right, bottom, top) {
      const key = `${Math.round(left / SAME_MM)} ${Math.round(right / SAME_MM)}`
      const above = lowest.get(key)
      if (above !== undefined && Math.abs(boxes[above + 2]! - top) < SAME_MM) {
        boxes[above + 2] = bottom
        return
      }
      lowest.set(key, boxes.length)
      boxes.push(left, right, bottom, top)
    },
    toArray: () => Float64Array.from(boxes),
  }
}

import type { Plan } from './rooms.ts'
import { AIR, ROOM, SKIN } from './rooms.ts'

/** Thicker skins are solid parts. */
const MOST_SKINS = 60

const FROM_AIR = 1
const FROM_ROOM = 2
const SPOILT = 3
const FROM_BED = 4

/**
 * How many solid layers lie under and over rooms, by area, in columns of cells from layer to layer.
 */
export interface SkinCount {
  readonly add: (plan: Plan) => void
  /** No more layers, or the next one begins another object. */
  readonly finish: () => void
  /** Columns by number of layers, those that begin on the bed. */
  readonly bottom: Float64Array
  /** Those that begin in the air. */
  readonly under: Float64Array
  readonly top: Float64Array
}

/**
 * Follows every column upwards. Solid layers from the bed to a room are a bottom, from air to a
 * room those over an underside, from a room to air a top; a column that meets a wall on the way
 * tells neither.
 */
export function skinCount(): SkinCount {
  const bottom = new Float64Array(MOST_SKINS + 1)
  const under = new Float64Array(MOST_SKINS + 1)
  const top = new Float64Array(MOST_SKINS + 1)
  let from = new Uint8Array(0)
  let layers = new Uint8Array(0)
  let last = new Uint8Array(0)
  let box = { left: 0, bottom: 0, right: 0, top: 0 }
  let size = 0
  let onBed = true

  const step = (cell: number, state: number): void => {
    const before = last[cell]!
    if (state === SKIN) {
      if (before === SKIN) layers[cell] = Math.min(MOST_SKINS, layers[cell]! + 1)
      else {
        const air = onBed ? FROM_BED : FROM_AIR
        from[cell] = before === AIR ? air : before === ROOM ? FROM_ROOM : SPOILT
        layers[cell] = 1
      }
    } else if (before === SKIN) {
      if (state === ROOM && from[cell] === FROM_BED) bottom[layers[cell]!]!++
      if (state === ROOM && from[cell] === FROM_AIR) under[layers[cell]!]!++
      if (state === AIR && from[cell] === FROM_ROOM) top[layers[cell]!]!++
    }
    last[cell] = state
  }
  return {
    bottom,
    under,
    top,
    add(plan) {
      if (size !== plan.size) {
        size = plan.size
        from = new Uint8Array(size * size)
        layers = new Uint8Array(size * size)
        last = new Uint8Array(size * size)
        box = plan.box
      }
      const left = Math.min(box.left, plan.box.left)
      const right = Math.max(box.right, plan.box.right)
      const low = Math.min(box.bottom, plan.box.bottom)
      const high = Math.max(box.top, plan.box.top)
      for (let row = low; row < high; row++) {
        for (let column = left; column < right; column++) {
          const cell = row * size + column
          step(cell, plan.cells[cell]!)
        }
      }
      box = { left, right, bottom: low, top: high }
      onBed = false
    },
    finish() {
      for (let row = box.bottom; row < box.top; row++) {
        for (let column = box.left; column < box.right; column++) step(row * size + column, AIR)
      }
      onBed = true
    },
  }
}

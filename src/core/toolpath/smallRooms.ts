import { HABIT_DEFAULTS } from '../model/habits.ts'
import type { LineKind } from '../model/toolpath.ts'
import type { LayerMoves } from './layerMoves.ts'
import { planLength } from './layerMoves.ts'
import type { Plan } from './rooms.ts'
import { ROOM } from './rooms.ts'
import { spread } from './spread.ts'

/**
 * Ends of skin lines look like infill: layers with more skin than this, by length of infill, are
 * left out.
 */
const LITTLE_SKIN = 0.1
/** What is smaller is no room. mm² */
const LEAST_MM2 = 3
/**
 * So many rooms of all layers are enough to tell, and this share of them may be smaller by chance.
 */
const ENOUGH = 30
const BY_CHANCE = 0.1

/** How small rooms are that infill was laid in. */
export interface SmallRooms {
  readonly add: (plan: Plan, moves: LayerMoves, kinds: readonly (LineKind | null)[]) => void
  /**
   * An area that rooms laid sparse do not fall below; null where all of them are larger than what
   * is usually laid solid, which says nothing. mm²
   */
  readonly leastMm2: () => number | null
}

export function smallRooms(): SmallRooms {
  const areas = spread()
  return {
    add(plan, moves, kinds) {
      let [skinMm, infillMm] = [0, 0]
      for (let i = 0; i < moves.count; i++) {
        if (kinds[i] === 'skin') skinMm += planLength(moves, i)
        else if (kinds[i] === 'infill') infillMm += planLength(moves, i)
      }
      if (infillMm <= 0 || skinMm > LITTLE_SKIN * infillMm) return
      for (const mm2 of roomAreas(plan)) if (mm2 >= LEAST_MM2) areas.add(mm2, 1)
    },
    leastMm2() {
      if (areas.weight() < ENOUGH) return null
      const least = areas.quantile(BY_CHANCE)!
      return least < HABIT_DEFAULTS.smallRoomMm2 ? Math.round(least) : null
    },
  }
}

/** Areas of a plan's rooms, each of cells that meet along a side. mm² */
function roomAreas({ cells, scratch: [known], size, box, pitchMm }: Plan): readonly number[] {
  const areas: number[] = []
  const all: number[] = []
  for (let row = box.bottom; row < box.top; row++) {
    for (let column = box.left; column < box.right; column++) {
      const from = all.length
      reach(row * size + column)
      for (let k = from; k < all.length; k++) {
        const cell = all[k]!
        for (const next of [cell - 1, cell + 1, cell - size, cell + size]) reach(next)
      }
      if (all.length > from) areas.push((all.length - from) * pitchMm * pitchMm)
    }
  }
  for (const cell of all) known[cell] = 0
  return areas

  function reach(cell: number): void {
    if (cells[cell] !== ROOM || known[cell] === 1) return
    known[cell] = 1
    all.push(cell)
  }
}

import { MATERIALS } from '../../core/data/materials.ts'
import { materialInCurrency } from '../../core/data/prices.ts'
import type { Material } from '../../core/model/figures.ts'
import type { Frame } from '../../core/model/frame.ts'
import type { AppState } from './types.ts'

type Pricing = Pick<Frame, 'materials' | 'prices'>

/**
 * Built-in materials by currency, priced once so that the same one is the same object every time.
 */
const priced = new Map<string, readonly Material[]>()

function builtIn(currency: string): readonly Material[] {
  const known = priced.get(currency)
  if (known !== undefined) return known
  const list = MATERIALS.map((material) => materialInCurrency(material, currency))
  priced.set(currency, list)
  return list
}

/**
 * Every material a part of this frame may name: the built-in ones at the usual price in the frame's
 * currency (0 where none is known), then the user's own. A changed built-in one stands in its old
 * place.
 */
export function materialsOf(frame: Pricing): readonly Material[] {
  const own = new Map(frame.materials.map((material) => [material.id, material]))
  const shadowed = builtIn(frame.prices.currency).map((material) => {
    const mine = own.get(material.id)
    own.delete(material.id)
    return mine ?? material
  })
  return [...shadowed, ...own.values()]
}

/**
 * The material of that id; the first built-in one when there is none (a frame from elsewhere may
 * name what it lacks).
 */
export function materialOf(frame: Pricing, id: string): Material {
  const own = frame.materials.find((material) => material.id === id)
  if (own !== undefined) return own
  const list = builtIn(frame.prices.currency)
  const found = list.find((material) => material.id === id) ?? list[0]
  if (found === undefined) throw new Error('The list of built-in materials is empty.')
  return found
}

/**
 * What a part may be given: the frame's materials, then those of the builder's that the frame has
 * not yet.
 */
export function choosableMaterials({
  frame,
  workshop,
}: Pick<AppState, 'frame' | 'workshop'>): readonly Material[] {
  const here = materialsOf(frame)
  const ids = new Set(here.map(({ id }) => id))
  return [...here, ...workshop.materials.filter(({ id }) => !ids.has(id))]
}

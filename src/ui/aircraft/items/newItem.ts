import { newId } from '../../../state/store/newId.ts'
import type { Item } from '../../../core/model/aircraft.ts'

/** An item to type over. */
export function newItem(): Item {
  return {
    id: newId(),
    name: 'New item',
    group: 'other',
    quantity: 1,
    massG: 0,
    costEach: 0,
    status: 'estimated',
    basis: 'typed',
    positionMm: null,
  }
}

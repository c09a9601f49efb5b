import type { Item, ItemBody } from '../core/model/aircraft.ts'

/** A bought item of a demo aircraft: invented, and so an estimate. */
export function sampleItem(
  name: string,
  group: Item['group'],
  quantity: number,
  massG: number,
  costEach: number,
  positionMm: Item['positionMm'] = null,
  body?: ItemBody,
): Item {
  const id = `sample-${name
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-|-$/g, '')}`
  return {
    id,
    name,
    group,
    quantity,
    massG,
    costEach,
    status: 'estimated',
    basis: 'typed',
    positionMm,
    ...(body === undefined ? {} : { body }),
  }
}

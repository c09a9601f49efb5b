import { expect, test } from 'vitest'
import { buffersIn } from '../../src/jobs/transfer.ts'
import { blockCensus } from '../support/blockCensus.ts'
import { RECIPE_DEFAULTS } from '../../src/core/model/settings.ts'

test('every array of a census is handed over once, however deep, and empty ones are not', () => {
  const census = blockCensus(20, 20, 4, RECIPE_DEFAULTS)
  const buffers = buffersIn({ census, again: census.layers })
  expect(new Set(buffers).size).toBe(buffers.length)
  expect(buffers).toContain(census.layers.areaMm2.buffer)
  expect(buffers).toContain(census.layers.islands.buffer)
  expect(buffers.every((buffer) => buffer.byteLength > 0)).toBe(true)
})

test('a message that has been handed over holds nothing to hand over again', () => {
  const message = { numbers: new Float64Array(4) }
  structuredClone(message, { transfer: buffersIn(message) })
  expect(buffersIn(message)).toEqual([])
})

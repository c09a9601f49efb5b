import { expect, test } from 'vitest'
import { layerDirectionNote } from '../../../src/core/figures/layerDirection.ts'

const lying = (x: number, y: number, z: number) =>
  layerDirectionNote({ min: [0, 0, 0], max: [x, y, z] })

test('an arm on its end is called weak, with the share and its range', () => {
  const note = lying(20, 14, 168)
  expect(note).toContain('weak')
  expect(note).toContain('about 55 % (40–70 %)')
})

test('an arm that lies flat carries bending along its layers, whichever way it points', () => {
  expect(lying(168, 20, 14)).toContain('lies flat')
  expect(lying(14, 168, 20)).toContain('lies flat')
})

test('compact parts and plates get no sentence', () => {
  expect(lying(28, 26, 22)).toBeNull()
  expect(lying(136, 98, 4)).toBeNull()
})

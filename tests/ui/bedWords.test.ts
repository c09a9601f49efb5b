import { expect, test } from 'vitest'
import { POSE_AS_DRAWN, RECIPE_DEFAULTS } from '../../src/core/model/settings.ts'
import { bedWords } from '../../src/ui/part/bedWords.ts'

const BED = { bedMm: [220, 220, 240] } as const
const LYING = { pose: POSE_AS_DRAWN, recipe: { ...RECIPE_DEFAULTS, brimMm: 0 } }
const sized = (x: number, y: number, z: number) => ({ min: [0, 0, 0], max: [x, y, z] }) as const

test('says of a part longer than the bed that it fits only on the diagonal, and between which angles', () => {
  const { sentence, mark } = bedWords(sized(232, 18, 16), LYING, BED)
  expect(sentence).toMatch(/220 × 220 × 240 mm only on the diagonal, turned \d+–\d+°\.$/)
  expect(mark).toBeNull()
})

test('names both lengths of a part that does not fit, and marks its row', () => {
  const { sentence, mark } = bedWords(sized(330, 18, 16), LYING, BED)
  expect(sentence).toContain('330 mm against 220 mm')
  expect(mark).toBe('does not fit the bed')
  const tall = bedWords(sized(18, 16, 250), LYING, BED)
  expect(tall.sentence).toContain('in height: 250 mm against 240 mm')
})

test('is not sure of a part turned freely, whose box is larger than itself', () => {
  const pose = { rotateDeg: [0, 30, 0] } as const
  const { sentence, mark } = bedWords(sized(20, 20, 280), { ...LYING, pose }, BED)
  expect(sentence).toMatch(/^May not fit/)
  expect(mark).toBe('may not fit the bed')
})

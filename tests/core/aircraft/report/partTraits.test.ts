import { expect, it } from 'vitest'
import { placeMesh } from '../../../../src/core/mesh/pose.ts'
import { partTraits } from '../../../../src/core/aircraft/report/partTraits.ts'
import { POSE_AS_DRAWN } from '../../../../src/core/model/settings.ts'
import { box, circle, prism, rectangle, translate } from '../../../support/meshes.ts'

it('takes outline and integrals of a block by hand arithmetic', () => {
  const block = translate(box(40, 30, 3), [100, 0, 7])
  const traits = partTraits(block, 1, placeMesh(block, 1, POSE_AS_DRAWN))
  expect(traits.outline?.areaMm2).toBeCloseTo(1200, 6)
  expect(traits.outline?.cutLengthMm).toBeCloseTo(140, 6)
  expect(traits.outline?.sheetMm[0]).toBeCloseTo(40, 6)
  expect(traits.moments.volume.amount).toBeCloseTo(3600, 6)
  // As drawn, not as it lies.
  expect(traits.moments.volume.centreMm[0]).toBeCloseTo(120, 6)
  expect(traits.moments.volume.centreMm[2]).toBeCloseTo(8.5, 6)
  expect(traits.moments.volume.second[0]).toBeCloseTo((3600 * 40 ** 2) / 12, 4)
})

it('takes the outline as the part lies and the integrals as it is drawn, both in mm', () => {
  const inches = box(4, 3, 0.5)
  const onItsSide = { rotateDeg: [90, 0, 0] } as const
  const traits = partTraits(inches, 25.4, placeMesh(inches, 25.4, onItsSide))
  expect(traits.outline?.areaMm2).toBeCloseTo(4 * 0.5 * 25.4 ** 2, 4)
  expect(traits.moments.volume.amount).toBeCloseTo(6 * 25.4 ** 3, 3)
  expect(traits.moments.volume.centreMm[1]).toBeCloseTo(1.5 * 25.4, 6)
})

it('stays below a kilobyte however fine the mesh is', () => {
  const fine = prism(rectangle(50, 50), 3, [circle(20, 2000, 25, 25)])
  const traits = partTraits(fine, 1, placeMesh(fine, 1, POSE_AS_DRAWN))
  expect(JSON.stringify(traits).length).toBeLessThan(1024)
})

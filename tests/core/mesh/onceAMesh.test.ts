import { expect, test } from 'vitest'
import { onceAMesh } from '../../../src/core/mesh/onceAMesh.ts'
import { box } from '../../support/meshes.ts'

test('works out once for each mesh, also what is null', () => {
  const asked: unknown[] = []
  const once = onceAMesh((mesh) => {
    asked.push(mesh)
    return asked.length === 1 ? null : asked.length
  })
  const [one, other] = [box(1, 1, 1), box(1, 1, 1)]
  expect([once(one), once(one), once(other), once(other)]).toEqual([null, null, 2, 2])
  expect(asked).toEqual([one, other])
  expect(asked[0]).toBe(one)
})

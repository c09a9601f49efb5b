import { createHash } from 'node:crypto'
import { vi } from 'vitest'
import type { Mesh } from '../../src/core/model/mesh.ts'
import type * as Stiffness from '../../src/core/stiffness/part/stiffPart.ts'
import type * as WeighPart from '../../src/core/weighPart.ts'

/*
 * The command that app tests hold the page against counts a frame's layers and bends its arms anew each
 * time it is asked; here each part is counted and bent once, however often. Set up before every file,
 * since those of a process share its modules: whoever imported the command first would settle it for all.
 */
vi.mock('../../src/core/weighPart.ts', async (importOriginal) => {
  const actual = await importOriginal<typeof WeighPart>()
  const known = new Map<string, ReturnType<typeof actual.weighPart>>()
  const weighPart: typeof actual.weighPart = (file, zones, settings, watch) => {
    const { pose, geometry, keepsHairs, unitOf } = settings
    const meshes = [file, ...zones].map(({ name, bytes }) => [
      name,
      createHash('sha1').update(bytes).digest('hex'),
    ])
    const key = JSON.stringify([meshes, pose, geometry, keepsHairs, unitOf(null)])
    const weighed = known.get(key) ?? actual.weighPart(file, zones, settings, watch)
    // A count that ran out of time is not what the next would come to.
    if (weighed.census.coarseMm3 === 0) known.set(key, weighed)
    return weighed
  }
  return { ...actual, weighPart }
})

vi.mock('../../src/core/stiffness/part/stiffPart.ts', async (importOriginal) => {
  const actual = await importOriginal<typeof Stiffness>()
  // A part that is counted once has one mesh.
  const known = new WeakMap<Mesh, Map<string, ReturnType<typeof actual.stiffPart>>>()
  const stiffPart: typeof actual.stiffPart = (meshes, scaleToMm, ask, onProgress) => {
    if (meshes.zones.length > 0) return actual.stiffPart(meshes, scaleToMm, ask, onProgress)
    const key = JSON.stringify([scaleToMm, ask])
    const own = known.get(meshes.part) ?? new Map()
    const bent = own.get(key) ?? actual.stiffPart(meshes, scaleToMm, ask, onProgress)
    known.set(meshes.part, own.set(key, bent))
    return bent
  }
  return { ...actual, stiffPart }
})

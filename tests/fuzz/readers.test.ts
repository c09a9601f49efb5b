import { unzipSync, zipSync } from 'fflate'
import { expect, test, vi } from 'vitest'
import { listMeshFiles } from '../../src/core/formats/archive.ts'
import { readObj } from '../../src/core/formats/obj.ts'
import { readMesh } from '../../src/core/formats/read.ts'
import { readStlAscii } from '../../src/core/formats/stlAscii.ts'
import { readStlBinary } from '../../src/core/formats/stlBinary.ts'
import { read3mf } from '../../src/core/formats/threemf.ts'
import type { ReadMesh } from '../../src/core/model/mesh.ts'
import { PreweighError } from '../../src/core/model/problem.ts'
import { endingsOf } from '../support/endsWell.ts'
import { box, tetrahedron } from '../support/meshes.ts'
import { mutate } from '../support/mutate.ts'
import { seededRandom } from '../support/random.ts'
import {
  meshXml,
  modelXml,
  pack3mf,
  writeObj,
  writeStlAscii,
  writeStlBinary,
} from '../support/writeMesh.ts'

const LONG = process.env['PREWEIGH_LONG'] === '1'
/** The long run takes another seed each time unless one is given; it stands in the titles. */
const SEED = Number(process.env['PREWEIGH_SEED'] ?? (LONG ? Date.now() % 1e9 : 20_256))
const MUTATIONS = LONG ? 24_000 : 1100
/** Processor time the mutations of one reader may take, each (the clock on the wall also counts other programs). ms */
const LIMIT_EACH_MS = 1
const LIMIT_MS = LIMIT_EACH_MS * MUTATIONS
/** Processor time any one of them may take on its way to grams, ms. */
const LIMIT_ONE_MS = 10_000

// On a busy machine the same work may take the wall clock ten times as long.
vi.setConfig({ testTimeout: LONG ? 1_200_000 : 60_000 })

type Read = (bytes: Uint8Array, name: string) => ReadMesh

const BOX = box(2, 3, 4)
const nested =
  `<object id="1">${meshXml(tetrahedron(3))}</object>` +
  '<object id="2"><components><component objectid="1" transform="-1 0 0 0 1 0 0 0 1 0 0 0"/></components></object>'
const model = modelXml(nested, '<item objectid="2"/><item objectid="1"/>')

const SAMPLES: readonly [title: string, bytes: Uint8Array, read: Read][] = [
  ['a binary STL', writeStlBinary(BOX), readStlBinary],
  ['an ASCII STL', writeStlAscii(BOX), readStlAscii],
  ['an OBJ', writeObj(BOX), readObj],
  ['a 3MF package', pack3mf(model), read3mf],
]

for (const [title, sample, read] of SAMPLES) {
  test(`${MUTATIONS} mutations of ${title} end in a mesh or a problem, then in grams or a problem (seed ${SEED})`, () => {
    const random = seededRandom(SEED)
    const ways = newWays()
    let tookMs = 0
    for (let i = 0; i < MUTATIONS; i++) {
      const bytes = mutate(sample, random)
      const started = process.cpuUsage()
      // Every second one meets its reader directly, the others the choice of reader.
      ways.read[ends(i % 2 === 0 ? read : readMesh, bytes) ? 'sound' : 'refused']++
      tookMs += cpuMsSince(started)
      goWholeWay(bytes, `mutant ${i} of seed ${SEED}`, ways)
    }
    expectEveryOutcome(ways)
    expect(tookMs).toBeLessThan(LIMIT_MS)
  })
}

test(`${MUTATIONS} mutations of a 3MF model's XML end in a mesh or a problem, then in grams or a problem (seed ${SEED})`, () => {
  // Inside the package a checksum catches every change; this one changes the text before it is packed.
  const random = seededRandom(SEED)
  const xml = new TextEncoder().encode(model)
  const parts = unzipSync(pack3mf(model))
  const ways = newWays()
  let tookMs = 0
  for (let i = 0; i < MUTATIONS; i++) {
    const bytes = zipSync({ ...parts, '3D/3dmodel.model': mutate(xml, random) }, { level: 0 })
    const started = process.cpuUsage()
    ways.read[ends(read3mf, bytes) ? 'sound' : 'refused']++
    tookMs += cpuMsSince(started)
    goWholeWay(bytes, `mutant ${i} of seed ${SEED}`, ways)
  }
  expectEveryOutcome(ways)
  expect(tookMs).toBeLessThan(LIMIT_MS)
})

test(`mutated archives yield files or a problem, and each file grams or a problem (seed ${SEED})`, () => {
  const random = seededRandom(SEED)
  const sample = zipSync(
    { 'arm.stl': writeStlBinary(BOX), 'deck.obj': writeObj(BOX), 'pod.3mf': pack3mf(model) },
    { level: 0 },
  )
  const ways = newWays()
  for (let i = 0; i < MUTATIONS / 4; i++) {
    const bytes = mutate(sample, random)
    try {
      listMeshFiles(bytes, 'a.zip')
      ways.read.sound++
    } catch (error) {
      expect(error).toBeInstanceOf(PreweighError)
      ways.read.refused++
    }
    goWholeWay(bytes, `mutant ${i} of seed ${SEED}`, ways)
  }
  expectEveryOutcome(ways)
})

/** How many went which way. */
interface Ways {
  readonly read: { sound: number; refused: number }
  readonly priced: { figures: number; refused: number }
}

function newWays(): Ways {
  return { read: { sound: 0, refused: 0 }, priced: { figures: 0, refused: 0 } }
}

/** From bytes to grams, as a worker goes it. */
function goWholeWay(bytes: Uint8Array, which: string, ways: Ways): void {
  const started = process.cpuUsage()
  try {
    for (const { kind } of endingsOf(bytes, 'mutant')) ways.priced[kind]++
  } catch (error) {
    throw new Error(which, { cause: error })
  }
  const tookMs = cpuMsSince(started)
  if (tookMs > LIMIT_ONE_MS) throw new Error(`${which} took ${tookMs} ms`)
}

/** A run that only ever sees one outcome would show nothing. */
function expectEveryOutcome({ read, priced }: Ways): void {
  for (const count of [...Object.values(read), ...Object.values(priced)]) {
    expect(count).toBeGreaterThan(0)
  }
}

function cpuMsSince(started: NodeJS.CpuUsage): number {
  const { user, system } = process.cpuUsage(started)
  return (user + system) / 1000
}

/** True for a sound mesh, false for a problem with words in it; anything else fails the test. */
function ends(read: Read, bytes: Uint8Array): boolean {
  let result: ReadMesh
  try {
    result = read(bytes, 'mutant')
  } catch (error) {
    if (!(error instanceof PreweighError)) throw error
    expect(error.problem.message).toMatch(/^mutant: .+\.$/s)
    expect(error.problem.advice).not.toBe('')
    return false
  }
  const { mesh, pieces } = result
  const vertices = mesh.positions.length / 3
  if (mesh.indices.length === 0) throw new Error('a mesh without triangles')
  if (!mesh.positions.every(Number.isFinite)) throw new Error('a coordinate that is not finite')
  if (!mesh.indices.every((index) => index < vertices)) throw new Error('an index too large')
  let next = 0
  for (const { firstTriangle, triangleCount } of pieces) {
    if (firstTriangle !== next || triangleCount < 1) throw new Error('pieces that do not adjoin')
    next += triangleCount
  }
  if (next !== mesh.indices.length / 3) throw new Error('triangles outside every piece')
  return true
}

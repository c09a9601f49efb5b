import { unzipSync, zipSync } from 'fflate'
import { afterAll, beforeAll, expect, test, vi } from 'vitest'
import type { ReadMesh } from '../../src/core/model/mesh.ts'
import { startCounter, type RunCounter } from '../support/countedRuns.ts'
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
/**
 * Runs of our script's pieces that a mutation of a few hundred bytes may take on its way to grams,
 * on average.
 */
const LIMIT_RUNS_EACH = 200_000

// On a busy machine the same work may take the wall clock ten times as long.
vi.setConfig({ testTimeout: LONG ? 1_200_000 : 60_000, hookTimeout: 60_000 })

type Read = (bytes: Uint8Array, name: string) => ReadMesh

const BOX = box(2, 3, 4)
const nested =
  `<object id="1">${meshXml(tetrahedron(3))}</object>` +
  '<object id="2"><components><component objectid="1" transform="-1 0 0 0 1 0 0 0 1 0 0 0"/></components></object>'
const model = modelXml(nested, '<item objectid="2"/><item objectid="1"/>')

/** All that is tried, imported anew so that its loops are counted. */
const importAll = async () => ({
  ...(await import('../../src/core/formats/archive.ts')),
  ...(await import('../../src/core/formats/obj.ts')),
  ...(await import('../../src/core/formats/read.ts')),
  ...(await import('../../src/core/formats/stlAscii.ts')),
  ...(await import('../../src/core/formats/stlBinary.ts')),
  ...(await import('../../src/core/formats/threemf.ts')),
  ...(await import('../../src/core/model/problem.ts')),
  ...(await import('../support/endsWell.ts')),
})
let counter: RunCounter
let tried: Awaited<ReturnType<typeof importAll>>

beforeAll(async () => {
  vi.resetModules()
  counter = startCounter()
  tried = await importAll()
})

afterAll(() => {
  counter.stop()
})

const SAMPLES: readonly [title: string, bytes: Uint8Array, read: () => Read][] = [
  ['a binary STL', writeStlBinary(BOX), () => tried.readStlBinary],
  ['an ASCII STL', writeStlAscii(BOX), () => tried.readStlAscii],
  ['an OBJ', writeObj(BOX), () => tried.readObj],
  ['a 3MF package', pack3mf(model), () => tried.read3mf],
]

const ENDINGS = 'end in a mesh or a problem, then in grams or a problem'

for (const [title, sample, read] of SAMPLES) {
  test(`${MUTATIONS} mutations of ${title} ${ENDINGS} (seed ${SEED})`, () => {
    const random = seededRandom(SEED)
    const tries = tryMutants(MUTATIONS, (i, ways) => {
      const bytes = mutate(sample, random)
      // Every second one meets its reader directly, the others the choice of reader.
      ways.read[ends(i % 2 === 0 ? read() : tried.readMesh, bytes) ? 'sound' : 'refused']++
      return bytes
    })
    expect(tries).toEqual(FINE)
  })
}

test(`${MUTATIONS} mutations of a 3MF model's XML ${ENDINGS} (seed ${SEED})`, () => {
  // Inside the package a checksum catches every change; this one changes the text before it is
  // packed.
  const random = seededRandom(SEED)
  const xml = new TextEncoder().encode(model)
  const parts = unzipSync(pack3mf(model))
  const tries = tryMutants(MUTATIONS, (_, ways) => {
    const bytes = zipSync({ ...parts, '3D/3dmodel.model': mutate(xml, random) }, { level: 0 })
    ways.read[ends(tried.read3mf, bytes) ? 'sound' : 'refused']++
    return bytes
  })
  expect(tries).toEqual(FINE)
})

test(`mutated archives yield files or a problem, and each file grams or a problem (seed ${SEED})`, () => {
  const random = seededRandom(SEED)
  const sample = zipSync(
    { 'arm.stl': writeStlBinary(BOX), 'deck.obj': writeObj(BOX), 'pod.3mf': pack3mf(model) },
    { level: 0 },
  )
  const tries = tryMutants(MUTATIONS / 4, (_, ways) => {
    const bytes = mutate(sample, random)
    try {
      tried.listMeshFiles(bytes, 'a.zip')
      ways.read.sound++
    } catch (error) {
      expect(error).toBeInstanceOf(tried.PreweighError)
      ways.read.refused++
    }
    return bytes
  })
  expect(tries).toEqual(FINE)
})

/** Every outcome came, loops were counted, and a mutant took few enough of their runs. */
const FINE = { unseen: [], isCounted: true, isQuick: true }

/** Reads so many mutants and goes the whole way with each. */
function tryMutants(count: number, read: (i: number, ways: Ways) => Uint8Array) {
  const ways = newWays()
  const { all } = counter.runsOf(() => {
    for (let i = 0; i < count; i++) {
      goWholeWay(read(i, ways), `mutant ${i} of seed ${SEED}`, ways)
    }
  })
  return {
    unseen: unseenOutcomes(ways),
    isCounted: all > count,
    isQuick: all < count * LIMIT_RUNS_EACH,
  }
}

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
  try {
    for (const { kind } of tried.endingsOf(bytes, 'mutant')) ways.priced[kind]++
  } catch (error) {
    throw new Error(which, { cause: error })
  }
}

/** A run that only ever sees one outcome would show nothing. */
function unseenOutcomes({ read, priced }: Ways): readonly string[] {
  const counts = [...Object.entries(read), ...Object.entries(priced)]
  return counts.flatMap(([name, count]) => (count > 0 ? [] : [name]))
}

/** True for a sound mesh, false for a problem with words in it; anything else fails the test. */
function ends(read: Read, bytes: Uint8Array): boolean {
  let result: ReadMesh
  try {
    result = read(bytes, 'mutant')
  } catch (error) {
    if (!(error instanceof tried.PreweighError)) throw error
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

import { quickMeasure } from '../core/formats/quick.ts'
import { carryFindings } from '../core/formats/carryFindings.ts'
import type { Census } from '../core/model/census.ts'
import { countLayers } from '../core/census/countLayers.ts'
import { inspectMesh } from '../core/mesh/inspect.ts'
import { takeApart } from '../core/mesh/takeApart.ts'
import { drawThumbnail } from '../core/mesh/thumbnail.ts'
import type { LengthUnit, ReadMesh } from '../core/model/mesh.ts'
import { unitToMm } from '../core/model/units.ts'
import { takingOf, type MeshShelf } from './meshShelf.ts'
import type { AnalyseAnswer, AnalyseAsk, AnalyseEvent, MeshSource, PartRead } from './protocol.ts'

const THUMBNAIL_PX = 96
/** Progress is told no more often than this, ms: the page draws it, and that costs more than the layers in between. */
const TELL_MS = 100

/**
 * From a mesh file to its census, telling on the way what is known: volume and area as soon as the bytes are there,
 * then the measured mesh, then a census of every 8th layer, then how far all are counted. Throws PreweighError.
 */
export async function analyse(
  ask: AnalyseAsk,
  shelf: MeshShelf,
  tell: (event: AnalyseEvent) => void,
  now: () => number = () => performance.now(),
): Promise<AnalyseAnswer> {
  const { source, zones, unit, pose, geometry } = ask
  const mm = unitToMm(unit)
  const read = await shelf.take(source, (bytes) => {
    const quick = ask.wantRead ? quickMeasure(bytes) : null
    if (quick === null) return
    const rough = { volumeMm3: quick.volumeMm3 * mm ** 3, areaMm2: quick.areaMm2 * mm ** 2 }
    tell({ kind: 'rough', rough })
  })
  const carry = <T>(work: () => T): T => carryFindings(read, source.name, work)
  if (ask.wantRead) tell({ kind: 'read', read: carry(() => look(read, shelf, source, unit)) })

  const outwardZone = async (zone: MeshSource) =>
    shelf.outward(await shelf.take(zone), { scaleToMm: mm, keepsHairs: true })
  let toldAt = now()
  const meshes = {
    part: shelf.outward(read, takingOf(source, unit)),
    zones: await Promise.all(zones.map(outwardZone)),
  }
  const watch = {
    ...(ask.wantCoarse
      ? { onCoarse: (coarse: Census) => tell({ kind: 'coarse', census: coarse }) }
      : {}),
    onProgress(fraction: number) {
      const at = now()
      if (at - toldAt < TELL_MS) return
      toldAt = at
      tell({ kind: 'progress', fraction })
    },
  }
  const census = carry(() => countLayers(meshes, mm, pose, geometry, watch))
  return { census }
}

function look(read: ReadMesh, shelf: MeshShelf, source: MeshSource, unit: LengthUnit): PartRead {
  const apart = takeApart(read.mesh)
  const taking = takingOf(source, unit)
  return {
    ...inspectMesh(read, shelf.outward(read, taking, apart), unit, apart, taking.keepsHairs),
    format: read.format,
    thumbnail: { sizePx: THUMBNAIL_PX, rgba: drawThumbnail(read.mesh, THUMBNAIL_PX) },
  }
}

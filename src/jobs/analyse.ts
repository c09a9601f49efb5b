import type { CountWatch } from '../core/census/countLayers.ts'
import { quickMeasure } from '../core/formats/quick.ts'
import { drawThumbnail } from '../core/mesh/thumbnail.ts'
import type { ReadMesh } from '../core/model/mesh.ts'
import { unitToMm } from '../core/model/units.ts'
import { countPart, inspectPart, type PartTaking } from '../core/weighPart.ts'
import type { MeshShelf } from './meshShelf.ts'
import type { AnalyseAnswer, AnalyseAsk, AnalyseEvent, PartRead } from './asks/partAsks.ts'
import { createWorkClock } from './workClock.ts'

const THUMBNAIL_PX = 96
/**
 * Progress is told no more often than this, ms: the page draws it, and that costs more than the
 * layers in between.
 */
const TELL_MS = 100

/**
 * From a mesh file to its census, telling on the way what is known: volume and area as soon as the
 * bytes are there, then the measured mesh, then a census of about every 8th layer, then how far all
 * are counted. Throws PreweighError.
 */
export async function analyse(
  ask: AnalyseAsk,
  shelf: MeshShelf,
  tell: (event: AnalyseEvent) => void,
  now: () => number = () => performance.now(),
): Promise<AnalyseAnswer> {
  const workedS = createWorkClock(now)
  const { source, unit } = ask
  const mm = unitToMm(unit)
  const part = { name: source.name, unit, keepsHairs: source.keepsHairs === true }
  const read = await shelf.read(source, (bytes) => {
    const quick = ask.wantRead ? quickMeasure(bytes) : null
    if (quick === null) return
    const rough = { volumeMm3: quick.volumeMm3 * mm ** 3, areaMm2: quick.areaMm2 * mm ** 2 }
    tell({ kind: 'rough', rough })
  })
  if (ask.wantRead) tell({ kind: 'read', read: look(read, part, shelf) })
  const zones = await Promise.all(ask.zones.map((zone) => shelf.read(zone)))
  const watch = watchOf(ask, tell, now, workedS)
  const census = countPart(read, zones, part, ask, shelf.outward, watch)
  return { census }
}

function look(read: ReadMesh, part: PartTaking, shelf: MeshShelf): PartRead {
  return {
    ...inspectPart(read, part, shelf.outward),
    format: read.format,
    thumbnail: { sizePx: THUMBNAIL_PX, rgba: drawThumbnail(read.mesh, THUMBNAIL_PX) },
  }
}

function watchOf(
  { wantCoarse, countsFully }: AnalyseAsk,
  tell: (event: AnalyseEvent) => void,
  now: () => number,
  workedS: () => number,
): CountWatch {
  let toldAt = now()
  return {
    ...(wantCoarse ? { onCoarse: (census) => tell({ kind: 'coarse', census }) } : {}),
    ...(countsFully === true ? {} : { budget: { spentS: workedS } }),
    onProgress(fraction: number) {
      const at = now()
      if (at - toldAt < TELL_MS) return
      toldAt = at
      tell({ kind: 'progress', fraction })
    },
  }
}

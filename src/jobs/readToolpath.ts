import { measureMesh } from '../core/mesh/measure.ts'
import { PreweighError } from '../core/model/problem.ts'
import { unitToMm } from '../core/model/units.ts'
import { isPacked } from '../core/toolpath/isPacked.ts'
import { looksLikeToolpath } from '../core/toolpath/looksLikeToolpath.ts'
import type { Candidate } from '../core/toolpath/matchPart.ts'
import { matchPart } from '../core/toolpath/matchPart.ts'
import { toolpathReader } from '../core/toolpath/readToolpath.ts'
import { readBytes, takingOf, type MeshShelf } from './meshShelf.ts'
import type { JobEvent } from './protocol.ts'
import type { ToolpathAnswer, ToolpathAsk, ToolpathPart } from './asks/toolpathAsks.ts'

/** Pictures in comments stand before the first move; a few hundred kilobytes at most. */
const START_BYTES = 1 << 20

/**
 * Whether a file holds the moves of a print head, by its start; one packed with gzip does, as no
 * mesh is.
 */
export async function isToolpath(blob: Blob, name: string): Promise<boolean> {
  const start = await readBytes(blob.slice(0, START_BYTES), name)
  return isPacked(start) || looksLikeToolpath(start)
}

/** Throws PreweighError where the file lays nothing or cannot be read to its end. */
export async function readToolpath(
  { name, blob, settings, parts }: ToolpathAsk,
  shelf: MeshShelf,
  tell: (event: JobEvent) => void,
): Promise<ToolpathAnswer> {
  const reader = toolpathReader(settings)
  const packed = isPacked(await readBytes(blob.slice(0, 2), name))
  let done = 0
  const counted = blob.stream().pipeThrough(
    new TransformStream<Uint8Array<ArrayBuffer>, Uint8Array<ArrayBuffer>>({
      transform(piece, sink) {
        done += piece.length
        tell({ kind: 'progress', fraction: done / blob.size })
        sink.enqueue(piece)
      },
    }),
  )
  const text = packed ? counted.pipeThrough(new DecompressionStream('gzip')) : counted
  const pieces = text.getReader()
  const next = () =>
    pieces.read().catch(() => {
      throw unreadable(name, packed)
    })
  for (let piece = await next(); !piece.done; piece = await next()) reader.push(piece.value)
  const figures = reader.end()

  const tried = await Promise.all(parts.map((part) => candidateOf(part, shelf)))
  const candidates = tried.filter((each) => each !== null)
  const match = matchPart(figures, candidates)
  const found = match === null ? undefined : candidates[match.part]
  if (match === null || found === undefined) return { figures, match: null }
  return {
    figures,
    match: {
      item: found.item,
      pose: match.pose,
      misfitMm: match.misfitMm,
      alike: match.alike.flatMap((at) => candidates[at]?.item ?? []),
    },
  }
}

/** Null for a part whose mesh has no figures either: its row says why. */
async function candidateOf(
  { item, source, unit }: ToolpathPart,
  shelf: MeshShelf,
): Promise<(Candidate & { readonly item: string }) | null> {
  try {
    const mesh = shelf.outward(await shelf.read(source), takingOf(source, unit))
    const scaleToMm = unitToMm(unit)
    return { item, mesh, scaleToMm, volumeMm3: measureMesh(mesh, scaleToMm).volumeMm3 }
  } catch (error) {
    if (error instanceof PreweighError) return null
    throw error
  }
}

function unreadable(name: string, packed: boolean): PreweighError {
  return new PreweighError(
    'unreadable-file',
    packed
      ? `“${name}” is packed with gzip and cannot be unpacked to its end: it is cut short or damaged.`
      : `“${name}” cannot be read to its end: it was changed, moved or deleted meanwhile.`,
    packed ? 'Unpack it, or export the print again.' : 'Drop the file again.',
  )
}

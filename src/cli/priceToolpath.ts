import { createReadStream, openSync, readSync, closeSync, statSync } from 'node:fs'
import { resolve } from 'node:path'
import type { Readable } from 'node:stream'
import { createGunzip } from 'node:zlib'
import type { Range } from '../core/model/figures.ts'
import { PreweighError } from '../core/model/problem.ts'
import type { Outcome } from '../core/model/problem.ts'
import type { ToolpathFigures } from '../core/model/toolpath.ts'
import { isPacked } from '../core/toolpath/isPacked.ts'
import { toolpathReader } from '../core/toolpath/readToolpath.ts'
import type { MatchedMesh, RefusedMesh } from './matchMeshes.ts'
import { matchMeshes } from './matchMeshes.ts'
import type { ToolpathOptions } from './toolpathOptions.ts'
import { whyUnread } from './whyUnread.ts'

/** What a toolpath comes to, as the command tells it. */
export interface ToolpathReport extends Omit<ToolpathFigures, 'layers' | 'girthMm'> {
  readonly file: string
  /** How many. */
  readonly layers: number
  /** Priming and skirt too. The range is the material's density. */
  readonly massG: Range
  readonly heightMm: number
  /** Which of the meshes given it prints; null where none fits, left out where none was given. */
  readonly part?: MatchedMesh | null
}

/** What was read, and which of the meshes given beside it cannot be used. */
export interface PricedToolpath {
  readonly report: ToolpathReport
  readonly refused: readonly RefusedMesh[]
}

/** Reads the file piece by piece; one packed with gzip is unpacked on the way. */
export async function priceToolpath(
  options: ToolpathOptions,
  base: string,
  onProgress: (fraction: number) => void,
): Promise<Outcome<PricedToolpath>> {
  const { toolpath, material, knowsDiameter, printer, meshes } = options
  const path = resolve(base, toolpath)
  const reader = toolpathReader({
    accelMmS2: printer.accelMmS2,
    wallAccelMmS2: printer.wallAccelMmS2,
    travelAccelMmS2: printer.travelAccelMmS2,
    cornerMmS: printer.cornerMmS,
    diameterMm: knowsDiameter ? material.diameterMm : null,
    bead: printer.habits?.bead,
  })
  try {
    const bytes = statSync(path).size
    if (bytes === 0) throw new PreweighError('empty-file', 'It is 0 bytes long.', 'Save it again.')
    const isGzip = isPackedFile(path)
    const file = createReadStream(path, { highWaterMark: 1 << 20 })
    let done = 0
    file.on('data', (piece) => {
      done += piece.length
      onProgress(done / bytes)
    })
    const text: Readable = isGzip ? unpacked(file) : file
    for await (const piece of text) reader.push(piece as Uint8Array)
    const seen = reader.end()
    const { layers, girthMm: _, ...figures } = seen
    const [low, high] = material.densityRangeGCm3
    const cm3 = figures.depositMm3 / 1000
    const { part, refused } = matchMeshes(seen, options, base)
    const report = {
      file: toolpath,
      ...figures,
      layers: layers.length,
      heightMm: layers.at(-1)?.topMm ?? 0,
      ...(meshes.length > refused.length ? { part } : {}),
      massG: { low: cm3 * low, mid: cm3 * material.densityGCm3.value, high: cm3 * high },
    }
    return { ok: true, value: { report, refused } }
  } catch (error) {
    if (error instanceof PreweighError) return { ok: false, problem: error.problem }
    return {
      ok: false,
      problem: {
        code: 'unreadable-file',
        message: `It cannot be read: ${whyUnread(error, path)}.`,
        advice: 'Check the path, and that the file is whole.',
      },
    }
  }
}

/** Fails as the file does, which a pipe alone would let end the process. */
function unpacked(file: Readable): Readable {
  const text = createGunzip()
  file.on('error', (error) => text.destroy(error))
  return file.pipe(text)
}

function isPackedFile(path: string): boolean {
  const file = openSync(path, 'r')
  const start = new Uint8Array(2)
  readSync(file, start)
  closeSync(file)
  return isPacked(start)
}

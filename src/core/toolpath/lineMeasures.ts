import type { LineKind, LineMeasure } from '../model/toolpath.ts'
import type { LayerLines } from './layerLines.ts'
import { planLength } from './layerMoves.ts'

const KINDS: readonly LineKind[] = ['outer', 'inner', 'skin', 'infill', 'gap']
/** Values nearer than this are one, as a share. */
const STEP = 1.005

/** Lengths by value, on a scale of even ratios: the middle costs no list of all lines. */
interface Spread {
  readonly lengths: Map<number, number>
  allMm: number
}

const spread = (): Spread => ({ lengths: new Map(), allMm: 0 })

function note(to: Spread, value: number, lengthMm: number): void {
  if (!(value > 0)) return
  const bin = Math.round(Math.log(value) / Math.log(STEP))
  to.lengths.set(bin, (to.lengths.get(bin) ?? 0) + lengthMm)
  to.allMm += lengthMm
}

function middle({ lengths, allMm }: Spread): number | null {
  let left = allMm / 2
  for (const [bin, length] of [...lengths].sort(([a], [b]) => a - b)) {
    left -= length
    if (left <= 0) return STEP ** bin
  }
  return null
}

/**
 * Plastic and length by kind of line, added up layer by layer; width and speed of those above the
 * bed: the first layer has its own.
 */
export interface LineMeasures {
  readonly add: (
    layer: LayerLines,
    kinds: readonly (LineKind | null)[],
    widths: Float64Array,
    onBed: boolean,
  ) => void
  /** `sectionMm2`: of the filament; `reckonedMm2`: the one that the widths were reckoned with. */
  readonly told: (
    sectionMm2: number,
    reckonedMm2: number,
  ) => Readonly<Record<LineKind, LineMeasure>>
}

export function lineMeasures(): LineMeasures {
  const all = KINDS.map(() => ({ filamentMm: 0, lengthMm: 0, width: spread(), speed: spread() }))
  return {
    add({ moves, lines }, kinds, widths, onBed) {
      for (const move of lines) {
        const kind = kinds[move]
        const own = kind ? all[KINDS.indexOf(kind)] : undefined
        if (!own) continue
        const length = planLength(moves, move)
        own.filamentMm += moves.laidMm[move]!
        own.lengthMm += length
        if (onBed) continue
        note(own.width, widths[move]!, length)
        note(own.speed, moves.speedMmS[move]!, length)
      }
    },
    told(sectionMm2, reckonedMm2) {
      const told = KINDS.map((kind, k): [LineKind, LineMeasure] => {
        const { filamentMm, lengthMm, width, speed } = all[k]!
        const widthMm = middle(width)
        return [
          kind,
          {
            volumeMm3: filamentMm * sectionMm2,
            lengthM: lengthMm / 1000,
            widthMm: widthMm === null ? null : (widthMm * sectionMm2) / reckonedMm2,
            speedMmS: middle(speed),
          },
        ]
      })
      return Object.fromEntries(told) as Record<LineKind, LineMeasure>
    },
  }
}

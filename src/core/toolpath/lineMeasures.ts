import type { LineKind, LineMeasure } from '../model/toolpath.ts'
import { fullSpeed, layerSeconds, layerTimes } from './fullSpeed.ts'
import type { LayerLines } from './layerLines.ts'
import { planLength } from './layerMoves.ts'
import { spread } from './spread.ts'

const KINDS: readonly LineKind[] = ['outer', 'inner', 'skin', 'infill', 'gap']
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
  const all = KINDS.map(() => ({
    filamentMm: 0,
    lengthMm: 0,
    width: spread(),
    speed: fullSpeed(),
  }))
  const times = layerTimes()
  return {
    add({ moves, lines }, kinds, widths, onBed) {
      const time = onBed ? 0 : times.add(layerSeconds(moves))
      for (const move of lines) {
        const kind = kinds[move]
        const own = kind ? all[KINDS.indexOf(kind)] : undefined
        if (!own) continue
        const length = planLength(moves, move)
        own.filamentMm += moves.laidMm[move]!
        own.lengthMm += length
        if (onBed) continue
        own.width.add(widths[move]!, length)
        own.speed.add(time, moves.speedMmS[move]!, length)
      }
    },
    told(sectionMm2, reckonedMm2) {
      const slowedUpTo = times.slowedUpTo()
      const told = KINDS.map((kind, k): [LineKind, LineMeasure] => {
        const { filamentMm, lengthMm, width, speed } = all[k]!
        const widthMm = width.quantile(0.5)
        return [
          kind,
          {
            volumeMm3: filamentMm * sectionMm2,
            lengthM: lengthMm / 1000,
            widthMm: widthMm === null ? null : (widthMm * sectionMm2) / reckonedMm2,
            speedMmS: speed.told(slowedUpTo),
          },
        ]
      })
      return Object.fromEntries(told) as Record<LineKind, LineMeasure>
    },
  }
}

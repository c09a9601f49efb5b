import type { Shared } from '../../joints/clashes.ts'
import { itemPieces } from '../../joints/itemPieces.ts'
import type { Aircraft } from '../../model/aircraft.ts'
import type { Part } from '../../model/frame.ts'
import type { Vec3 } from '../../model/mesh.ts'
import { clashFindings, type ClashAsk } from './clashFindings.ts'
import { screwsInTheWay } from './jointFindings.ts'
import { volumeWords } from './volumeWords.ts'

/** What is marked on the drawing of a frame, where it is, and said beside it. */
export interface FrameSign {
  /** Soft pieces may be squeezed: that is worth knowing and no fault. */
  readonly isFault: boolean
  /** In the frame's axes, each place that is alike. mm */
  readonly atMm: readonly Vec3[]
  /** `30 mm³`, `4 × 30 mm³`; what a screw does where no volume is known. */
  readonly label: string
  /** Both metric and in English numbers, see `toldWords`. */
  readonly message: string
}

/**
 * What runs into what, and screws that reach into what is bought.
 *
 * @param shared as in `clashFindings`.
 */
export function frameSigns(
  ask: ClashAsk,
  shared: readonly Shared[],
  parts: readonly Part[],
  aircraft: Aircraft,
): readonly FrameSign[] {
  const pieces = [...parts, ...itemPieces(aircraft.items)]
  return [
    ...clashFindings(ask, shared, parts, aircraft).map(
      ({ code, count, volumeMm3, atMm, message }): FrameSign => ({
        isFault: code !== 'squeeze',
        atMm,
        label: timesWords(count, volumeWords(volumeMm3)),
        message,
      }),
    ),
    ...screwsInTheWay(parts, aircraft, pieces).flatMap(
      ({ message, atMm = [] }): readonly FrameSign[] =>
        atMm.length === 0
          ? []
          : [{ isFault: true, atMm, label: timesWords(atMm.length, 'screw in it'), message }],
    ),
  ]
}

function timesWords(count: number, words: string): string {
  return count === 1 ? words : `${count} × ${words}`
}

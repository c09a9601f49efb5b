import type { FlightSetup } from '../../model/aircraft.ts'
import type { PartFigures, Range } from '../../model/figures.ts'
import type { HoverFigures } from '../flight/hover.ts'
import { hoverFigures } from '../flight/hover.ts'
import type { CarbonFrame } from '../../model/frame.ts'
import { addRanges, exactRange, scaleRange, ZERO_RANGE } from '../../model/ranges.ts'
import type { FlatTwin } from './flatTwin.ts'

/** A printed part that flies, and its twin where it has one. */
export interface TwinLine {
  /** Pieces that fly. */
  readonly quantity: number
  /** Of one piece. */
  readonly printed: Pick<PartFigures, 'massG' | 'cost' | 'timeS'>
  /** Of one piece; null for a part that stays printed. */
  readonly twin: FlatTwin | null
}

/** One way to come by the frame. */
export interface FrameSide {
  /** The frame alone: pieces that fly, no hardware, no spares. */
  readonly massG: Range
  readonly cost: Range
  /** Printer hours it still takes. */
  readonly printS: Range
  /** Days until what is ordered is there. */
  readonly waitDays: number
  /** Frame and everything else that flies. */
  readonly auwG: Range
  /** At the middle all-up weight; null without a complete flight setup. */
  readonly hover: HoverFigures | null
}

export interface FrameSides {
  readonly printed: FrameSide
  /** Flat parts cut from plate, the rest printed; null when no part has a twin. */
  readonly cut: FrameSide | null
  /** The whole frame bought; null when there is none to compare with. */
  readonly bought: FrameSide | null
}

/**
 * The same aircraft on its printed frame, on one with its flat parts cut from plate, and on a bought one. `restG` is
 * everything that flies and is not frame: hardware, drive, pack, camera. Ranges add end to end, as in `frameTotals`.
 */
export function frameSides(input: {
  readonly lines: readonly TwinLine[]
  readonly bought: CarbonFrame | null
  readonly restG: number
  readonly deliveryDays: number
  readonly flight: FlightSetup | null
}): FrameSides {
  const { lines, bought, restG, deliveryDays, flight } = input
  const side = (massG: Range, cost: Range, printS: Range, waitDays: number): FrameSide => {
    const auwG = addRanges(massG, exactRange(restG))
    const hover = flight === null ? null : hoverFigures(flight, auwG.mid)
    return { massG, cost, printS, waitDays, auwG, hover }
  }
  const sum = (pick: (line: TwinLine) => Range): Range =>
    lines.reduce(
      (total, line) => addRanges(total, scaleRange(pick(line), line.quantity)),
      ZERO_RANGE,
    )
  return {
    printed: side(
      sum(({ printed }) => printed.massG),
      sum(({ printed }) => printed.cost),
      sum(({ printed }) => printed.timeS),
      0,
    ),
    cut: lines.some(({ twin }) => twin !== null)
      ? side(
          sum(({ printed, twin }) => twin?.chosen.massG ?? printed.massG),
          sum(({ printed, twin }) => (twin ? exactRange(twin.cost) : printed.cost)),
          sum(({ printed, twin }) => (twin ? ZERO_RANGE : printed.timeS)),
          deliveryDays,
        )
      : null,
    bought: bought
      ? side(exactRange(bought.massG), exactRange(bought.price), ZERO_RANGE, deliveryDays)
      : null,
  }
}

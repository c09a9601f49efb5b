import type { FlightSetup } from '../../model/aircraft.ts'
import type { Range } from '../../model/figures.ts'
import type { HoverFigures } from '../flight/hover.ts'
import { hoverFigures } from '../flight/hover.ts'
import type { CarbonFrame } from '../../model/frame.ts'
import { rangeOf } from '../../doubt/bell.ts'
import type { FrameFigure } from '../../frame/frameDoubt.ts'
import type { FrameSum } from '../../frame/types.ts'
import { addApart, addRanges, exactRange, scaleRange, ZERO_RANGE } from '../../model/ranges.ts'
import type { FlatTwin } from './flatTwin.ts'

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
 * The same aircraft on its printed frame, on one with its flat parts cut from plate, and on a
 * bought one. Everything that flies and is not frame goes with each: hardware, drive, pack, camera.
 * `cut` holds the twin of one piece by part id.
 */
export function frameSides(input: {
  readonly sum: FrameSum
  readonly cut: ReadonlyMap<string, FlatTwin>
  readonly bought: CarbonFrame | null
  readonly deliveryDays: number
  readonly flight: FlightSetup | null
}): FrameSides {
  const { sum, cut, bought, deliveryDays, flight } = input
  const side = (one: Omit<FrameSide, 'hover'>): FrameSide => {
    const hover = flight === null ? null : hoverFigures(flight, one.auwG.mid)
    return { ...one, hover }
  }
  const { printed, allUpG } = sum
  return {
    printed: side({
      massG: printed.massG,
      cost: printed.cost,
      printS: printed.timeS,
      waitDays: 0,
      auwG: allUpG,
    }),
    cut: cut.size > 0 ? side(cutSide(sum, cut, deliveryDays)) : null,
    bought: bought
      ? side({
          massG: exactRange(bought.massG),
          cost: exactRange(bought.price),
          printS: ZERO_RANGE,
          waitDays: deliveryDays,
          auwG: addRanges(exactRange(bought.massG), boughtItemsG(sum)),
        })
      : null,
  }
}

/** What is cut has its own error; what stays printed, and the items, keep the frame's. */
function cutSide(
  sum: FrameSum,
  cut: ReadonlyMap<string, FlatTwin>,
  waitDays: number,
): Omit<FrameSide, 'hover'> {
  const stays = sum.rows.map(({ part }) => part.id).filter((id) => !cut.has(id))
  const all = [...stays, ...sum.doubt.items.map(({ id }) => id)]
  const figure = (which: FrameFigure, ids: readonly string[]): Range =>
    rangeOf(sum.doubt.bell(which, 'flying', ids))
  const cutRows = sum.rows.flatMap(({ part }) => {
    const twin = cut.get(part.id)
    return twin === undefined ? [] : [{ twin, quantity: part.quantity }]
  })
  // One plate is behind them all.
  const cutG = sumRanges(
    cutRows.map(({ twin, quantity }) => scaleRange(twin.chosen.massG, quantity)),
  )
  const cutCost = cutRows.reduce((total, { twin, quantity }) => total + twin.cost * quantity, 0)
  return {
    massG: addApart(figure('mass', stays), cutG),
    cost: addRanges(figure('cost', stays), exactRange(cutCost)),
    printS: figure('time', stays),
    waitDays,
    auwG: addApart(figure('mass', all), cutG),
  }
}

function boughtItemsG({ doubt }: FrameSum): Range {
  const ids = doubt.items.map(({ id }) => id)
  return rangeOf(doubt.bell('mass', 'flying', ids))
}

function sumRanges(ranges: readonly Range[]): Range {
  return ranges.reduce(addRanges, ZERO_RANGE)
}

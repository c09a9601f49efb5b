import type { PlacedPieces } from '../../joints/placePieces.ts'
import type { Joint, JointEnd, JointFastener } from '../../model/joints.ts'
import { nutStandardOf } from './chooseScrew.ts'
import { HEADS, NUTS, THREADS, WASHERS } from './data.ts'
import type { JointHardware } from './jointHardware.ts'
import { screwAxis } from './screwSpaces.ts'

/** One thing that a screw goes through or ends in, from under its head on. mm */
export interface GripLayer {
  readonly kind: 'washer' | 'piece' | 'gap' | 'bitten' | 'nut'
  /** Of a piece, or of what the screw bites in. */
  readonly at: Pick<JointEnd, 'partId' | 'piece'> | null
  readonly fromMm: number
  readonly toMm: number
}

/** What the screws of a joint hold together, for the first of them. */
export interface GripStack {
  readonly thread: JointFastener['thread']
  readonly end: JointFastener['end']
  /** Null where no stocked one does. */
  readonly lengthMm: number | null
  readonly headMm: { readonly wide: number; readonly high: number }
  readonly shankMm: number
  readonly layers: readonly GripLayer[]
}

/** Less than this between two pieces is how meshes lie. mm */
const LEAST_GAP_MM = 0.05

/** Null where no screw ends, or a piece has no place. */
export function gripStack(
  { joint, columns, chosen }: JointHardware & { readonly joint: Joint },
  motions: PlacedPieces['motions'],
): GripStack | null {
  const [column] = columns
  const { fastener } = joint
  if (column === undefined || fastener === null || chosen === null) return null
  const { thread, end } = fastener
  const axis = screwAxis(column, end, motions)
  const head = HEADS['ISO 4762'][thread]
  if (axis === null || head === undefined) return null
  const spans = column.crossed
    .map((bore) => ({ bore, span: axis.reach([bore]) }))
    .toSorted((one, other) => other.span[1] - one.span[1])
  const washersMm = chosen.washers * WASHERS[thread].heightMm
  const seat = (spans[0]?.span[1] ?? 0) + washersMm
  const layers: GripLayer[] = []
  if (washersMm > 0) layers.push({ kind: 'washer', at: null, fromMm: 0, toMm: washersMm })
  const put = (layer: GripLayer): void => {
    const before = layers.at(-1)?.toMm ?? 0
    if (layer.fromMm - before > LEAST_GAP_MM) {
      layers.push({ kind: 'gap', at: null, fromMm: before, toMm: layer.fromMm })
    }
    layers.push(layer)
  }
  for (const { bore, span } of spans) {
    put({ kind: 'piece', at: bore.at, fromMm: seat - span[1], toMm: seat - span[0] })
  }
  const { bitten } = column
  if (bitten !== null) {
    const [low, high] = axis.reach([bitten])
    put({ kind: 'bitten', at: bitten.at, fromMm: seat - high, toMm: seat - low })
  }
  const nut = end === 'nut' ? NUTS[nutStandardOf(thread)][thread] : undefined
  const last = layers.at(-1)?.toMm ?? 0
  if (nut !== undefined) layers.push({ kind: 'nut', at: null, fromMm: last, toMm: last + nut[1] })
  return {
    thread,
    end,
    lengthMm: chosen.lengthMm,
    headMm: { wide: head.widthMm, high: head.heightMm },
    shankMm: THREADS[thread].diameterMm,
    layers,
  }
}

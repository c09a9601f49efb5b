import type { Anchor, Anchors } from './types.ts'

export type Side = keyof Anchors

/** An item whose number wants a place beside the drawing. */
export interface LeaderAsk {
  readonly item: string
  readonly anchors: Anchors
  /** The side it had before, kept while the drawing only moves apart. */
  readonly side?: Side
}

/** Room for numbers, px: they stand in a row or column on each of these lines. */
export interface LeaderRoom {
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
  /** Least way between two numbers, one below the other and side by side. */
  readonly gapPx: number
  readonly widePx: number
}

/** A number with its leader line: from `from`, level to `knee`, straight to the anchor. px */
export interface Leader {
  readonly item: string
  readonly side: Side
  readonly number: Point
  readonly knee: Point
  readonly anchor: Point
}

export interface Point {
  readonly x: number
  readonly y: number
}

/** Level part of a line beside the drawing. px */
const SHOULDER_PX = 18
/** Passing over another item is worth as long a way round. px */
const CROSSING_PX = 120
/** No side holds more than this share of the numbers. */
const MOST_SHARE = 0.6

interface Draft {
  readonly ask: LeaderAsk
  side: Side
  /** Along its side: y on the left and right, x on top and bottom. */
  at: number
}

/**
 * Places the numbers of an assembly drawing (ISO 6433): each on the side where its line is short
 * and passes over few other items, in the order of their anchors, apart from each other, and no
 * line across another.
 */
export function placeLeaders(asks: readonly LeaderAsk[], room: LeaderRoom): readonly Leader[] {
  const drafts = asks.map((ask): Draft => ({ ask, side: ask.side ?? bestSide(ask, room), at: 0 }))
  balance(drafts, room)
  for (const side of SIDES) spread(drafts, side, room)
  uncross(drafts, room)
  return drafts.map((draft) => leaderOf(draft, room))
}

const SIDES: readonly Side[] = ['left', 'right', 'top', 'bottom']

const isColumn = (side: Side): boolean => side === 'left' || side === 'right'

function cost({ anchors }: LeaderAsk, side: Side, room: LeaderRoom): number {
  const anchor = anchors[side]
  const way = Math.abs((isColumn(side) ? anchor.x : anchor.y) - room[side])
  return way + CROSSING_PX * anchor.crossed
}

function bestSide(ask: LeaderAsk, room: LeaderRoom): Side {
  return SIDES.toSorted((a, b) => cost(ask, a, room) - cost(ask, b, room))[0] ?? 'left'
}

/** How many numbers a side has room for. */
function capacity(side: Side, room: LeaderRoom): number {
  const length = isColumn(side) ? room.bottom - room.top : room.right - room.left
  return Math.max(1, Math.floor(length / (isColumn(side) ? room.gapPx : room.widePx)))
}

/** Moves numbers off a crowded side, those first that lose least. */
function balance(drafts: readonly Draft[], room: LeaderRoom): void {
  const most = Math.max(2, Math.ceil(MOST_SHARE * drafts.length))
  const limit = (side: Side): number => Math.min(most, capacity(side, room))
  const on = (side: Side): Draft[] => drafts.filter((draft) => draft.side === side)
  for (let round = 0; round < drafts.length; round++) {
    const crowded = SIDES.find((side) => on(side).length > limit(side))
    const free = SIDES.filter((side) => on(side).length < limit(side))
    if (crowded === undefined || free.length === 0) return
    let best: { draft: Draft; side: Side; loss: number } | null = null
    for (const draft of on(crowded)) {
      for (const side of free) {
        const loss = cost(draft.ask, side, room) - cost(draft.ask, crowded, room)
        if (best === null || loss < best.loss) best = { draft, side, loss }
      }
    }
    if (best === null) return
    best.draft.side = best.side
  }
}

/** Sorted by their anchors, each as near to its own as the gap allows. */
function spread(drafts: readonly Draft[], side: Side, room: LeaderRoom): void {
  const column = isColumn(side)
  const along = (anchor: Anchor): number => (column ? anchor.y : anchor.x)
  const own = drafts
    .filter((draft) => draft.side === side)
    .toSorted((a, b) => along(a.ask.anchors[side]) - along(b.ask.anchors[side]))
  const [from, to] = column ? [room.top, room.bottom] : [room.left, room.right]
  const gap = Math.min(column ? room.gapPx : room.widePx, (to - from) / Math.max(1, own.length - 1))
  for (const [i, draft] of own.entries()) {
    const before = own[i - 1]
    const wanted = Math.min(Math.max(along(draft.ask.anchors[side]), from), to)
    draft.at = before === undefined ? wanted : Math.max(wanted, before.at + gap)
  }
  // What was pushed past the end is pushed back, and pushes those before it.
  for (let i = own.length - 1; i >= 0; i--) {
    const limit = i === own.length - 1 ? to : own[i + 1]!.at - gap
    own[i]!.at = Math.max(from, Math.min(own[i]!.at, limit))
  }
}

/**
 * Swaps the places of two numbers whose lines cross until none does; each swap shortens the two
 * together, so it ends.
 */
function uncross(drafts: readonly Draft[], room: LeaderRoom): void {
  for (let round = 0; round < drafts.length * drafts.length; round++) {
    let swapped = false
    for (const [i, a] of drafts.entries()) {
      for (const b of drafts.slice(i + 1)) {
        if (!cross(leaderOf(a, room), leaderOf(b, room))) continue
        const before = lengths(a, b, room)
        swap(a, b)
        if (lengths(a, b, room) < before - 1e-9) swapped = true
        else swap(a, b)
      }
    }
    if (!swapped) return
  }
}

function swap(a: Draft, b: Draft): void {
  ;[a.side, a.at, b.side, b.at] = [b.side, b.at, a.side, a.at]
}

function lengths(a: Draft, b: Draft, room: LeaderRoom): number {
  return [a, b].reduce((sum, draft) => {
    const { knee, anchor } = leaderOf(draft, room)
    return sum + Math.hypot(knee.x - anchor.x, knee.y - anchor.y)
  }, 0)
}

function leaderOf({ ask, side, at }: Draft, room: LeaderRoom): Leader {
  const { x, y } = ask.anchors[side]
  const anchor = { x, y }
  const { item } = ask
  if (!isColumn(side)) {
    const number = { x: at, y: room[side] }
    return { item, side, number, knee: number, anchor }
  }
  const number = { x: room[side], y: at }
  const knee = { x: room[side] + (side === 'left' ? SHOULDER_PX : -SHOULDER_PX), y: at }
  return { item, side, number, knee, anchor }
}

/** Whether two lines meet between their ends. */
export function cross(a: Leader, b: Leader): boolean {
  return LEGS.some((one) => LEGS.some((two) => meet(one(a), two(b))))
}

const LEGS: readonly ((leader: Leader) => readonly [Point, Point])[] = [
  ({ number, knee }) => [number, knee],
  ({ knee, anchor }) => [knee, anchor],
]

/** Whether two stretches run across each other. */
export function meet([a, b]: readonly [Point, Point], [c, d]: readonly [Point, Point]): boolean {
  const side = (p: Point, q: Point, r: Point): number =>
    (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x)
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0
}

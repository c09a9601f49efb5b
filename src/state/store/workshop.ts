import { PRINTER_DEFAULT } from '../../core/data/printers.ts'
import { currencyForLocale, pricesIn } from '../../core/data/prices.ts'
import type { Lesson } from '../../core/doubt/lessons.ts'
import type { Material, Prices, Printer } from '../../core/model/figures.ts'
import type { HoleReading } from '../../core/model/drill.ts'
import type { Frame, OwnRole } from '../../core/model/frame.ts'
import type { Spool } from '../../core/model/spools.ts'
import type { ShownUnits } from '../../core/words/shownUnits.ts'
import { sameValue } from './sameValue.ts'

/** What belongs to the builder and not to one frame: every new frame starts with it. */
export interface Workshop {
  readonly version: 1
  /** With its draw, its speeds and its habits; null until one was chosen or typed. */
  readonly printer: Printer | null
  /** Those that stand beside it; left out where there are none. */
  readonly printers?: readonly Printer[]
  /** Null until some were typed. */
  readonly prices: Prices | null
  /** Materials added or changed; they shadow the built-in ones by id. */
  readonly materials: readonly Material[]
  readonly roles: readonly OwnRole[]
  /** What readings taught of spools and printers. */
  readonly lessons: readonly Lesson[]
  /** Holes that were measured in any frame; left out where none was. Ids hold the frame's. */
  readonly holeReadings?: readonly HoleReading[]
  /** What is read and typed in; millimetres and grams where nothing was chosen. */
  readonly units?: ShownUnits
  /** Left out where none was put on the shelf. */
  readonly spools?: readonly Spool[]
}

export const EMPTY_WORKSHOP: Workshop = {
  version: 1,
  printer: null,
  prices: null,
  materials: [],
  roles: [],
  lessons: [],
}

/** What a frame and the workshop both hold. */
export type MineKind = 'printer' | 'printers' | 'prices' | 'materials' | 'roles'

/** That part of a frame, whatever the frame leaves out filled in. */
export type FrameMine = Pick<Frame, 'printer' | 'prices' | 'materials'> & {
  readonly roles: readonly OwnRole[]
  readonly printers: readonly Printer[]
}

/**
 * What a new frame starts with; `locale` (BCP 47) decides the currency while no prices are known.
 */
export function mineOf(workshop: Workshop, locale: string): FrameMine {
  return {
    printer: workshop.printer ?? PRINTER_DEFAULT,
    prices: workshop.prices ?? pricesIn(currencyForLocale(locale)),
    materials: workshop.materials,
    roles: workshop.roles,
    printers: workshop.printers ?? [],
  }
}

function mineIn({ printer, prices, materials, roles = [], printers = [] }: Frame): FrameMine {
  return { printer, prices, materials, roles, printers }
}

/**
 * A change of the workshop that follows a change of one frame; null where none does. While a frame
 * uses what is the builder's, whatever changes there is the builder's from then on, undo included.
 * What a frame has of its own, since it came from a file or from before, stays with the frame.
 * Materials and roles are told apart by id.
 */
export function followFrame(
  before: Frame,
  after: Frame,
  mine: FrameMine,
): ((workshop: Workshop) => Workshop) | null {
  if (before.id !== after.id) return null
  const was = mineIn(before)
  const is = mineIn(after)
  const steps: ((workshop: Workshop) => Workshop)[] = []
  if (follows(was.printer, is.printer, mine.printer)) {
    steps.push((workshop) => ({ ...workshop, printer: is.printer }))
  }
  if (follows(was.prices, is.prices, mine.prices)) {
    steps.push((workshop) => ({ ...workshop, prices: is.prices }))
  }
  for (const kind of ['materials', 'roles', 'printers'] as const) {
    const lists: Lists = { was: was[kind], is: is[kind], mine: mine[kind] }
    for (const [id, next] of changesById(lists)) {
      steps.push((workshop) => ({ ...workshop, [kind]: putById(workshop[kind] ?? [], id, next) }))
    }
  }
  return steps.length === 0
    ? null
    : (workshop) => steps.reduce((next, step) => step(next), workshop)
}

function follows<T>(was: T, is: T, mine: T): boolean {
  return was !== is && sameValue(was, mine) && !sameValue(is, mine)
}

interface Named {
  readonly id: string
}

interface Lists {
  readonly was: readonly Named[]
  readonly is: readonly Named[]
  readonly mine: readonly Named[]
}

/** Entries that follow, by id; undefined for one that is gone. */
function changesById({ was, is, mine }: Lists): readonly (readonly [string, Named | undefined])[] {
  if (was === is) return []
  const ids = new Set([...was, ...is].map(({ id }) => id))
  return [...ids].flatMap((id) => {
    const next = byId(is, id)
    return follows(byId(was, id), next, byId(mine, id)) ? [[id, next] as const] : []
  })
}

function byId(list: readonly Named[], id: string): Named | undefined {
  return list.find((each) => each.id === id)
}

/** The list with that entry in its old place, or at the end; without it where it is undefined. */
function putById(list: readonly Named[], id: string, entry: Named | undefined): readonly Named[] {
  if (entry === undefined) return list.filter((each) => each.id !== id)
  const at = list.findIndex((each) => each.id === id)
  return at === -1 ? [...list, entry] : list.with(at, entry)
}

/** How far a frame stands apart from what is the builder's. */
export interface Apart {
  /** The frame has what the builder has not, or otherwise. */
  readonly frameOnly: boolean
  /** The builder has what the frame has not, or otherwise. */
  readonly mineOnly: boolean
}

export function apartFrom(frame: Frame, mine: FrameMine, kind: MineKind): Apart {
  const here = mineIn(frame)
  if (kind === 'printer' || kind === 'prices') {
    const differs = !sameValue(here[kind], mine[kind])
    return { frameOnly: differs, mineOnly: differs }
  }
  return {
    frameOnly: !holdsAll(mine[kind], here[kind]),
    mineOnly: !holdsAll(here[kind], mine[kind]),
  }
}

function holdsAll(list: readonly Named[], wanted: readonly Named[]): boolean {
  return wanted.every((each) => sameValue(byId(list, each.id), each))
}

/**
 * The workshop with what this frame has: a printer and prices in place of the old, materials and
 * roles beside them.
 */
export function keepAsMine(workshop: Workshop, frame: Frame, kind: MineKind): Workshop {
  const here = mineIn(frame)
  if (kind === 'printer' || kind === 'prices') return { ...workshop, [kind]: here[kind] }
  return { ...workshop, [kind]: joined(workshop[kind] ?? [], here[kind]) }
}

/** The frame with what is the builder's; materials and roles that it alone has stay. */
export function takeMine(frame: Frame, mine: FrameMine, kind: MineKind): Frame {
  if (kind === 'printer' || kind === 'prices') return { ...frame, [kind]: mine[kind] }
  return { ...frame, [kind]: joined(mineIn(frame)[kind], mine[kind]) }
}

/** Both lists; where both have an id, the entry of the second. */
function joined(first: readonly Named[], second: readonly Named[]): readonly Named[] {
  return second.reduce((list, entry) => putById(list, entry.id, entry), first)
}

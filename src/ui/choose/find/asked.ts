import type { GivesLimit } from '../../../core/choose/gives/types.ts'
import type { Setting } from '../../../core/choose/variety.ts'
import type { FindAsk } from './searchFrame.ts'

/** What the fields of a search hold; null for what nobody asks. */
export interface Asked {
  readonly printedG: number | null
  readonly lessG: number | null
  readonly hours: number | null
  readonly cost: number | null
  /** Of what each part has now, 1 being all of it. */
  readonly stiffness: number | null
  readonly settings: ReadonlySet<Setting>
  readonly materialIds: readonly string[]
  readonly locked: ReadonlySet<string>
  /** Parts whose stiffness nobody asks for. */
  readonly free: ReadonlySet<string>
  /** How far parts may give and how high they must ring, by id. */
  readonly gives: ReadonlyMap<string, GivesLimit>
}

export const NOTHING_ASKED: Asked = {
  printedG: null,
  lessG: null,
  hours: null,
  cost: null,
  stiffness: null,
  settings: new Set(),
  materialIds: [],
  locked: new Set(),
  free: new Set(),
  gives: new Map(),
}

/** What the search is asked, of these parts and that printed mass. */
export function askOf(asked: Asked, partIds: readonly string[], printedG: number): FindAsk {
  const { lessG, hours, cost, stiffness, settings, materialIds, locked, free, gives } = asked
  const massG = Math.min(asked.printedG ?? Infinity, lessG === null ? Infinity : printedG - lessG)
  return {
    wants: {
      ceilings: {
        ...(massG === Infinity ? {} : { massG }),
        ...(hours === null ? {} : { timeS: 3600 * hours }),
        ...(cost === null ? {} : { cost }),
      },
      floors: new Map(stiffness === null ? [] : partIds.map((id) => [id, stiffness])),
      free,
      gives,
    },
    settings: materialIds.length > 0 ? new Set([...settings, 'material']) : settings,
    materialIds,
    locked,
  }
}

/** A part's limit with one of its two changed; null takes it off. */
export function limited(
  all: Asked['gives'],
  partId: string,
  limit: keyof GivesLimit,
  value: number | null,
): Asked['gives'] {
  const { [limit]: _, ...others } = all.get(partId) ?? {}
  const own = value === null ? others : { ...others, [limit]: value }
  const next = new Map(all)
  if (Object.keys(own).length === 0) next.delete(partId)
  else next.set(partId, own)
  return next
}

/** A set with one thing in or out. */
export function toggled<T>(all: ReadonlySet<T>, one: T, isIn: boolean): ReadonlySet<T> {
  const next = new Set(all)
  if (isIn) next.add(one)
  else next.delete(one)
  return next
}

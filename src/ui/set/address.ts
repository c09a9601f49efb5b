/** The sheets of the drawing set, in their order. */
export const SHEETS = [
  { id: 'frame', name: 'Frame' },
  { id: 'part', name: 'Part' },
  { id: 'choose', name: 'Choose' },
  { id: 'carbon', name: 'Carbon' },
  { id: 'aircraft', name: 'Aircraft' },
  { id: 'bench', name: 'Bench' },
] as const

export type SheetId = (typeof SHEETS)[number]['id']

/** A sheet, or all of them under one another as they go on paper. */
export type PlaceId = SheetId | 'paper'

/** What the page shows, as its address says it: `#/carbon`, `#/part/2`. */
export interface Address {
  readonly sheet: PlaceId
  /** Number of a part in the list, from 1; null where none is named. */
  readonly item: number | null
}

/** Reads an address; one that names no sheet is that of the frame. */
export function parseAddress(hash: string): Address {
  const [, name, number] = /^#\/(\w+)(?:\/(\d{1,5}))?\/?$/.exec(hash) ?? []
  if (name === 'paper') return { sheet: 'paper', item: null }
  const found = SHEETS.find(({ id }) => id === name)
  if (found === undefined) return { sheet: 'frame', item: null }
  const item = number === undefined ? 0 : Number(number)
  return { sheet: found.id, item: item > 0 ? item : null }
}

export function formatAddress(sheet: PlaceId, item: number | null = null): string {
  return item === null ? `#/${sheet}` : `#/${sheet}/${item}`
}

import * as v from 'valibot'
import type { Item } from '../../core/model/aircraft.ts'
import { ItemSchema } from './aircraftSchema.ts'

/**
 * The builder's own shelf: items remembered across projects. It lives in the browser's
 * localStorage, as one small list that belongs to no project; a browser that keeps nothing leaves
 * it empty.
 */
const KEY = 'preweigh.shelf'
const MOST = 500

/** What is on it, the latest first; entries that do not fit are skipped. */
export function shelfItems(): readonly Item[] {
  const kept = safely(() => localStorage.getItem(KEY))
  if (kept === null) return []
  const list: unknown = safely(() => JSON.parse(kept) as unknown)
  if (!Array.isArray(list)) return []
  return list.flatMap((each: unknown): Item[] => {
    const parsed = v.safeParse(ItemSchema, each)
    return parsed.success ? [parsed.output] : []
  })
}

/** Puts an item on the shelf, in place of one of the same name. False when the browser refuses. */
export function keepOnShelf(item: Item): boolean {
  const others = shelfItems().filter((each) => each.name !== item.name)
  return write([{ ...item, positionMm: null }, ...others].slice(0, MOST))
}

export function dropFromShelf(name: string): boolean {
  return write(shelfItems().filter((each) => each.name !== name))
}

function write(items: readonly Item[]): boolean {
  return (
    safely(() => {
      localStorage.setItem(KEY, JSON.stringify(items))
      return true
    }) ?? false
  )
}

// Browsers that block storage throw on touching it.
function safely<T>(run: () => T): T | null {
  try {
    return run()
  } catch {
    return null
  }
}

import type { Frame } from '../core/model/frame.ts'
import { materialsOf } from '../state/store/materialOf.ts'
import { UsageError } from './usage.ts'

/**
 * Ids of the parts that a name means: those of that name, or the item of that number, or all of a
 * role. Throws UsageError where it means none, naming the option that asks.
 */
export function namedParts(
  { parts }: Frame,
  option = '--find',
): (name: string) => readonly string[] {
  return (name) => {
    const wanted = name.trim().toLowerCase()
    const ways: readonly ((part: Frame['parts'][number], i: number) => boolean)[] = [
      (part) => part.name.toLowerCase() === wanted,
      (_, i) => String(i + 1) === wanted,
      (part) => part.role === wanted,
    ]
    for (const way of ways) {
      const found = parts.filter(way)
      if (found.length > 0) return found.map(({ id }) => id)
    }
    const known = parts.map((part) => part.name).join(', ')
    throw new UsageError(
      `${option}: no part is named “${name}”, has that item number or that role. There are ${known}.`,
    )
  }
}

/**
 * Ids of plastics of the frame. Throws UsageError for one it does not have, naming the option that
 * asks.
 */
export function plasticIds(
  frame: Frame,
  wanted: readonly string[],
  option = '--find',
): readonly string[] {
  const known = materialsOf(frame)
  for (const id of wanted) {
    if (known.some((one) => one.id === id)) continue
    const all = known.map((one) => one.id).join(', ')
    throw new UsageError(`${option}: there is no plastic “${id}”. Choose of ${all}.`)
  }
  return wanted
}

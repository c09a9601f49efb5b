import * as v from 'valibot'
import type { TypedLoad, TypedLoads } from '../core/aircraft/twin/loadOf.ts'
import { LOAD_LIMITS } from '../core/data/limits.ts'
import type { Frame } from '../core/model/frame.ts'
import { AXIS_NAMES, END_NAMES } from '../core/stiffness/part/chooseLoad.ts'
import { namedParts } from './namedParts.ts'
import { isJson, numberIn, parse, textOf } from './settings.ts'

const oneOf = <const T extends string>(known: readonly T[]) =>
  v.picklist(
    known,
    ({ input }) => `is ${JSON.stringify(input)}; it must be one of ${known.join(', ')}`,
  )

const LOADS = v.record(
  v.string(),
  v.strictObject(
    {
      loadN: v.optional(numberIn(LOAD_LIMITS.loadN)),
      hold: v.optional(oneOf(['auto', ...END_NAMES])),
      push: v.optional(oneOf(['auto', ...END_NAMES])),
      direction: v.optional(oneOf(['auto', ...AXIS_NAMES])),
    },
    ({ input }) => `is ${JSON.stringify(input)}; it must hold loadN, hold, push or direction`,
  ),
)

/** By how `--loads` names parts: by name, item number or role. */
export type NamedLoads = ReadonlyMap<string, TypedLoad>

/** By part id; a part that two names mean has the later one's. Throws UsageError. */
export function loadsOf(frame: Frame, loads: NamedLoads): TypedLoads {
  const named = namedParts(frame, '--loads')
  return new Map(
    [...loads].flatMap(([name, load]) => named(name).map((id): [string, TypedLoad] => [id, load])),
  )
}

/** What is left out is as the aircraft says. JSON or a file of it. Throws UsageError. */
export function loadsFrom(given: string, readText: (path: string) => string): NamedLoads {
  const text = isJson(given) ? given : textOf('--loads', 'JSON', given, readText)
  const loads = parse('--loads', LOADS, text, '{"arm": {"loadN": 12}}')
  return new Map(
    Object.entries(loads).map(([name, load]): [string, TypedLoad] => {
      const { loadN = null, hold = 'auto', push = 'auto', direction = 'auto' } = load
      return [name, { loadN, pick: { hold, push, direction } }]
    }),
  )
}

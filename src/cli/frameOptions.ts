import type { KnownHabits } from '../core/model/habits.ts'
import { findAskFrom, type FindAsk } from './findOptions.ts'
import type { Printer } from '../core/model/figures.ts'
import type { Spool } from '../core/model/spools.ts'
import { habitsFrom } from './habits.ts'
import { loadsFrom, type NamedLoads } from './loadOptions.ts'
import { spoolsFrom } from './spools.ts'
import { parseFlags } from './options.ts'
import { printersFrom } from './settings.ts'
import { UsageError } from './usage.ts'

/** A frame to price as it was saved. */
export interface FrameOptions {
  /** A demo's id or the path of a project file. */
  readonly frame: string
  readonly json: boolean
  /** All layers of every part are counted, however long that takes. */
  readonly full: boolean
  /** How every part gives is reckoned, not arms alone. */
  readonly stiffness: boolean
  /** Of its printer, over what the frame says of it. */
  readonly habits?: KnownHabits
  /**
   * What other frames taught: a file of lessons, or a project file whose readings teach; null for
   * none.
   */
  readonly lessons: string | null
  /** A search of recipes instead of the frame's own figures; null for none. */
  readonly find: FindAsk | null
  /** How parts are held and pushed, by their names; null where nobody said. */
  readonly loads: NamedLoads | null
  /** What stands on the shelf; null where nobody said. */
  readonly spools: readonly Spool[] | null
  /** Classes of printers that print it beside its own, besides those it has. */
  readonly printers: readonly Printer[]
  /** Where a coupon of its holes is written, as STL; null for none. */
  readonly coupon: string | null
}

/**
 * Null when no frame is asked for, or help. Throws UsageError: a frame says itself how its parts
 * are printed.
 */
export function parseFrameOptions(
  args: readonly string[],
  readText: (path: string) => string,
): FrameOptions | null {
  const { values, positionals } = parseFlags(args)
  const {
    frame,
    json,
    full,
    habits,
    help,
    lessons,
    loads,
    spools,
    printers,
    stiffness,
    find,
    coupon,
    ...others
  } = values
  if (frame === undefined || help === true) return null
  if (frame === '') throw new UsageError('--frame needs a project file, or demo; see --help.')
  if (positionals.length > 0) {
    throw new UsageError(
      `--frame prices the parts of one frame; “${positionals[0]}” besides it is too much. Leave one out.`,
    )
  }
  const [other] = Object.keys(others)
  if (other !== undefined) {
    throw new UsageError(
      '--frame takes recipes, materials, quantities, printer and prices from the frame; ' +
        `--${other} cannot be given with it.`,
    )
  }
  if (coupon === '') throw new UsageError('--coupon needs a file to write; see --help.')
  if (lessons === '') throw new UsageError('--lessons needs a file; see --help.')
  return {
    frame,
    json: json === true,
    full: full === true,
    stiffness: stiffness === true,
    lessons: lessons ?? null,
    loads: loads === undefined ? null : loadsFrom(loads, readText),
    find: find === undefined ? null : findAskFrom(find),
    spools: spools === undefined ? null : spoolsFrom(spools, readText),
    printers: printers === undefined ? [] : printersFrom(printers),
    coupon: coupon ?? null,
    ...(habits === undefined ? {} : { habits: habitsFrom(habits, readText) }),
  }
}

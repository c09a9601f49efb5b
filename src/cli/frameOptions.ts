import type { KnownHabits } from '../core/model/habits.ts'
import { habitsFrom } from './habits.ts'
import { parseFlags } from './options.ts'
import { UsageError } from './usage.ts'

/** A frame to price as it was saved. */
export interface FrameOptions {
  /** A demo's id or the path of a project file. */
  readonly frame: string
  readonly json: boolean
  /** All layers of every part are counted, however long that takes. */
  readonly full: boolean
  /** Of its printer, over what the frame says of it. */
  readonly habits?: KnownHabits
  /** What other frames taught: a file of lessons, or a project file whose readings teach; null for none. */
  readonly lessons: string | null
}

/** Null when no frame is asked for, or help. Throws UsageError: a frame says itself how its parts are printed. */
export function parseFrameOptions(
  args: readonly string[],
  readText: (path: string) => string,
): FrameOptions | null {
  const { values, positionals } = parseFlags(args)
  const { frame, json, full, habits, help, lessons, ...others } = values
  if (frame === undefined || help === true) return null
  if (frame === '') throw new UsageError('--frame needs a project file, or demo; see --help.')
  if (positionals.length > 0) {
    throw new UsageError(
      `--frame prices the parts of one frame; “${positionals[0]}” besides it is too much. Leave out one of the two.`,
    )
  }
  const [other] = Object.keys(others)
  if (other !== undefined) {
    throw new UsageError(
      '--frame takes recipes, materials, quantities, printer and prices from the frame; ' +
        `--${other} cannot be given with it.`,
    )
  }
  if (lessons === '') throw new UsageError('--lessons needs a file; see --help.')
  return {
    frame,
    json: json === true,
    full: full === true,
    lessons: lessons ?? null,
    ...(habits === undefined ? {} : { habits: habitsFrom(habits, readText) }),
  }
}

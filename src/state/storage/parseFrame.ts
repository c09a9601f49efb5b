import * as v from 'valibot'
import { AIRCRAFT_DEFAULTS } from '../../core/data/aircraft.ts'
import { PRINTERS_MOST, VARIANTS_MOST } from '../../core/data/limits.ts'
import { RUNS_DEFAULTS } from '../../core/data/runs.ts'
import { MATERIALS } from '../../core/data/materials.ts'
import type { Material } from '../../core/model/figures.ts'
import type { Frame, Part, WeighIn } from '../../core/model/frame.ts'
import type { Outcome, Problem } from '../../core/model/problem.ts'
import { emptyFrame, NEW_FRAME_NAME } from '../store/emptyFrame.ts'
import { createKeep, firstIssue, keepList, nameOf } from './keepSound.ts'
import { moneyByHour } from './moneyByHour.ts'
import { weighInsToParts } from './weighInsToParts.ts'
import { zonesToList } from './zonesToList.ts'
import { parseAircraft } from './parseAircraft.ts'
import { withJoints } from './withJoints.ts'
import {
  CarbonSchema,
  ClocksSchema,
  HoleReadingsSchema,
  LaidSchema,
  FrameShellSchema,
  MaterialSchema,
  NameSchema,
  OwnRoleSchema,
  PartSchema,
  PricesSchema,
  PrinterSchema,
  RunsSchema,
  VariantSchema,
  WeighInSchema,
  WholesSchema,
} from './schema.ts'

/** A frame from outside and what in it was not sound, each in a sentence. */
export interface ParsedFrame {
  readonly frame: Frame
  readonly complaints: readonly string[]
}

const PRESENT_VERSION = 8

/** Turns a frame of version n (the key) into one of version n + 1. */
const MIGRATIONS: Readonly<Record<number, (old: unknown) => unknown>> = {
  // The aircraft beyond its printed parts came with version 2.
  1: (old) => ({ ...(old as object), version: 2, aircraft: AIRCRAFT_DEFAULTS }),
  2: moneyByHour,
  3: weighInsToParts,
  4: zonesToList,
  5: withJoints,
  // Joints may stand on posts since version 7; what was before is still so. What holes are for and
  // how they came out is left out where nobody said.
  6: (old) => ({ ...(old as object), version: 7 }),
  // Bought items may have a body since version 8, which joints hold as they hold parts; others
  // print it beside its printer, and parts may be coupons. Before, none had, did or was.
  7: (old) => ({ ...(old as object), version: 8 }),
}

/** Reads a frame that may be old, damaged or made up; keeps what is sound. Never throws. */
export function parseFrame(value: unknown): Outcome<ParsedFrame> {
  const current = migrate(value)
  if (!current.ok) return current
  const shell = v.safeParse(FrameShellSchema, current.value)
  if (!shell.success) return { ok: false, problem: badFrame(firstIssue(shell.issues)) }

  const complaints: string[] = []
  const keep = createKeep(complaints)

  const { id, parts, materials, printer, prices, carbon, aircraft } = shell.output
  const { printers, wholes, clocks, laid, holeReadings, roles, runs, variants } = shell.output
  const name = keep(NameSchema, shell.output.name, 'The name of the frame', NEW_FRAME_NAME)
  const empty = emptyFrame(id)
  const soundParts = parts.flatMap((part, index): Part[] => {
    const sound = keep<Part | null>(PartSchema, part, `Part ${nameOf(part, index)}`, null)
    if (sound === null) return []
    const { weighIn } = v.parse(v.object({ weighIn: v.optional(v.unknown()) }), part)
    if (weighIn === undefined) return [sound]
    const what = `The weigh-in of “${sound.name}”`
    const weighed = keep<WeighIn | null>(WeighInSchema, weighIn, what, null)
    return [weighed === null ? sound : { ...sound, weighIn: weighed }]
  })
  const soundMaterials = keepList(keep, MaterialSchema, materials, 'Material')
  const frame: Frame = {
    version: PRESENT_VERSION,
    id,
    name,
    parts: withMaterials(uniqueById(soundParts, complaints), soundMaterials, complaints),
    materials: soundMaterials,
    ...(roles === undefined ? {} : { roles: keepList(keep, OwnRoleSchema, roles, 'Role') }),
    printer: keep(PrinterSchema, printer, 'The printer', empty.printer),
    ...(printers === undefined
      ? {}
      : { printers: keepList(keep, PrinterSchema, printers, 'Printer').slice(0, PRINTERS_MOST) }),
    prices: keep(PricesSchema, prices, 'The list of prices', empty.prices),
    carbon: keep(v.nullable(CarbonSchema), carbon, 'The carbon frame', null),
    aircraft: parseAircraft(aircraft, keep),
    ...(wholes === undefined
      ? {}
      : { wholes: keep(WholesSchema, wholes, 'The weighings of the whole', []) }),
    ...(clocks === undefined ? {} : { clocks: keep(ClocksSchema, clocks, 'The clock times', []) }),
    ...(laid === undefined ? {} : { laid: keep(LaidSchema, laid, 'The printer files', []) }),
    ...(holeReadings === undefined
      ? {}
      : { holeReadings: keep(HoleReadingsSchema, holeReadings, 'The measured holes', []) }),
    ...(runs === undefined
      ? {}
      : { runs: keep(RunsSchema, runs, 'The way of printing', RUNS_DEFAULTS) }),
    ...(variants === undefined
      ? {}
      : { variants: keepList(keep, VariantSchema, variants, 'Variant').slice(0, VARIANTS_MOST) }),
  }
  return { ok: true, value: { frame, complaints } }
}

function migrate(value: unknown): Outcome<unknown> {
  let current = value
  for (;;) {
    const version = v.safeParse(v.object({ version: v.pipe(v.number(), v.integer()) }), current)
    if (!version.success) return { ok: false, problem: badFrame('it states no version') }
    const at = version.output.version
    if (at === PRESENT_VERSION) return { ok: true, value: current }
    const step = MIGRATIONS[at]
    if (step === undefined) return { ok: false, problem: otherVersion(at) }
    current = step(current)
  }
}

/** Two parts of one id could not be told apart; the later ones go. */
function uniqueById(parts: readonly Part[], complaints: string[]): readonly Part[] {
  const seen = new Set<string>()
  return parts.filter((part) => {
    const isNew = !seen.has(part.id)
    if (!isNew) complaints.push(`Part “${part.name}” has the id of another part and was left out.`)
    seen.add(part.id)
    return isNew
  })
}

/** A part of a material that nobody can know counts as the first built-in one, and that is said. */
function withMaterials(
  parts: readonly Part[],
  materials: readonly Material[],
  complaints: string[],
): readonly Part[] {
  const known = new Set([...MATERIALS, ...materials].map(({ id }) => id))
  const [instead] = MATERIALS
  return parts.map((part) => {
    if (instead === undefined || known.has(part.materialId)) return part
    complaints.push(
      `“${part.name}” is of the material “${part.materialId}”, which the frame does not hold; ` +
        `it counts as ${instead.name}.`,
    )
    return { ...part, materialId: instead.id }
  })
}

function badFrame(reason: string): Problem {
  return {
    code: 'bad-project',
    message: `This is not a frame this page can read: ${reason}.`,
    advice: 'Choose a file saved here with “Save project”, or start anew from the mesh files.',
  }
}

function otherVersion(version: number): Problem {
  return {
    code: 'bad-project',
    message: `This frame was saved in version ${version} of the file; this Preweigh reads version ${PRESENT_VERSION}.`,
    advice:
      version > PRESENT_VERSION
        ? 'A newer Preweigh saved it: reload the page, or get the newer program, then open the file again.'
        : 'Start anew from the mesh files.',
  }
}

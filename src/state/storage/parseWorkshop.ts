import * as v from 'valibot'
import { PRINTERS_MOST } from '../../core/data/limits.ts'
import type { Prices, Printer } from '../../core/model/figures.ts'
import type { ShownUnits } from '../../core/words/shownUnits.ts'
import { EMPTY_WORKSHOP, type Workshop } from '../store/workshop.ts'
import { createKeep, keepList } from './keepSound.ts'
import { parseLessons } from './lessonSchema.ts'
import {
  HoleReadingsSchema,
  MaterialSchema,
  OwnRoleSchema,
  PricesSchema,
  PrinterSchema,
  SpoolSchema,
} from './schema.ts'

/** A workshop from storage and what in it was not sound, each in a sentence. */
export interface ParsedWorkshop {
  readonly workshop: Workshop
  readonly complaints: readonly string[]
}

const ShellSchema = v.object({
  version: v.literal(EMPTY_WORKSHOP.version),
  printer: v.unknown(),
  printers: v.optional(v.array(v.unknown())),
  prices: v.unknown(),
  materials: v.array(v.unknown()),
  roles: v.array(v.unknown()),
  lessons: v.array(v.unknown()),
  units: v.optional(v.unknown()),
  spools: v.optional(v.array(v.unknown())),
  holeReadings: v.optional(v.unknown()),
})

const UnitsSchema = v.object({ length: v.picklist(['mm', 'in']), mass: v.picklist(['g', 'oz']) })

/** Reads a workshop that may be damaged, null for none yet; keeps what is sound. Never throws. */
export function parseWorkshop(kept: unknown): ParsedWorkshop {
  const complaints: string[] = []
  if (kept === null) return { workshop: EMPTY_WORKSHOP, complaints }
  const keep = createKeep(complaints)
  const shell = keep(ShellSchema, kept, 'Your workshop', { ...EMPTY_WORKSHOP } as never)
  const units = keep<ShownUnits | null>(
    v.nullable(UnitsSchema),
    shell.units ?? null,
    'Your choice of units',
    null,
  )
  const workshop: Workshop = {
    version: EMPTY_WORKSHOP.version,
    printer: keep<Printer | null>(v.nullable(PrinterSchema), shell.printer, 'Your printer', null),
    prices: keep<Prices | null>(
      v.nullable(PricesSchema),
      shell.prices,
      'Your list of prices',
      null,
    ),
    materials: keepList(keep, MaterialSchema, shell.materials, 'Material'),
    roles: keepList(keep, OwnRoleSchema, shell.roles, 'Role'),
    lessons: parseLessons(shell.lessons) ?? [],
    ...(shell.printers === undefined
      ? {}
      : {
          printers: keepList(keep, PrinterSchema, shell.printers, 'Printer').slice(
            0,
            PRINTERS_MOST,
          ),
        }),
    ...(units === null ? {} : { units }),
    ...(shell.spools === undefined
      ? {}
      : { spools: keepList(keep, SpoolSchema, shell.spools, 'Spool') }),
    ...(shell.holeReadings === undefined
      ? {}
      : { holeReadings: keep(HoleReadingsSchema, shell.holeReadings, 'Your measured holes', []) }),
  }
  return { workshop, complaints }
}

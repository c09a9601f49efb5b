import * as v from 'valibot'
import { PRINTERS_MOST, VARIANTS_MOST } from '../../core/data/limits.ts'
import { MATERIALS } from '../../core/data/materials.ts'
import type { Frame, Part } from '../../core/model/frame.ts'
import { mend } from './mend.ts'
import { parseAircraft } from './parseAircraft.ts'
import {
  CarbonSchema,
  ClocksSchema,
  HoleReadingsSchema,
  LaidSchema,
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

function isHeld({ materials }: Frame, id: string): boolean {
  return [...materials, ...MATERIALS].some((each) => each.id === id)
}

/**
 * What of a changed frame a saved file would not give back as it is, in a sentence; null where it
 * would give all of it. Only what changed since `before` is looked at.
 */
export function whyNotKept(before: Frame, next: Frame): string | null {
  let found: string | null = null
  function check(schema: v.GenericSchema, value: unknown, what: string): void {
    if (found !== null || v.is(schema, value)) return
    const notes = mend(schema, value)?.notes ?? ['it holds what no frame can']
    found = `Nothing was changed: ${what} is out of range (${notes.map(withoutOutcome).join('; ')}).`
  }
  if (next.name !== before.name) check(NameSchema, next.name, 'the name of the frame')
  const old = new Set<Part>(before.parts)
  for (const part of next.parts) {
    if (old.has(part)) continue
    const name = `“${part.name.slice(0, 40)}”`
    check(PartSchema, part, name)
    if (!isHeld(next, part.materialId)) {
      found ??= `Nothing was changed: ${name} would be of a material that the frame does not hold.`
    }
    if (part.weighIn !== undefined) {
      check(WeighInSchema, part.weighIn, `the weigh-in of “${part.name}”`)
    }
  }
  if (next.materials !== before.materials) {
    for (const each of next.materials) check(MaterialSchema, each, `“${each.name}”`)
  }
  if (next.roles !== undefined && next.roles !== before.roles) {
    for (const each of next.roles)
      check(OwnRoleSchema, each, `the role “${each.name.slice(0, 40)}”`)
  }
  if (next.printer !== before.printer) {
    check(PrinterSchema, next.printer, 'the printer')
  }
  if (next.printers !== undefined && next.printers !== before.printers) {
    if (next.printers.length > PRINTERS_MOST) {
      found ??= `Nothing was changed: at most ${PRINTERS_MOST} other printers are kept.`
    }
    for (const each of next.printers) check(PrinterSchema, each, `“${each.name.slice(0, 40)}”`)
  }
  if (next.prices !== before.prices) check(PricesSchema, next.prices, 'a price')
  if (next.carbon !== null) check(CarbonSchema, next.carbon, 'the carbon frame')
  if (next.aircraft !== before.aircraft) {
    parseAircraft(next.aircraft, (schema, value, what) => {
      check(schema, value, what)
      return value as never
    })
  }
  if (next.wholes !== undefined) check(WholesSchema, next.wholes, 'a weighing')
  if (next.clocks !== undefined) check(ClocksSchema, next.clocks, 'a clock time')
  if (next.laid !== undefined) check(LaidSchema, next.laid, 'a printer file')
  if (next.holeReadings !== undefined) {
    check(HoleReadingsSchema, next.holeReadings, 'a measured hole')
  }
  if (next.runs !== undefined) check(RunsSchema, next.runs, 'a setting of the print runs')
  if (next.variants !== undefined && next.variants !== before.variants) {
    if (next.variants.length > VARIANTS_MOST) {
      found ??= `Nothing was changed: at most ${VARIANTS_MOST} variants are kept.`
    }
    for (const each of next.variants)
      check(VariantSchema, each, `the variant “${each.name.slice(0, 40)}”`)
  }
  return found
}

/** "layerMm was 5, 2 was taken" without its second half: here nothing was taken. */
function withoutOutcome(note: string): string {
  return note.replace(/, \S+ was taken$/, '').replace(/ and was cut$/, '')
}

import * as v from 'valibot'
import type { Aircraft } from '../../core/model/aircraft.ts'
import { AIRCRAFT_DEFAULTS } from '../../core/data/aircraft.ts'
import {
  FlightSchema,
  GrowthSchema,
  ItemSchema,
  JointSchema,
  LimitSchema,
  MassLineSchema,
  PlaceSchema,
  SeasonSchema,
  TwinSchema,
  WingSchema,
} from './aircraftSchema.ts'
import type { Keep } from './keepSound.ts'

const ShellSchema = v.object({
  items: v.array(v.unknown()),
  growth: v.unknown(),
  limitG: v.unknown(),
  printedLimitG: v.unknown(),
  massLines: v.array(v.unknown()),
  places: v.array(v.unknown()),
  joints: v.array(v.unknown()),
  flight: v.unknown(),
  wing: v.unknown(),
  twin: v.unknown(),
  season: v.unknown(),
})

/** Reads the aircraft of a frame from outside, block by block. */
export function parseAircraft(value: unknown, keep: Keep): Aircraft {
  const empty = AIRCRAFT_DEFAULTS
  const shell = keep(ShellSchema, value, 'Everything about the aircraft', { ...empty } as never)
  const list = <T>(schema: v.GenericSchema<unknown, T>, values: readonly unknown[], what: string) =>
    values.flatMap((each, index): T[] => {
      const sound = keep<T | null>(schema, each, `${what} ${index + 1}`, null)
      return sound === null ? [] : [sound]
    })
  return {
    items: list(ItemSchema, shell.items, 'Item'),
    growth: keep(GrowthSchema, shell.growth, 'The growth allowance', empty.growth),
    limitG: keep(LimitSchema, shell.limitG, 'The mass limit', empty.limitG),
    printedLimitG: keep(
      LimitSchema,
      shell.printedLimitG,
      'The mass limit of the printed parts',
      empty.printedLimitG,
    ),
    massLines: list(MassLineSchema, shell.massLines, 'Mass line'),
    places: list(PlaceSchema, shell.places, 'Place'),
    joints: list(JointSchema, shell.joints, 'Joint'),
    flight: keep(v.nullable(FlightSchema), shell.flight, 'The flight set-up', null),
    wing: keep(v.nullable(WingSchema), shell.wing, 'The wing', null),
    twin: keep(TwinSchema, shell.twin, 'The carbon twin', empty.twin),
    season: keep(SeasonSchema, shell.season, 'The season', empty.season),
  }
}

import type { Aircraft } from './aircraft.ts'

/**
 * What flies of a sample besides the printed parts, in the page's own words; a part is told by its name where
 * the page wants an id. Growth, mass lines and the plate are the page's defaults.
 */
export type DemoAircraft = Pick<
  Aircraft,
  'items' | 'limitG' | 'printedLimitG' | 'places' | 'flight' | 'wing' | 'season'
> &
  Partial<Pick<Aircraft, 'joints'>> & {
    /** What a scale said of one piece, by part. */
    readonly weighedG: Readonly<Record<string, number>>
  }

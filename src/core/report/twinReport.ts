import type { Frame } from '../frame.ts'
import { weighedMassG } from '../ledger/ledger.ts'
import { exactRange } from '../ranges.ts'
import { frameSides } from '../twin/sides.ts'
import { hoveringSetup } from './hoveringSetup.ts'
import { seasonReport } from './seasonReport.ts'
import { twinEntry } from './twinEntry.ts'
import type { ReportPart, SeasonReport, TwinReport } from './types.ts'

/** The frame beside its carbon twins, and a season on both. */
export function twinReport(
  parts: readonly ReportPart[],
  { aircraft, carbon }: Frame,
): { readonly twin: TwinReport; readonly season: SeasonReport } {
  const twins = parts.flatMap((one) => twinEntry(one, aircraft.twin) ?? [])
  const sides = frameSides({
    lines: parts.map(({ part, figures }) => {
      const weighedG = weighedMassG(aircraft.weighedG, part.id)
      const massG = weighedG === null ? figures.massG : exactRange(weighedG)
      return {
        quantity: part.quantity,
        printed: { ...figures, massG },
        twin: twins.find(({ partId }) => partId === part.id)?.twin ?? null,
      }
    }),
    bought: carbon,
    restG: aircraft.items.reduce((sum, item) => sum + item.quantity * item.massG, 0),
    deliveryDays: aircraft.twin.deliveryDays,
    flight: hoveringSetup(aircraft),
  })
  return {
    twin: { plate: aircraft.twin.plate, parts: twins, sides },
    season: seasonReport(aircraft.season, parts, twins, sides, carbon),
  }
}

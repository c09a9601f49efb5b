import * as v from 'valibot'
import { MATERIALS } from '../../core/data/materials.ts'

const Loose = v.looseObject({})
const OldFrame = v.looseObject({
  materials: v.fallback(v.array(v.unknown()), []),
  prices: v.fallback(Loose, {}),
})

/**
 * Hours of the print that an old share of failed prints is taken to be of (common practice, no
 * source).
 */
const USUAL_PRINT_HOURS = 2.5
const FALLBACK_ID = 'pla'

/**
 * Version 2 to 3, of what things cost. A share of failed prints, the same for short and long ones,
 * becomes a share of each hour: as many fail of prints of two and a half hours. Plastics get the
 * temperatures that they are usually printed at.
 */
export function moneyByHour(old: unknown): unknown {
  const frame = v.parse(OldFrame, old)
  const { failurePct, ...prices } = frame.prices
  return {
    ...frame,
    version: 3,
    prices: { ...prices, ...hourly(failurePct) },
    materials: frame.materials.map(withHeat),
  }
}

function hourly(failurePct: unknown): { readonly failurePctPerHour?: number } {
  if (typeof failurePct !== 'number' || !(failurePct >= 0 && failurePct < 100)) return {}
  const rate = 100 * (1 - (1 - failurePct / 100) ** (1 / USUAL_PRINT_HOURS))
  return { failurePctPerHour: Number(rate.toFixed(2)) }
}

function withHeat(material: unknown): unknown {
  const read = v.safeParse(Loose, material)
  if (!read.success) return material
  const usual =
    MATERIALS.find(({ id }) => id === read.output['id']) ??
    MATERIALS.find(({ id }) => id === FALLBACK_ID)
  return { nozzleC: usual?.nozzleC, bedC: usual?.bedC, ...read.output }
}

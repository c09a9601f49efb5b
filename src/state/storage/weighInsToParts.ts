import * as v from 'valibot'
import { MATERIALS } from '../../core/data/materials.ts'

const Loose = v.looseObject({})
const OldFrame = v.looseObject({
  parts: v.fallback(v.array(v.unknown()), []),
  materials: v.fallback(v.array(v.unknown()), []),
  printer: v.fallback(Loose, {}),
  aircraft: v.fallback(Loose, {}),
})

/**
 * Version 3 to 4. Weighings stood beside the parts, by part id, and stood for the part whatever
 * became of it. Now each says what it was taken of: as far as an old file knows, the part as the
 * file has it. What was calculated then, the day and the scale are not known. The limit of the
 * printed parts is new.
 */
export function weighInsToParts(old: unknown): unknown {
  const frame = v.parse(OldFrame, old)
  const { weighedG, ...aircraft } = frame.aircraft
  const weighed = v.parse(v.fallback(Loose, {}), weighedG)
  const flows = flowsOf(frame.materials)
  const printerId = frame.printer['id']
  return {
    ...frame,
    version: 4,
    aircraft: { ...aircraft, printedLimitG: null },
    parts: frame.parts.map((each) => {
      const part = v.safeParse(v.looseObject({ id: v.string() }), each)
      if (!part.success || !Object.hasOwn(weighed, part.output.id)) return each
      const { id, meshHash, unit, pose, recipe, zone, materialId } = part.output
      const zoneHash = v.parse(v.fallback(Loose, {}), zone)['meshHash'] ?? null
      const flow = flows.get(materialId) ?? 1
      const of = { meshHash, unit, pose, recipe, zoneHash, materialId, flow, printerId }
      const weighIn = { massG: weighed[id], stepG: null, date: null, of, calculatedG: null }
      return { ...part.output, weighIn }
    }),
  }
}

/** Flow by material, the frame's own before the built-in ones. */
function flowsOf(own: readonly unknown[]): ReadonlyMap<unknown, unknown> {
  const flows = new Map<unknown, unknown>(MATERIALS.map(({ id, flow }) => [id, flow]))
  for (const material of own) {
    const read = v.safeParse(v.object({ id: v.string(), flow: v.number() }), material)
    if (read.success) flows.set(read.output.id, read.output.flow)
  }
  return flows
}

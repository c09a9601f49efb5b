import * as v from 'valibot'

const Loose = v.looseObject({})
const OldFrame = v.looseObject({ parts: v.fallback(v.array(v.unknown()), []) })

/** What a zone had for infill where the recipe did not say. */
const OLD_ZONE_PCT = 100

/**
 * Version 4 to 5. A part had one zone at most, and its infill stood in the recipe, whether there
 * was a zone or not. Now it has a list of them, each with its own; the same for what lay on the
 * scale.
 */
export function zonesToList(old: unknown): unknown {
  const frame = v.parse(OldFrame, old)
  return { ...frame, version: 5, parts: frame.parts.map(partWithList) }
}

function partWithList(old: unknown): unknown {
  const part = v.safeParse(Loose, old)
  if (!part.success) return old
  const { zone, recipe, weighIn, ...rest } = part.output
  const { plain, pct } = withoutPct(recipe)
  const own = v.safeParse(Loose, zone)
  const zones = own.success ? [{ ...own.output, infillPct: pct }] : []
  const scale = weighIn === undefined ? {} : { weighIn: weighInWithList(weighIn) }
  return { ...rest, recipe: plain, zones, ...scale }
}

function weighInWithList(old: unknown): unknown {
  const weighIn = v.safeParse(v.looseObject({ of: Loose }), old)
  if (!weighIn.success) return old
  const { zoneHash, recipe, ...of } = weighIn.output.of
  const { plain, pct } = withoutPct(recipe)
  const zones = typeof zoneHash !== 'string' ? [] : [{ meshHash: zoneHash, infillPct: pct }]
  return { ...weighIn.output, of: { ...of, recipe: plain, zones } }
}

function withoutPct(recipe: unknown): { readonly plain: unknown; readonly pct: unknown } {
  const read = v.safeParse(Loose, recipe)
  if (!read.success) return { plain: recipe, pct: OLD_ZONE_PCT }
  const { zonePct = OLD_ZONE_PCT, ...plain } = read.output
  return { plain, pct: zonePct }
}

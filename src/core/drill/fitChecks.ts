import { THREADS } from '../aircraft/hardware/data.ts'
import { GROOVE_SLACK_MM, NECK_SQUEEZE } from '../data/drills.ts'
import { findPatterns, patternName, type FoundPattern } from '../mesh/holes/patterns.ts'
import type { Item } from '../model/aircraft.ts'
import type { DrillPart, DrillRow } from './types.ts'
import { mm } from '../words/mm.ts'

export type FitVerdict = 'fits' | 'does not fit' | 'is short' | 'not told'

/** One thing to look at before anything is ordered. */
export interface FitCheck {
  readonly what: string
  readonly verdict: FitVerdict
  /** Metric, in sentences. */
  readonly words: string
  /** Of a bought item that is bolted by a pattern; null for the rest. */
  readonly itemId: string | null
}

/** Items that are bolted by a pattern of holes, and what holds them, by what people call them. */
const BOLTED = /\b(motor|controller|board|stack|camera|gps)s?\b/i
const HOLDS = /\b(damper|grommet|screw|mount|strap|wire|cable)s?\b/i

/**
 * What was drawn against what will be bought: bolts and inserts against their holes, necks of
 * dampers against hole and plate, patterns of motors, boards and cameras against those of the
 * parts, and what is short.
 */
export function fitChecks(
  rows: readonly DrillRow[],
  parts: readonly DrillPart[],
  items: readonly Item[],
): readonly FitCheck[] {
  return [
    ...boltChecks(rows),
    ...damperChecks(rows),
    ...damperCount(rows, parts, items),
    ...patternChecks(parts, items),
  ]
}

/** Part by part; a guess by the diameter always fits, so only what is known is told. */
function boltChecks(rows: readonly DrillRow[]): readonly FitCheck[] {
  const known = rows.filter(({ use, known: by }) => 'thread' in use && by !== 'guess')
  const names = [...new Set(known.map(({ part }) => part))]
  const wrong = names.flatMap((part): readonly FitCheck[] => {
    const faults = known.flatMap((row) => (row.part === part ? (boltFault(row) ?? []) : []))
    if (faults.length === 0) return []
    const words = [...new Set(faults)].join(' ')
    return [{ what: `Bolts in ${part}`, verdict: 'does not fit', words, itemId: null }]
  })
  const right = known.filter((row) => boltFault(row) === null)
  if (right.length === 0) return wrong
  const holes = right.length === 1 ? '1 hole' : `${right.length} holes`
  const words = `${holes} whose bolts are known by joint or choice.`
  return [...wrong, { what: 'Bolts', verdict: 'fits', words, itemId: null }]
}

function boltFault({ use, number, diameterMm, wantedMm }: DrillRow): string | null {
  if (!('thread' in use) || wantedMm === null) return null
  const { thread, kind } = use
  const boltMm = THREADS[thread].diameterMm
  const at = `Hole ${number} is ${mm(diameterMm)} mm`
  if (kind === 'screw' && diameterMm < boltMm) return `${at}: ${thread} does not pass.`
  if (kind === 'tapped' && diameterMm >= boltMm) return `${at}: no thread for ${thread} to bite in.`
  if (kind === 'insert' && Math.abs(diameterMm - wantedMm) > INSERT_OFF_MM) {
    return `${at}: an ${thread} insert wants ${mm(wantedMm)} mm.`
  }
  return null
}

/** Inserts of one thread differ by less from maker to maker (common practice, no source). mm */
const INSERT_OFF_MM = 0.4

/** A neck stays where rubber is squeezed a little; a bore of its own number lets it fall out. */
function damperChecks(rows: readonly DrillRow[]): readonly FitCheck[] {
  const seen = new Set<string>()
  return rows.flatMap((row): readonly FitCheck[] => {
    const { use, part, group, hole, drillMm, comesOutMm } = row
    if (use.kind !== 'damper' || seen.has(`${part} ${group}`)) return []
    seen.add(`${part} ${group}`)
    const { neckMm, grooveMm } = use
    const holeMm = drillMm ?? comesOutMm.mid
    const squeeze = 1 - holeMm / neckMm
    const plateMm = hole.depthMm
    const faults: string[] = []
    if (squeeze < NECK_SQUEEZE.least) {
      faults.push(
        `A neck of ${mm(neckMm)} mm is loose in ${mm(holeMm)} mm: a bore of the same number is no fit.`,
      )
    } else if (squeeze > NECK_SQUEEZE.most) {
      faults.push(`A neck of ${mm(neckMm)} mm is pinched in ${mm(holeMm)} mm.`)
    }
    if (grooveMm !== null && Math.abs(grooveMm - plateMm) > GROOVE_SLACK_MM + 1e-9) {
      faults.push(
        `Its groove is ${mm(grooveMm)} mm ${grooveMm < plateMm ? 'narrow' : 'wide'}, ` +
          `the plate ${mm(plateMm)} mm thick.`,
      )
    }
    const what = `Damper in ${part}, hole ${group}`
    if (faults.length > 0) {
      return [{ what, verdict: 'does not fit', words: faults.join(' '), itemId: null }]
    }
    if (grooveMm === null) {
      const words = `Its groove is not told; the plate is ${mm(plateMm)} mm thick.`
      return [{ what, verdict: 'not told', words, itemId: null }]
    }
    const words = `Neck ${mm(neckMm)} mm in ${mm(holeMm)} mm, groove ${mm(grooveMm)} mm on ${mm(plateMm)} mm.`
    return [{ what, verdict: 'fits', words, itemId: null }]
  })
}

function damperCount(
  rows: readonly DrillRow[],
  parts: readonly DrillPart[],
  items: readonly Item[],
): readonly FitCheck[] {
  const pieces = new Map(parts.map(({ part }) => [part.id, part.quantity]))
  const holes = rows
    .filter(({ use }) => use.kind === 'damper')
    .reduce((sum, { partId }) => sum + (pieces.get(partId) ?? 0), 0)
  const bought = items
    .filter(({ name }) => /\b(damper|grommet)s?\b/i.test(name))
    .reduce((sum, { quantity }) => sum + quantity, 0)
  if (holes === 0 || bought === 0) return []
  const words = `${holes} holes for dampers, ${bought} dampers bought.`
  return [{ what: 'Dampers', verdict: bought < holes ? 'is short' : 'fits', words, itemId: null }]
}

interface Standing extends FoundPattern {
  readonly part: string
  /** Of its part that fly. */
  readonly pieces: number
}

function patternChecks(parts: readonly DrillPart[], items: readonly Item[]): readonly FitCheck[] {
  const standing = parts.flatMap(({ part, found }): readonly Standing[] => {
    const bores = found.holes
      .filter(({ shape }) => shape === 'round')
      .map(({ axis, centreMm, diameterMm }) => ({ axis, centre: centreMm, diameter: diameterMm }))
    return findPatterns(bores, 1).map((each) => ({
      ...each,
      part: part.name,
      pieces: part.quantity,
    }))
  })
  return items.flatMap((item): readonly FitCheck[] => {
    const { id: itemId, name: what, quantity } = item
    const boltPattern = boltPatternOf(item)
    if (boltPattern === undefined) {
      if (!BOLTED.test(what) || HOLDS.test(what)) return []
      const words = `By which holes is it bolted? ${hereWords(standing)}`
      return [{ what, verdict: 'not told', words, itemId }]
    }
    const own = standing.filter((each) => patternName(each) === boltPattern)
    const places = own.reduce((sum, { pieces }) => sum + pieces, 0)
    const where = [...new Set(own.map(({ part, holeMm }) => `${part} (Ø ${mm(holeMm)} mm)`))]
    if (places === 0) {
      const words = `No part has four holes on ${boltPattern} mm. ${hereWords(standing)}`
      return [{ what, verdict: 'does not fit', words, itemId }]
    }
    const words = `${quantity} bought; ${boltPattern} mm is there ${times(places)}, on ${where.join(', ')}.`
    return [{ what, verdict: places < quantity ? 'is short' : 'fits', words, itemId }]
  })
}

function hereWords(standing: readonly Standing[]): string {
  const here = [...new Set(standing.map((each) => `${patternName(each)} mm on ${each.part}`))]
  return here.length === 0 ? 'No part has a pattern of four.' : `Here are ${here.join(', ')}.`
}

/** The pattern an item is bolted by: that of its body, else what was chosen. */
export function boltPatternOf({ body, boltPattern }: Item): string | undefined {
  const holes = body?.holes ?? null
  if (holes === null || holes.layout === 'sides') return boltPattern
  const { layout, aMm, bMm } = holes
  return patternName({ layout, aMm: Math.min(aMm, bMm), bMm: Math.max(aMm, bMm) })
}

const times = (count: number): string => (count === 1 ? 'once' : `${count} times`)

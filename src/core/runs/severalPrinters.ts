import type { RunWay } from '../model/runs.ts'
import { layersTime } from '../figures/layerSeconds.ts'
import { goesOn } from './nest.ts'
import { planBeds, type RunPart, type RunWorkshop, type TimedRun } from './planBeds.ts'
import { allPrinters, bedOf } from './runPrinters.ts'
import { soonestDone } from './soonestDone.ts'

/** Pieces of one printer each, by the place of the printer. */
type Shares = readonly (readonly RunPart[])[]

/**
 * Ways to share pieces among the printers: all on one of them but what does not go on it, for each
 * of them; and spread, the longest first where they would be done first. One way where there is one
 * printer.
 */
export function dividePieces(parts: readonly RunPart[], workshop: RunWorkshop): readonly Shares[] {
  const printers = allPrinters(workshop)
  if (printers.length === 1) return [[parts]]
  const beds = printers.map((printer) => bedOf(printer, workshop.settings))
  const fits = new Map(
    parts.map(({ id, outline, brimMm }) => [id, beds.map((bed) => goesOn(outline, brimMm, bed))]),
  )
  const goes = (id: string, k: number): boolean => fits.get(id)?.[k] === true
  const onOne = printers.map((_, preferred) =>
    printers.map((__, k) =>
      parts.filter(({ id }) => {
        if (goes(id, preferred)) return k === preferred
        const first = printers.findIndex((___, other) => goes(id, other))
        return k === Math.max(0, first)
      }),
    ),
  )
  return [...onOne, spread(parts, workshop, goes)]
}

function spread(
  parts: readonly RunPart[],
  workshop: RunWorkshop,
  goes: (id: string, k: number) => boolean,
): Shares {
  const printers = allPrinters(workshop)
  const timesOf = ({ id, works }: RunPart): readonly number[] =>
    printers.map((printer, k) => {
      const work = works[printer.id]
      if (work === undefined || !goes(id, k)) return Infinity
      return layersTime(work, printer.leastLayerS) * (printer.clockFactor ?? 1)
    })
  const pieces = parts
    .flatMap((part) => {
      const timesS = timesOf(part)
      const { count, mirrored = 0 } = part
      return Array.from({ length: count }, (_, i) => ({ part, timesS, isMirror: i < mirrored }))
    })
    .toSorted((a, b) => Math.min(...b.timesS) - Math.min(...a.timesS))
  const loads = printers.map(() => 0)
  const counts = printers.map(() => new Map<RunPart, { count: number; mirrored: number }>())
  for (const { part, timesS, isMirror } of pieces) {
    const ends = timesS.map((timeS, k) => (loads[k] ?? 0) + timeS)
    const k = Math.max(0, ends.indexOf(Math.min(...ends)))
    loads[k] = ends[k] ?? 0
    const own = counts[k]?.get(part) ?? { count: 0, mirrored: 0 }
    const mirrored = own.mirrored + (isMirror ? 1 : 0)
    counts[k]?.set(part, { count: own.count + 1, mirrored })
  }
  return counts.map((own) => [...own].map(([part, share]) => ({ ...part, ...share })))
}

/**
 * The same runs, each on the printer that lets the last of all be done soonest; one that another
 * bed does not take whole stays where it was.
 */
export function passRuns(
  runs: readonly TimedRun[],
  parts: readonly RunPart[],
  workshop: RunWorkshop,
  way: RunWay,
): readonly TimedRun[] {
  const printers = allPrinters(workshop)
  const byId = new Map(parts.map((part) => [part.id, part]))
  const laid = runs.map((run) => {
    const own = partsOf(run, byId)
    const beds = own.map(({ outline, brimMm }) => ({ outline, brimMm }))
    return printers.map((printer) => {
      if (printer.id === run.printerId) return run
      const bed = bedOf(printer, workshop.settings)
      if (!beds.every(({ outline, brimMm }) => goesOn(outline, brimMm, bed))) return null
      const [one, ...more] = planBeds(own, printer, workshop, way)
      return more.length === 0 ? (one ?? null) : null
    })
  })
  const places = soonestDone(laid.map((own) => own.map((run) => run?.timeS ?? null)))
  return runs.map((run, i) => laid[i]?.[places[i] ?? 0] ?? run)
}

/** The pieces of a run as parts of their own. */
function partsOf(run: TimedRun, byId: ReadonlyMap<string, RunPart>): readonly RunPart[] {
  return [...new Set(run.spots.map(({ partId }) => partId))].flatMap((id) => {
    const part = byId.get(id)
    if (part === undefined) return []
    const own = run.spots.filter(({ partId }) => partId === id)
    const mirrored = own.filter((spot) => spot.mirrored === true).length
    return [{ ...part, count: own.length, mirrored }]
  })
}

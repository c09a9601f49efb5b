import { useEffect, useMemo, useRef, useState } from 'react'
import { loadOf, type LoadNow } from '../../../core/aircraft/twin/loadOf.ts'
import {
  beamGives,
  beamScale,
  geometryKey,
  type BeamScale,
} from '../../../core/choose/gives/beamGives.ts'
import { DRAFT_MM } from '../../../core/data/stiffness.ts'
import { laidRecipe } from '../../../core/figures/laidRecipe.ts'
import type { Recipe } from '../../../core/model/settings.ts'
import type { NoBeam, PartSections } from '../../../core/stiffness/part/sections.ts'
import { useActions, useAppState, useReadState } from '../../appContext.ts'
import type { LedgerRow } from '../../../state/store/derived.ts'
import { useKeptLoad } from './keptLoads.ts'

/**
 * So long the settings stand still before sections are asked for: the part's own count goes first,
 * ms.
 */
const QUIET_MS = 500

export interface KnownSections {
  readonly load: LoadNow
  /** As the part stands; null while it is looked at. */
  readonly own: PartSections | NoBeam | null
  /** By `geometryKey`. */
  readonly slender: ReadonlyMap<string, PartSections>
  /** By its solid model; undefined while that is asked. */
  readonly scale: BeamScale | undefined
}

/** Kept for the visit, by all that the scale hangs on but the recipe and the plastic. */
const scales = new Map<string, BeamScale | null>()
/** Any load: it is linear. N */
const SOME_N = 1
const SOFTER: NoBeam = {
  kind: 'no',
  why: 'its solid model gives more than half as much again, or less, for what holds it',
}

type Found = ReadonlyMap<string, PartSections | NoBeam>

const NONE: { readonly of: string; readonly found: Found } = { of: '', found: new Map() }

/**
 * A part as a beam, of its present geometry first and then of some others; those only where it is
 * one. Between them one sum of its solid model, by which the beam is scaled from then on, or which
 * says that it is none. What was found stays while the settings move on, so that a slider has its
 * neighbours at hand.
 */
export function useSections(row: LedgerRow, others: readonly Partial<Recipe>[]): KnownSections {
  const { part, material } = row
  const { sectionPart, stiffenPart } = useActions()
  const readState = useReadState()
  const massG = row.sum?.pieceG.mid ?? 0
  const latest = useRef({ part, material, massG })
  useEffect(() => {
    latest.current = { part, material, massG }
  })
  const aircraft = useAppState((state) => state.frame.aircraft)
  const habits = useAppState((state) => state.frame.printer.habits)
  const typed = useKeptLoad(part.id)
  const load = useMemo(() => loadOf(part, aircraft, typed), [part, aircraft, typed])
  const { pick, jointBores, tipG } = load
  const { id, meshHash, unit, pose, recipe, zones, keepsHairs } = part
  const { infillPct: _infill, pattern: _pattern, ...geometry } = recipe
  const { walls: _w, topSkins: _t, bottomSkins: _b, layerMm: _l, lineMm: _m, ...rest } = geometry
  const meshes = zones.map((zone) => zone.meshHash)
  const of = JSON.stringify([
    id,
    meshHash,
    unit,
    pose,
    rest,
    meshes,
    keepsHairs,
    pick,
    jointBores,
    habits,
    tipG,
  ])
  const wanted = JSON.stringify([geometry, ...others])
  const [known, setKnown] = useState(NONE)
  useEffect(() => {
    const abort = new AbortController()
    const { signal } = abort
    const ask = JSON.parse(of) as unknown[]
    const given = { pick: ask[7], jointBores: ask[8] } as Pick<LoadNow, 'pick' | 'jointBores'>
    const swings = { loadN: SOME_N, tipG: ask[10] as number }
    const run = async () => {
      const [own, ...patches] = JSON.parse(wanted) as [Recipe, ...Partial<Recipe>[]]
      for (const patch of [{}, ...patches]) {
        const outcome = await sectionPart(id, given, signal, { recipe: patch })
        if (signal.aborted || outcome === null || !outcome.ok) return
        const { value } = outcome
        const key = geometryKey({ ...own, ...patch })
        setKnown((before) => ({
          of,
          found: new Map([...(before.of === of ? before.found : []), [key, value]]),
        }))
        if (value.kind === 'no') return
        if (Object.keys(patch).length === 0 && !scales.has(of)) {
          const scale = await scaleOf(value, given, swings, signal)
          if (signal.aborted || scale === undefined) return
          scales.set(of, scale)
          setKnown((before) => ({ ...before }))
          if (scale === null) return
        }
      }
    }
    /**
     * Null where the solid model says that it is no beam; undefined where that could not be asked.
     */
    const scaleOf = async (
      own: PartSections,
      held: typeof given,
      swing: typeof swings,
      called: AbortSignal,
    ): Promise<BeamScale | null | undefined> => {
      const now = latest.current
      const { printer } = readState().frame
      const lay = (one: Recipe) => laidRecipe({ recipe: one, zones: now.part.zones }, printer)
      const asked = { ...held, ...swing, massG: now.massG, cellMm: DRAFT_MM, wantTones: true }
      const outcome = await stiffenPart(id, asked, { signal: called })
      if (outcome?.ok !== true) return undefined
      const { deflectionMm, hz } = outcome.value.figures
      const solid = { deflectionMm: deflectionMm.mid, firstHz: hz[0]?.mid ?? null }
      const { recipe: stood } = now.part
      const plain = beamGives(new Map([[geometryKey(stood), own]]), lay, swing)
      return beamScale(solid, plain({ recipe: stood, material: now.material, massG: now.massG }))
    }
    const timer = setTimeout(() => {
      run().catch(() => {
        // The part's own count says what is wrong with it.
      })
    }, QUIET_MS)
    return () => {
      clearTimeout(timer)
      abort.abort()
    }
  }, [sectionPart, stiffenPart, readState, id, of, wanted])
  return useMemo(() => {
    const found = known.of === of ? known.found : NONE.found
    const slender = new Map<string, PartSections>()
    for (const [key, one] of found) if (one.kind === 'sections') slender.set(key, one)
    const scale = scales.get(of)
    const own = found.get(geometryKey(recipe)) ?? null
    if (scale === null) return { load, own: SOFTER, slender: new Map(), scale: undefined }
    return { load, own, slender, scale }
  }, [known, of, load, recipe])
}

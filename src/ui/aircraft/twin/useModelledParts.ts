import { useEffect, useMemo, useRef, useState } from 'react'
import { loadOf } from '../../../core/aircraft/twin/loadOf.ts'
import type { ReportPart } from '../../../core/aircraft/report/types.ts'
import { DRAFT_MM } from '../../../core/data/stiffness.ts'
import type { Frame } from '../../../core/model/frame.ts'
import { isSoft, plateBeside, solidBendingNm } from '../../../core/aircraft/report/twinEntry.ts'
import type { Safety } from '../../../core/stiffness/part/tellPart.ts'
import { useActions } from '../../appContext.ts'
import { useKeptLoads } from '../../part/stiffness/keptLoads.ts'
import { layersHangOn } from '../../layersHangOn.ts'

/** What models tell of a part beside plate and propeller. */
interface ArmModel extends Pick<ReportPart, 'sections' | 'solidHz' | 'solidBendingNm'> {
  readonly safety?: Safety | null
  readonly loadN?: number
}

/** A part whose strength is known under its load. */
export interface SolvedPart {
  readonly id: string
  readonly name: string
  readonly safety: Safety
  readonly loadN: number
}

interface ModelledParts {
  readonly parts: readonly ReportPart[] | null
  readonly solved: readonly SolvedPart[]
  /** Nothing more is being solved. */
  readonly isDone: boolean
}

interface Known {
  readonly of: string
  readonly models: ReadonlyMap<string, ArmModel>
}

const NONE: Known = { of: '', models: new Map() }

/**
 * The parts with what their solid models tell: how arms ring, as on their own sheets, and which
 * plate is as stiff; of all parts where that is wanted, else of arms. Until that is there arms are
 * plain bars and stiffness is by strips of the layers.
 */
export function useModelledParts(
  parts: readonly ReportPart[] | null,
  { aircraft, printer }: Frame,
  wantsAll: boolean,
): ModelledParts {
  const { sectionPart, stiffenPart } = useActions()
  const typed = useKeptLoads()
  const asked = useMemo(
    () =>
      (parts ?? []).flatMap((one) => {
        const { part, material, pieceG } = one
        const isTyped = aircraft.twin.freeMm?.[part.id] !== undefined
        const plate = plateBeside(one, aircraft.twin)
        if (part.role !== 'arm' && !isTyped && (!wantsAll || isSoft(one))) return []
        const load = loadOf(part, aircraft, typed.get(part.id))
        return [{ part, material, massG: pieceG.mid, load, isTyped, plate }]
      }),
    [parts, aircraft, typed, wantsAll],
  )
  const asksAny = asked.length > 0
  const of = JSON.stringify([
    // What lays them otherwise asks anew.
    printer.habits,
    ...asked.map(({ part, ...rest }) => [part.id, layersHangOn(part), part.recipe, rest]),
  ])
  const [known, setKnown] = useState(NONE)
  const latest = useRef(asked)
  useEffect(() => {
    latest.current = asked
  })
  useEffect(() => {
    const now = latest.current
    if (now.length === 0) return
    const abort = new AbortController()
    const { signal } = abort
    const look = async () => {
      const found = await Promise.all(
        now.map(
          async ({ part: { id }, massG, load, isTyped, plate }): Promise<[string, ArmModel]> => {
            const { pick, jointBores, loadN, tipG } = load
            const beam = isTyped ? await sectionPart(id, { pick, jointBores }, signal) : null
            const sections = beam?.ok === true ? { sections: beam.value } : {}
            const wanted = {
              massG,
              jointBores,
              pick,
              loadN,
              tipG,
              cellMm: DRAFT_MM,
              wantTones: true,
            }
            const outcome = await stiffenPart(
              id,
              { ...wanted, ...(plate === null ? {} : { plate }) },
              { signal },
            )
            if (outcome?.ok !== true) return [id, sections]
            const { value } = outcome
            return [
              id,
              {
                ...sections,
                solidHz: value.figures.hz[0] ?? null,
                solidBendingNm: plate === null ? undefined : solidBendingNm(value, plate),
                safety: value.figures.safety,
                loadN,
              },
            ]
          },
        ),
      )
      if (!signal.aborted) setKnown({ of, models: new Map(found) })
    }
    look().catch(() => {
      // Without them arms are taken as plain bars.
    })
    return () => {
      abort.abort()
    }
  }, [of, sectionPart, stiffenPart])
  return useMemo(() => {
    if (known.of !== of || parts === null) return { parts, solved: [], isDone: !asksAny }
    const solved = parts.flatMap(({ part: { id, name } }): SolvedPart[] => {
      const { safety = null, loadN } = known.models.get(id) ?? {}
      return safety === null || loadN === undefined ? [] : [{ id, name, safety, loadN }]
    })
    const modelled = parts.map((one): ReportPart => {
      const { sections, solidHz, solidBendingNm: bending } = known.models.get(one.part.id) ?? {}
      return {
        ...one,
        sections: sections ?? null,
        solidHz: solidHz ?? null,
        solidBendingNm: bending,
      }
    })
    return { parts: modelled, solved, isDone: true }
  }, [known, of, parts, asksAny])
}

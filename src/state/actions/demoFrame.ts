import type { Aircraft } from '../../core/model/aircraft.ts'
import { AIRCRAFT_DEFAULTS } from '../../core/data/aircraft.ts'
import { pieceOf } from '../../core/frame/weighIn.ts'
import type { Frame, Part } from '../../core/model/frame.ts'
import { RECIPE_DEFAULTS } from '../../core/model/settings.ts'
import { materialOf } from '../store/materialOf.ts'
import type { Demo, DemoPart } from './demos.ts'

/** A part as the demo wants it; `part` brings its id and its mesh. */
export function demoPart(part: Part, demo: DemoPart): Part {
  const { name, quantity, spares, mirrored, unit, materialId, role } = demo
  const recipe = { ...RECIPE_DEFAULTS, ...demo.recipe }
  return { ...part, name, quantity, spares, mirrored, unit, materialId, role, recipe }
}

/** The demo as a frame; what it says of parts that are not among `parts` is left out. */
export function demoFrame(blank: Frame, demo: Demo, parts: readonly Part[]): Frame {
  const { name, materials, printer, carbon } = demo
  const frame = { ...blank, name, materials, printer, carbon }
  const weighed = parts.map((part) => weighedPart(part, frame, demo.aircraft.weighedG[part.name]))
  return { ...frame, parts: weighed, aircraft: demoAircraft(demo, parts) }
}

/** What was calculated when the sample was weighed is not told; it is what is calculated now. */
function weighedPart(part: Part, frame: Frame, massG: number | undefined): Part {
  if (massG === undefined) return part
  const of = pieceOf(part, materialOf(frame, part.materialId), frame.printer)
  return { ...part, weighIn: { massG, stepG: null, date: null, of, calculatedG: null } }
}

/** The manifest tells parts by name, since ids are given out only here. */
function demoAircraft({ aircraft }: Demo, parts: readonly Part[]): Aircraft {
  const ids = new Map(parts.map((part) => [part.name, part.id]))
  // Bought things keep the ids that the manifest gives them.
  for (const { id, body } of aircraft.items) if (body !== undefined) ids.set(id, id)
  const byId = (byName: Readonly<Record<string, number>>): Readonly<Record<string, number>> =>
    Object.fromEntries(
      Object.entries(byName).flatMap(([name, value]) => {
        const id = ids.get(name)
        return id === undefined ? [] : [[id, value]]
      }),
    )
  const { weighedG: _weighed, season, places, joints = [], ...rest } = aircraft
  return {
    ...AIRCRAFT_DEFAULTS,
    ...rest,
    places: places.flatMap((place) => {
      const partId = ids.get(place.partId)
      return partId === undefined ? [] : [{ ...place, partId }]
    }),
    joints: joints.flatMap((joint) => {
      const [a, b] = [ids.get(joint.a.partId), ids.get(joint.b.partId)]
      if (a === undefined || b === undefined) return []
      return [{ ...joint, a: { ...joint.a, partId: a }, b: { ...joint.b, partId: b } }]
    }),
    season: { ...season, breakShare: byId(season.breakShare) },
  }
}

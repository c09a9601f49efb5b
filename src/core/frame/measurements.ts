import { densityReading } from '../doubt/factors.ts'
import { formOf } from '../doubt/form.ts'
import type { Candidate } from '../doubt/next.ts'
import { scaleNoiseG } from '../doubt/readings.ts'
import type { FrameDoubt } from './frameDoubt.ts'
import { SCALE_STEP_G } from './itemLine.ts'

/** All that could be measured next and typed in: the density of a spool, the mass of one piece. */
export function measurable({ parts, items, known }: FrameDoubt): readonly Candidate[] {
  const materials = new Map(parts.map(({ material }) => [material.id, material]))
  const lines = [
    ...parts
      .filter(({ weighed, byScale }) => weighed === null && byScale !== true)
      .map(({ id, name, figures }) => ({ id, name, massG: figures.massG.mid })),
    ...items.filter(({ status }) => status !== 'weighed'),
  ]
  return [
    ...[...materials.values()].flatMap((material): Candidate[] => {
      const reading = densityReading(material)
      if (reading === null) return []
      const text = `Type the density of your own spool of ${material.name}`
      return [{ ...reading, text, form: formOf(0, [[reading.id, 1]]) }]
    }),
    ...lines.flatMap(({ id, name, massG }): Candidate[] => {
      const form = known.next(id)
      const noise = scaleNoiseG(massG, SCALE_STEP_G, false)
      return form === null ? [] : [{ id, text: `Weigh one “${name}”`, form, noise }]
    }),
  ]
}

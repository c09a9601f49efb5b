import type { Lesson } from '../doubt/lessons.ts'
import type { FrameDoubt } from './frameDoubt.ts'
import { readingId, SCATTER } from './frameDoubt.ts'

/**
 * What the weighings of a frame teach later ones: of each believed one how far it was off, with
 * the errors that the part shares with others. What belonged to the part alone is noise there.
 * Ids hold the frame's, so that a frame never hears its own lessons again.
 */
export function lessonsOf(
  { parts, known }: Pick<FrameDoubt, 'parts' | 'known'>,
  frameId: string,
  printerId: string,
): readonly Lesson[] {
  const heard = new Set(known.heard.map(({ id }) => id))
  return parts.flatMap(({ id, material, figures, weighed }): Lesson[] => {
    const calculatedG = figures.massG.mid
    if (weighed === null || !(calculatedG > 0) || !heard.has(readingId(id))) return []
    const { shared, own } = figures.doubt.mass
    const scatter = SCATTER / Math.sqrt(weighed.pieces)
    return [
      {
        id: `${frameId}/${id}`,
        materialId: material.id,
        printerId,
        shared,
        ratio: weighed.eachG / calculatedG,
        noise: Math.hypot(own, scatter, weighed.noiseG / calculatedG),
      },
    ]
  })
}

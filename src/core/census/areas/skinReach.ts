import { habitsOf } from '../../model/habits.ts'
import type { GeometrySettings } from '../../model/settings.ts'
import type { CutLayer } from '../cut/cutLayer.ts'

/** How many layers away a layer's skins come from. */
export interface SkinReach {
  /** Beneath what looks up. */
  readonly above: number
  /** On the bed. */
  readonly below: number
  /** Over undersides in the air; at least `below`. */
  readonly under: number
}

/**
 * Skins on the bed are as many as the recipe says; those over an underside in the air as many, or
 * as many as the more of top and bottom where that is the printer's habit: what hangs sags, and
 * more layers close it.
 *
 * Measured on the moves of 27 toolpaths, by columns of solid layers from air to a room: seven of
 * one maker's parts have six layers there and four on the bed, with six on top; one part of another
 * has five in both places, with seven on top. Of 27 pairs, 14 of which shaped the rule (median,
 * mean, bias, one in ten beyond, %; bands of 3 mm from half a line deep in each cover):
 *
 * | over undersides | shaped it           | checked it          |
 * |-----------------|---------------------|---------------------|
 * | as on the bed   | 2.2, 3.6, −0.1, 7.6 | 2.1, 2.8, −1.3, 6.5 |
 * | the more of two | 1.6, 3.3, +0.4, 5.9 | 2.1, 2.1, −0.3, 4.4 |
 */
export function skinReachOf(settings: GeometrySettings): SkinReach {
  const { topSkins: above, bottomSkins: below } = settings
  const most = below > 0 && habitsOf(settings).undersides === 'most'
  return { above, below, under: most ? Math.max(above, below) : below }
}

/**
 * The layers that have to cover a place before it is room, from the top down; null stands for air
 * beyond the part.
 */
export function coveringLayers(
  kept: ReadonlyMap<number, CutLayer>,
  layer: number,
  { above, below, under }: SkinReach,
): (CutLayer | null)[] {
  const list: (CutLayer | null)[] = []
  for (let i = layer + above; i >= layer - under; i--) {
    // The bed holds what is further down than skins on it reach.
    if (i === layer || (i < 0 && i < layer - below)) continue
    list.push(kept.get(i) ?? null)
  }
  return list
}

import type { ToolpathFigures } from '../model/toolpath.ts'

/** Plastic of one piece by place. mm³ */
export interface ByPlace {
  readonly wallMm3: number
  readonly skinMm3: number
  readonly infillMm3: number
}

/** As `PartFigures` divides it: gap lines and a skirt are walls here. */
export function laidByPlace({ kinds }: Pick<ToolpathFigures, 'kinds'>): ByPlace {
  const { outer, inner, gap, skin, infill } = kinds
  return {
    wallMm3: outer.volumeMm3 + inner.volumeMm3 + gap.volumeMm3,
    skinMm3: skin.volumeMm3,
    infillMm3: infill.volumeMm3,
  }
}

import { partMoments } from '../balance/partMoments.ts'
import type { Mesh } from '../../model/mesh.ts'
import { plateOutline } from '../twin/outline.ts'
import type { PartFacts } from './types.ts'

/**
 * Facts of one part from its mesh, facing outwards (see `orientMesh`): `drawn` in the file's unit,
 * `scaleToMm` to make it millimetres, and `placed` as `placeMesh` lays it on the bed. Plain
 * numbers, below a kilobyte.
 */
export function partFacts(drawn: Mesh, scaleToMm: number, placed: Mesh): PartFacts {
  const outline = plateOutline(placed)
  return {
    outline: outline && {
      areaMm2: outline.areaMm2,
      cutLengthMm: outline.cutLengthMm,
      sheetMm: outline.sheetMm,
      longDeg: outline.longDeg,
      crossing: outline.crossing,
    },
    moments: partMoments(drawn, scaleToMm),
  }
}

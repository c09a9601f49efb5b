import { boresOf } from '../../joints/boresOf.ts'
import { partMoments } from '../balance/partMoments.ts'
import type { Mesh } from '../../model/mesh.ts'
import { boxInMm } from '../../mesh/boxOfMesh.ts'
import { plateOutline } from '../twin/outline.ts'
import type { PartTraits } from './types.ts'

/**
 * What the aircraft needs of one mesh, facing outwards (see `orientMesh`): `drawn` in the file's
 * unit, `scaleToMm` to make it millimetres, and `placed` as `placeMesh` lays it on the bed. Plain
 * numbers, a kilobyte and 200 bytes a bore at most.
 */
export function partTraits(drawn: Mesh, scaleToMm: number, placed: Mesh): PartTraits {
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
    bores: boresOf(drawn, scaleToMm),
    boxMm: boxInMm(drawn, scaleToMm),
  }
}

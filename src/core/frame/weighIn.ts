import type { Material, Printer } from '../model/figures.ts'
import type { Part, WeighedPiece } from '../model/frame.ts'
import type { Pose, Recipe } from '../model/settings.ts'

/** What of a piece may have changed since it was weighed, in the words of the page. */
export type Change = 'mesh' | 'unit' | 'zones' | 'recipe' | 'how it lies' | 'material' | 'printer'

/** Everything the mass of one piece of the part depends on, as it is now. */
export function pieceOf(part: Part, material: Material, printer: Printer): WeighedPiece {
  return {
    meshHash: part.meshHash,
    unit: part.unit,
    pose: part.pose,
    recipe: part.recipe,
    zones: part.zones.map(({ meshHash, infillPct }) => ({ meshHash, infillPct })),
    materialId: material.id,
    flow: material.flow,
    printerId: printer.id,
  }
}

/**
 * What differs between the piece that was weighed and the piece as it is now; nothing while the
 * weighing holds.
 */
export function changesSince(was: WeighedPiece, now: WeighedPiece): readonly Change[] {
  const changes: Change[] = []
  if (was.meshHash !== now.meshHash) changes.push('mesh')
  if (was.unit !== now.unit) changes.push('unit')
  if (!sameZones(was.zones, now.zones)) changes.push('zones')
  if (!sameRecipe(was.recipe, now.recipe)) changes.push('recipe')
  if (!sameSideUp(was.pose, now.pose)) changes.push('how it lies')
  if (was.materialId !== now.materialId || was.flow !== now.flow) changes.push('material')
  if (was.printerId !== now.printerId) changes.push('printer')
  return changes
}

/** Their order counts too: of zones that overlap the later one holds. */
function sameZones(was: WeighedPiece['zones'], now: WeighedPiece['zones']): boolean {
  return (
    was.length === now.length &&
    was.every(({ meshHash, infillPct }, i) => {
      const zone = now[i]
      return meshHash === zone?.meshHash && infillPct === zone.infillPct
    })
  )
}

/** Supports and brim come off before weighing. */
function sameRecipe(was: Recipe, now: Recipe): boolean {
  return (
    was.layerMm === now.layerMm &&
    was.firstLayerMm === now.firstLayerMm &&
    was.lineMm === now.lineMm &&
    was.walls === now.walls &&
    was.topSkins === now.topSkins &&
    was.bottomSkins === now.bottomSkins &&
    was.infillPct === now.infillPct &&
    was.pattern === now.pattern
  )
}

/** A turn on the bed leaves every layer as it is; only which side is up matters. */
function sameSideUp(was: Pose, now: Pose): boolean {
  const a = upOf(was)
  const b = upOf(now)
  return a.every((value, axis) => Math.abs(value - (b[axis] ?? 0)) < 1e-9)
}

/** The bed's upward direction in the part's own axes: the last row of Rz·Ry·Rx. */
function upOf({ rotateDeg: [x, y] }: Pose): readonly number[] {
  const [sinX, cosX] = sinCos(x)
  const [sinY, cosY] = sinCos(y)
  return [-sinY, cosY * sinX, cosY * cosX]
}

function sinCos(deg: number): readonly [number, number] {
  const rad = (deg * Math.PI) / 180
  return [Math.sin(rad), Math.cos(rad)]
}

import { DRAFT_MM } from '../../data/stiffness.ts'
import { findHoles } from '../../mesh/holes/findHoles.ts'
import { offAxis } from '../../mesh/holes/oneAxis.ts'
import { originOf, placeMesh, placePoint, placeTogether, turnMatrix } from '../../mesh/pose.ts'
import type { Material } from '../../model/figures.ts'
import type { BoreMark } from '../../model/joints.ts'
import type { Mesh, Vec3 } from '../../model/mesh.ts'
import type { GeometrySettings, LaidRecipe, Pose } from '../../model/settings.ts'
import { dot, minus, times } from '../../model/vectors.ts'
import { chooseLoad, type ChosenLoad, type LoadPick } from './chooseLoad.ts'
import { fillCells } from './fillCells.ts'
import { laidOf } from './laidOf.ts'
import type { NoBeam, PartSections } from './sections.ts'
import { plateStiffness, type PlateStock } from './plateStiffness.ts'
import { sectionPart, solvePart, type PartSolved } from './solvePart.ts'
import { tellPart, type StiffnessFigures } from './tellPart.ts'
import type { Grip, GripBore, LoadCase, PartCells } from './types.ts'

/** A part and how it is to be held, as page, worker and command ask. */
export interface StiffPartAsk {
  readonly pose: Pose
  readonly recipe: LaidRecipe
  readonly material: Material
  /** Of one piece, supports off. */
  readonly massG: number
  /** Of the joints that hold it; mm as drawn. */
  readonly jointBores: readonly BoreMark[]
  readonly pick: LoadPick
  /** The pose that `pick` speaks of, where that is not how the part is printed. */
  readonly pickPose?: Pose
  readonly loadN: number
  readonly tipG: number
  /** 2 for a draft, 1 for good. */
  readonly cellMm: number
  readonly wantTones: boolean
  /** A plate of its outline to be solved beside it. */
  readonly plate?: PlateStock
}

export interface StiffPart {
  readonly figures: StiffnessFigures
  /**
   * Of the plate that was asked for; null without one, and where it does not stand in for the part.
   */
  readonly plateNMm: number | null
  readonly solved: Pick<
    PartSolved,
    'line' | 'beam' | 'sections' | 'cells' | 'steps' | 'gapShare' | 'looseShare'
  > & {
    readonly acrossByHeight: PartSolved['stresses']['acrossByHeight']
  }
  readonly chosen: Pick<ChosenLoad, 'held' | 'pushed' | 'direction'>
  readonly loadN: number
  readonly tipG: number
  readonly cellMm: number
}

/** Share of the way that filling the cells takes, as progress goes. */
const FILLING = 0.3

/**
 * From a part's mesh to how it gives, breaks and rings.
 *
 * @param meshes faced outwards, as read.
 * @throws PreweighError as `solvePart` does.
 */
export function stiffPart(
  meshes: { readonly part: Mesh; readonly zones: readonly Mesh[] },
  scaleToMm: number,
  ask: StiffPartAsk,
  onProgress: (fraction: number) => void = () => undefined,
): StiffPart {
  const { pose, recipe, material, massG, loadN, tipG, cellMm, wantTones, plate } = ask
  const { placed, others } = placeTogether(meshes.part, meshes.zones, scaleToMm, pose)
  const told = (done: number): void => onProgress(FILLING * done)
  const wanted = { placed, others, scaleToMm, pose, recipe, cellMm }
  const cells = cellsOf(meshes.part, wanted, told)
  const { load, ...chosen } = chooseOnBed(meshes.part, scaleToMm, ask)
  const full: LoadCase = { ...load, loadN, tipG }
  const laid = laidOf(recipe, material, cells.rooms.length)
  const solved = solvePart(
    { cells, laid, massG, load: full, wantTones },
    { onProgress: (done) => onProgress(FILLING + (1 - FILLING) * done) },
  )
  const { line, beam, sections, cells: count, steps, gapShare, looseShare, stresses } = solved
  const { acrossByHeight } = stresses
  return {
    figures: tellPart(solved, loadN, material),
    plateNMm: plate === undefined ? null : plateOf(meshes.part, { ...wanted, plate, load: full }),
    solved: { line, beam, sections, cells: count, steps, gapShare, looseShare, acrossByHeight },
    chosen,
    loadN,
    tipG,
    cellMm,
  }
}

/** A part and how it is held, for its sections alone: no plastic, no infill, no load. */
export interface SectionsAsk extends Pick<
  StiffPartAsk,
  'pose' | 'jointBores' | 'pick' | 'pickPose'
> {
  readonly geometry: GeometrySettings
}

/**
 * The part as a beam, whatever its infill, plastic and load: what a slider may move without another
 * look at its mesh.
 *
 * @param meshes faced outwards, as read.
 * @throws PreweighError as `solvePart` does.
 */
export function partSections(
  meshes: { readonly part: Mesh; readonly zones: readonly Mesh[] },
  scaleToMm: number,
  ask: SectionsAsk,
): PartSections | NoBeam {
  const { pose, geometry } = ask
  const { placed, others } = placeTogether(meshes.part, meshes.zones, scaleToMm, pose)
  const wanted = { placed, others, scaleToMm, pose, recipe: geometry, cellMm: DRAFT_MM }
  const cells = cellsOf(meshes.part, wanted, () => undefined)
  const { load } = chooseOnBed(meshes.part, scaleToMm, ask)
  return sectionPart(cells, load)
}

/** Chooses the load as the part lies when it is picked, and turns it to how the part is printed. */
function chooseOnBed(
  drawn: Mesh,
  scaleToMm: number,
  { pose, pickPose = pose, jointBores, pick }: Omit<SectionsAsk, 'geometry'>,
): ChosenLoad {
  const placed = placeMesh(drawn, scaleToMm, pickPose)
  const toBed = bedPlaces(drawn, placed, scaleToMm, pickPose)
  const joints = jointBores.map((bore) =>
    toBed(bore.centreMm, bore.axis, bore.diameterMm, bore.depthMm),
  )
  const free = findHoles(drawn)
    .map(({ centre, axis, diameter, depth }) =>
      toBed(times(centre, scaleToMm), axis, diameter * scaleToMm, depth * scaleToMm),
    )
    .filter((bore) => !joints.some((joint) => isSameBore(bore, joint)))
  const chosen = chooseLoad(placed, joints, free, pick)
  if (pickPose === pose) return chosen
  const origin = originOf(drawn, placed, scaleToMm, pickPose)
  const printed = placeMesh(drawn, scaleToMm, pose)
  const printedOrigin = originOf(drawn, printed, scaleToMm, pose)
  const turn = (way: Vec3): Vec3 => placePoint([0, 0, 0], pose, turnBack(pickPose, way))
  const move = (at: Vec3): Vec3 =>
    placePoint(printedOrigin, pose, turnBack(pickPose, minus(at, origin)))
  const moveGrip = (grip: Grip): Grip =>
    grip.kind === 'end'
      ? { ...grip, outward: turn(grip.outward) }
      : {
          kind: 'bores',
          bores: grip.bores.map((bore) => ({
            ...bore,
            centreMm: move(bore.centreMm),
            axis: turn(bore.axis),
          })),
        }
  const { hold, push, direction } = chosen.load
  const load = { hold: moveGrip(hold), push: moveGrip(push), direction: turn(direction) }
  return { ...chosen, load }
}

/** From the bed back into the drawing: the transpose of the turn. */
function turnBack(pose: Pose, [x, y, z]: Vec3): Vec3 {
  const m = turnMatrix(pose)
  return [
    m[0] * x + m[3] * y + m[6] * z,
    m[1] * x + m[4] * y + m[7] * z,
    m[2] * x + m[5] * y + m[8] * z,
  ]
}

/** Where bores of the drawing, in mm, lie on the bed. */
function bedPlaces(drawn: Mesh, placed: Mesh, scaleToMm: number, pose: Pose) {
  const origin = originOf(drawn, placed, scaleToMm, pose)
  return (centre: Vec3, axis: Vec3, diameterMm: number, depthMm: number): GripBore => ({
    centreMm: placePoint(origin, pose, centre),
    axis: placePoint([0, 0, 0], pose, axis),
    diameterMm,
    depthMm,
  })
}

/** A joint tells of a bore that the mesh still has. mm */
const SAME_MM = 0.5

function isSameBore(a: GripBore, b: GripBore): boolean {
  const away = minus(a.centreMm, b.centreMm)
  const isAside = offAxis(away, b.axis) >= SAME_MM
  return !isAside && Math.abs(dot(away, b.axis)) < (a.depthMm + b.depthMm) / 2
}

/**
 * By mesh: what its layers put into cells, so that infill, plastic and load change without another
 * walk.
 */
const kept = new WeakMap<Mesh, { readonly key: string; readonly cells: PartCells }>()

interface CellsAsk {
  readonly placed: Mesh
  readonly others: readonly Mesh[]
  readonly scaleToMm: number
  readonly pose: Pose
  readonly recipe: GeometrySettings & Partial<LaidRecipe>
  readonly cellMm: number
}

function cellsOf(
  drawn: Mesh,
  { placed, others, scaleToMm, pose, recipe, cellMm }: CellsAsk,
  onProgress: (fraction: number) => void,
): PartCells {
  const key = geometryKey(recipe, cellMm, scaleToMm, pose)
  const known = others.length === 0 ? kept.get(drawn) : undefined
  if (known?.key === key) return known.cells
  const cells = fillCells(placed, others, recipe, cellMm, onProgress)
  if (others.length === 0) kept.set(drawn, { key, cells })
  return cells
}

/** Of what infill and pattern change nothing of. */
function geometryKey(
  { infillPct: _infill, pattern: _pattern, zonePcts: _zones, ...geometry }: CellsAsk['recipe'],
  ...others: readonly unknown[]
): string {
  return JSON.stringify([geometry, ...others])
}

/** By mesh: what a plate of its outline gives, whatever the part itself is full of. */
const keptPlates = new WeakMap<Mesh, { readonly key: string; readonly nMm: number | null }>()

interface PlateAsk extends CellsAsk {
  readonly plate: PlateStock
  readonly load: LoadCase
}

function plateOf(
  drawn: Mesh,
  { placed, scaleToMm, pose, recipe, cellMm, plate, load }: PlateAsk,
): number | null {
  const { hold, push, direction } = load
  const key = geometryKey(recipe, cellMm, scaleToMm, pose, plate, hold, push, direction)
  const known = keptPlates.get(drawn)
  if (known?.key === key) return known.nMm
  const nMm = plateStiffness(placed, plate, load, recipe, cellMm)
  keptPlates.set(drawn, { key, nMm })
  return nMm
}

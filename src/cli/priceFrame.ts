import type { Frame, Part, PartZone } from '../core/model/frame.ts'
import { plateBeside } from '../core/aircraft/report/twinEntry.ts'
import { aircraftReport } from '../core/aircraft/report/aircraftReport.ts'
import { loadOf, type TypedLoads } from '../core/aircraft/twin/loadOf.ts'
import { withJointItems } from '../core/aircraft/hardware/jointItems.ts'
import { partTraits } from '../core/aircraft/report/partTraits.ts'
import type { Spool } from '../core/model/spools.ts'
import type { DrillRow } from '../core/drill/types.ts'
import type { PartLook } from '../core/aircraft/report/types.ts'
import type { FramePart } from '../core/frame/types.ts'
import type { Lesson } from '../core/doubt/lessons.ts'
import { carriedLessons, lessonsOf } from '../core/frame/lessonsOf.ts'
import { weighFrame } from '../core/frame/weighFrame.ts'
import { unitToMm } from '../core/model/units.ts'
import { placeMesh } from '../core/mesh/pose.ts'
import { materialOf } from '../state/store/materialOf.ts'
import { laidRecipe } from '../core/figures/laidRecipe.ts'
import { holesOfFrame } from './frameDrill.ts'
import { clashReports } from './frameClashes.ts'
import { reportFrame } from './reportFrame.ts'
import { layFrame, type BedPart } from './frameRuns.ts'
import type { FrameReport } from './frameReport.ts'
import { sectionsOfArm, stiffnessOf, type StiffParts } from './frameStiffness.ts'
import type { LoadedFrame } from './loadFrame.ts'
import { failedPart, priceMesh } from './priceMesh.ts'
import type { ZoneFile } from './priceMesh.ts'
import type { FailedPart, PricedPart } from './report.ts'
import { workBudget } from './workBudget.ts'

/**
 * Prices every part of a frame as it says itself, and the aircraft with them, after what other
 * frames taught. What fails is reported as failed.
 */
export function priceFrame(
  { frame, meshes, complaints, loads }: LoadedFrame,
  onProgress: (part: string, fraction: number) => void,
  locale?: string,
  lessons: readonly Lesson[] = [],
  full = false,
  stiff: StiffParts = 'none',
  spools: readonly Spool[] | null = null,
  onHoles: (rows: readonly DrillRow[]) => void = () => undefined,
): FrameReport {
  const { looks, priced, sum, laid, counted, stiffness } = addUp(
    { frame, meshes, ...(loads === undefined ? {} : { loads }) },
    onProgress,
    lessons,
    full,
    stiff,
  )
  const lookOf = (id: string): PartLook => looks.get(id) ?? { census: null, traits: null }
  const aircraft = withJointItems(frame)
  const report = aircraftReport(sum, lookOf, { ...frame, aircraft })
  const holes = holesOfFrame(counted, { ...frame, aircraft })
  onHoles(holes.rows)
  return reportFrame(
    frame,
    priced.map((one) => one.report),
    report,
    laid,
    holes,
    clashReports(counted, frame),
    stiffness,
    complaints,
    locale,
    spools,
  )
}

/** What the readings of a frame teach others. */
export function lessonsOfFrame(loaded: LoadedFrame): readonly Lesson[] {
  const { sum } = addUp(loaded, () => undefined, [], false)
  return lessonsOf(sum.doubt, loaded.frame.id, loaded.frame.printer.id)
}

/** Every part counted and priced, and the frame they come to. */
export function addUp(
  { frame, meshes, loads = NO_LOADS }: Pick<LoadedFrame, 'frame' | 'meshes' | 'loads'>,
  onProgress: (part: string, fraction: number) => void,
  lessons: readonly Lesson[],
  full: boolean,
  stiff: StiffParts = 'none',
) {
  const looks = new Map<string, PartLook>()
  const counted: BedPart[] = []
  const zonesOf = new Map<string, readonly ZoneFile[]>()
  const priced = frame.parts.map((part): PricedRow => {
    const material = materialOf(frame, part.materialId)
    const failed = (error: unknown): PricedRow => ({
      row: { part, material, figures: null, failed: true },
      report: failedPart(part.fileName, error),
    })
    try {
      const bytes = meshes.get(part.meshHash)
      if (bytes === undefined) return failed(noMesh(part.name))
      const zones = part.zones.map((zone) => zoneOf(zone, meshes))
      if (!zones.every((zone) => zone !== undefined)) {
        return failed(noMesh(`a zone of ${part.name}`))
      }
      const told = (fraction: number): void => onProgress(part.name, fraction)
      const { report, figures, look, bedPart } = pricePart(part, frame, full, bytes, zones, told)
      looks.set(part.id, look)
      zonesOf.set(part.id, zones)
      counted.push({ part, material, figures, ...bedPart })
      return { row: { part, material, figures, failed: false }, report }
    } catch (error) {
      return failed(error)
    }
  })
  const laid = layFrame(counted, frame)
  const sum = weighFrame(
    priced.map(({ row }) => {
      const share = laid.shares.get(row.part.id)
      return share === undefined ? row : { ...row, share }
    }),
    { ...frame, aircraft: withJointItems(frame) },
    carriedLessons(lessons, frame.id),
  )
  const stiffness = counted.flatMap(({ part, outward }) => {
    const zones = zonesOf.get(part.id) ?? []
    // By what the scale taught of its mass, as on the page.
    const row = sum.rows.find((one) => one.part.id === part.id)
    const look = looks.get(part.id)
    if (row === undefined || look === undefined) return []
    const plate = plateBeside({ ...row, ...look }, frame.aircraft.twin)
    const load = loadOf(part, frame.aircraft, loads.get(part.id))
    const isAsked =
      stiff !== 'none' && (stiff === 'all' || part.role === 'arm' || loads.has(part.id))
    const meshOf = { outward, zones }
    const found = isAsked ? stiffnessOf(part, frame, load, meshOf, row.pieceG.mid, plate) : null
    const sections = sectionsOfArm(part, frame, load, meshOf)
    if (found === null || 'note' in found) {
      looks.set(part.id, { ...look, sections })
      return found ?? []
    }
    const solidHz = found.report.firstHz
    looks.set(part.id, { ...look, sections, solidHz, solidBendingNm: found.bendingNm })
    return found.report
  })
  return { looks, priced, sum, laid, counted, stiffness }
}

const NO_LOADS: TypedLoads = new Map()

interface PricedRow {
  readonly row: FramePart
  readonly report: PricedPart | FailedPart
}

function pricePart(
  part: Part,
  frame: Frame,
  full: boolean,
  bytes: Uint8Array,
  zones: readonly ZoneFile[],
  onProgress: (fraction: number) => void,
) {
  const { fileName, unit, pose, recipe, materialId } = part
  const { printer, prices } = frame
  const material = materialOf(frame, materialId)
  const keepsHairs = part.keepsHairs === true
  const printed = { pose, recipe, zones, material, printer, prices }
  const all = full || part.countsFully === true
  const budget = all ? {} : { budget: workBudget() }
  const settings = { keepsHairs, unitOf: () => unit, ...printed, ...budget }
  const file = { name: fileName, bytes }
  const { report, figures, weighed } = priceMesh(file, fileName, settings, onProgress)
  const { census, outward } = weighed
  const mm = unitToMm(unit)
  const placed = placeMesh(outward, mm, pose)
  const traits = partTraits(outward, mm, placed)
  const bedPart = { recipe: laidRecipe(part, printer), census, outward, placed }
  return { report, figures, look: { census, traits }, bedPart }
}

/** Undefined when the frame does not hold it. */
function zoneOf(
  { fileName, meshHash, infillPct }: PartZone,
  meshes: LoadedFrame['meshes'],
): ZoneFile | undefined {
  const bytes = meshes.get(meshHash)
  return bytes && { bytes, name: fileName, infillPct }
}

function noMesh(name: string) {
  return {
    code: 'missing-mesh',
    message: `The frame does not hold the mesh of “${name}”.`,
    advice: 'Save the project again from the page that still has it.',
  }
}

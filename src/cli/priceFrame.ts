import type { Frame, Part, PartZone } from '../core/model/frame.ts'
import { aircraftReport } from '../core/aircraft/report/aircraftReport.ts'
import { partFacts } from '../core/aircraft/report/partFacts.ts'
import type { PartLook } from '../core/aircraft/report/types.ts'
import type { FramePart } from '../core/frame/types.ts'
import type { Lesson } from '../core/doubt/lessons.ts'
import { carriedLessons, lessonsOf } from '../core/frame/lessonsOf.ts'
import { weighFrame } from '../core/frame/weighFrame.ts'
import { unitToMm } from '../core/model/units.ts'
import { placeMesh } from '../core/mesh/pose.ts'
import { materialOf } from '../state/store/materialOf.ts'
import { laidRecipe } from '../core/figures/laidRecipe.ts'
import { frameReport } from './frameReport.ts'
import { runsOfFrame, type BedPart } from './frameRuns.ts'
import type { FrameReport } from './frameReport.ts'
import type { LoadedFrame } from './loadFrame.ts'
import { failedPart, priceMesh } from './priceMesh.ts'
import type { ZoneFile } from './priceMesh.ts'
import type { FailedPart, PricedPart } from './report.ts'
import { workBudget } from './workBudget.ts'

/**
 * Prices every part of a frame as it says itself, and the aircraft with them, after what other frames
 * taught. What fails is reported as failed.
 */
export function priceFrame(
  { frame, meshes, complaints }: LoadedFrame,
  onProgress: (part: string, fraction: number) => void,
  locale?: string,
  lessons: readonly Lesson[] = [],
  full = false,
): FrameReport {
  const { looks, priced, sum, laid } = addUp({ frame, meshes }, onProgress, lessons, full)
  const lookOf = (id: string): PartLook => looks.get(id) ?? { census: null, facts: null }
  const report = aircraftReport(sum, lookOf, frame)
  return frameReport(
    frame,
    priced.map((one) => one.report),
    report,
    runsOfFrame(laid, sum, frame),
    complaints,
    locale,
  )
}

/** What the readings of a frame teach others. */
export function lessonsOfFrame(loaded: LoadedFrame): readonly Lesson[] {
  const { sum } = addUp(loaded, () => undefined, [], false)
  return lessonsOf(sum.doubt, loaded.frame.id, loaded.frame.printer.id)
}

function addUp(
  { frame, meshes }: Pick<LoadedFrame, 'frame' | 'meshes'>,
  onProgress: (part: string, fraction: number) => void,
  lessons: readonly Lesson[],
  full: boolean,
) {
  const looks = new Map<string, PartLook>()
  const laid: BedPart[] = []
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
      laid.push({ part, material, figures, ...bedPart })
      return { row: { part, material, figures, failed: false }, report }
    } catch (error) {
      return failed(error)
    }
  })
  const sum = weighFrame(
    priced.map(({ row }) => row),
    frame,
    carriedLessons(lessons, frame.id),
  )
  return { looks, priced, sum, laid }
}

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
  const facts = partFacts(outward, mm, placed)
  const bedPart = { recipe: laidRecipe(part, printer), census, outward, placed }
  return { report, figures, look: { census, facts }, bedPart }
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

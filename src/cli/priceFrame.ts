import type { Frame, Part, PartZone } from '../core/model/frame.ts'
import { aircraftReport } from '../core/aircraft/report/aircraftReport.ts'
import { partFacts } from '../core/aircraft/report/partFacts.ts'
import type { ReportPart } from '../core/aircraft/report/types.ts'
import { materialOf } from '../state/store/materialOf.ts'
import { frameReport } from './frameReport.ts'
import type { FramePart, FrameReport } from './frameReport.ts'
import type { LoadedFrame } from './loadFrame.ts'
import { failedPart, priceMesh } from './priceMesh.ts'
import type { ZoneFile } from './priceMesh.ts'

/** Prices every part of a frame as it says itself, and the aircraft with them. What fails is reported as failed. */
export function priceFrame(
  { frame, meshes, complaints }: LoadedFrame,
  onProgress: (part: string, fraction: number) => void,
): FrameReport {
  const known: ReportPart[] = []
  const parts = frame.parts.map((part): FramePart => {
    const { name, quantity, spares } = part
    const facts = { name, quantity, spares }
    try {
      const bytes = meshes.get(part.meshHash)
      if (bytes === undefined) return { ...failedPart(part.fileName, noMesh(name)), ...facts }
      const zone = part.zone && zoneOf(part.zone, meshes)
      if (zone === undefined) {
        return { ...failedPart(part.fileName, noMesh(`the zone of ${name}`)), ...facts }
      }
      const priced = pricePart(part, frame, bytes, zone, (fraction) => onProgress(name, fraction))
      known.push(priced.known)
      return { ...priced.report, ...facts }
    } catch (error) {
      return { ...failedPart(part.fileName, error), ...facts }
    }
  })
  const report = aircraftReport(known, frame)
  return frameReport(frame.name, frame.prices.currency, parts, report, complaints)
}

function pricePart(
  part: Part,
  frame: Frame,
  bytes: Uint8Array,
  zone: ZoneFile | null,
  onProgress: (fraction: number) => void,
) {
  const { fileName, unit, pose, recipe, materialId } = part
  const { printer, prices } = frame
  const material = materialOf(frame, materialId)
  const keepsHairs = part.keepsHairs === true
  const settings = { keepsHairs, unitOf: () => unit, pose, recipe, material, printer, prices, zone }
  const priced = priceMesh(bytes, fileName, fileName, settings, onProgress)
  const { report, census, figures, drawn, scaleToMm, placed } = priced
  const facts = partFacts(drawn, scaleToMm, placed)
  return { report, known: { part, material, figures, census, facts } }
}

/** Undefined when the frame does not hold it. */
function zoneOf({ fileName, meshHash }: PartZone, meshes: LoadedFrame['meshes']) {
  const bytes = meshes.get(meshHash)
  return bytes && { bytes, name: fileName }
}

function noMesh(name: string) {
  return {
    code: 'missing-mesh',
    message: `The frame does not hold the mesh of “${name}”.`,
    advice: 'Save the project again from the page that still has it.',
  }
}

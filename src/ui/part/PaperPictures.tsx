import { PART_VIEWS } from '../../core/drawing/partViews.ts'
import type { LedgerRow } from '../../state/store/derived.ts'
import type { PartRead } from '../../state/store/types.ts'
import { PartDrawing } from '../drawing/PartDrawing.tsx'
import { placeMarks } from '../drawing/placeMarks.ts'
import { findingsOf } from '../ledger/partWork.ts'
import { useCutPlane } from './cutPlane.ts'
import { lensLayer, lensOf } from './lensLayer.ts'
import { MarkList } from './MarkList.tsx'
import { partMarks, sizeWords } from './partMarks.ts'
import { SectionPicture } from './SectionPicture.tsx'
import { usePartLook } from './usePartLook.ts'
import { useLaidAs } from './useLaidAs.ts'
import { useSection } from './useSection.ts'

const WIDE_PX = 640
const HIGH_PX = 360

interface PaperPicturesProps {
  readonly row: LedgerRow
  readonly read: PartRead
}

/** On paper: the part with its marks and where it is cut, and the section, both as lines. */
export function PaperPictures({ row, read }: PaperPicturesProps) {
  const { part, work } = row
  const findings = findingsOf(work)
  const plane = useCutPlane(part, read.measure.boundsMm)
  const look = usePartLook(part, findings, PART_VIEWS.slant, WIDE_PX, HIGH_PX)
  const section = useSection(part, plane)
  const lens = plane.axis === 'z' ? lensLayer(part, read.measure.boundsMm, plane) : null
  const laidAs = useLaidAs(row, lens?.layer ?? null)
  if (look === null) return null
  const marks = partMarks(look, part, findings)
  return (
    <>
      <PartDrawing
        look={look}
        marks={marks}
        placed={placeMarks(look, marks)}
        plane={plane}
        lens={lensOf(part, plane, section)}
        litSign={null}
        label={`${part.name}, as it lies on the bed, ${sizeWords(look.boundsMm)}`}
      />
      <MarkList marks={marks} />
      <h3 className="paper-section">A–A</h3>
      <SectionPicture part={part} section={section} laidAs={laidAs} widthPx={WIDE_PX} />
    </>
  )
}

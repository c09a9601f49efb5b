import { useMemo, useState } from 'react'
import { Button } from 'react-aria-components'
import { DRILL_LIMITS } from '../../core/data/limits.ts'
import { couponFor, couponHoles, type CouponHole } from '../../core/drill/coupon.ts'
import { holeLoss } from '../../core/drill/holeLoss.ts'
import type { DrillRow } from '../../core/drill/types.ts'
import { writeStl } from '../../core/formats/writeStl.ts'
import { RECIPE_DEFAULTS } from '../../core/model/settings.ts'
import type { HoleReading } from '../../core/model/drill.ts'
import { dayOf } from '../../core/words/day.ts'
import { materialOf } from '../../state/store/materialOf.ts'
import { newId } from '../../state/store/newId.ts'
import { useActions, useAppState } from '../appContext.ts'
import { Choice } from '../fields/Choice.tsx'
import { NumberBox } from '../fields/NumberBox.tsx'
import { download } from '../head/download.ts'
import { showLength, showMm } from '../show.ts'

const NO_READINGS: readonly HoleReading[] = []

/** A small print with the frame's own holes, and what a pin or a calliper says of them. */
export function CouponBlock({ rows }: { readonly rows: readonly DrillRow[] }) {
  const holes = useMemo(() => couponHoles(rows), [rows])
  const { loadPieces } = useActions()
  const name = useAppState((state) => state.frame.name)
  const recipe = useAppState((state) => state.frame.parts[0]?.recipe ?? RECIPE_DEFAULTS)
  if (holes.length === 0) return null
  // Its mesh is made when it is wanted: most who open the sheet only look.
  const stl = (): Blob => {
    const coupon = couponFor(rows)
    return new Blob(coupon === null ? [] : [writeStl(coupon.mesh)], { type: 'model/stl' })
  }
  return (
    <div className="drill-coupon screen-only">
      <h4>Coupon of holes</h4>
      <p className="hint">
        How much narrower holes come out is your printer’s and your plastic’s own. Print this first,
        with the recipe of the frame: {holes.length} holes of the frame’s own sizes, from each on by{' '}
        {showLength(0.1, 1)}, smallest beside the blank end. Measure one here, and every hole above
        follows it.
      </p>
      <Button
        className="outlined"
        onPress={() => {
          download(stl(), `${name} holes`, '.stl')
        }}
      >
        Save the coupon as STL
      </Button>{' '}
      <Button
        className="quiet"
        onPress={() => {
          void loadPieces('Coupon of holes', [
            {
              file: { name: 'coupon of holes.stl', blob: stl() },
              name: 'Coupon of holes',
              note: `Holes of ${name}, by tenths of a millimetre, smallest beside the blank end.`,
              recipe,
            },
          ])
        }}
      >
        Open it as a frame of its own
      </Button>
      <ReadingForm holes={holes} />
      <ReadingList />
    </div>
  )
}

function ReadingForm({ holes }: { readonly holes: readonly CouponHole[] }) {
  const { putReadings } = useActions()
  const frame = useAppState((state) => state.frame)
  const [hole, setHole] = useState<string | null>(null)
  const [by, setBy] = useState<HoleReading['by']>('calliper')
  const [materialId, setMaterial] = useState<string | null>(null)
  const materials = [...new Set(frame.parts.map((part) => part.materialId))].map((id) =>
    materialOf(frame, id),
  )
  const options = holes.map(({ lies, diameterMm }) => ({
    id: `${lies} ${diameterMm}`,
    name: `${showLength(diameterMm, 1)}, ${lies === 'upright' ? 'upright' : 'lying'}`,
  }))
  const chosen = holes.find(({ lies, diameterMm }) => `${lies} ${diameterMm}` === hole) ?? holes[0]
  const material = materials.find(({ id }) => id === materialId) ?? materials[0]
  if (chosen === undefined || material === undefined) return null
  const { lies, diameterMm, clearMm } = chosen
  return (
    <div className="run-fields">
      <Choice label="Hole" options={options} value={`${lies} ${diameterMm}`} onChange={setHole} />
      <Choice
        label="Plastic"
        options={materials.map(({ id, name }) => ({ id, name }))}
        value={material.id}
        onChange={setMaterial}
      />
      <Choice
        label="Measured by"
        options={[
          { id: 'calliper', name: 'calliper' },
          { id: 'pin', name: 'widest pin or drill that goes in' },
        ]}
        value={by}
        onChange={setBy}
      />
      <NumberBox
        label="Measured"
        limits={DRILL_LIMITS.measuredMm}
        value={null}
        step={0.05}
        unit="mm"
        hint="takes it on Enter"
        onChange={(measuredMm) => {
          const { holeReadings = NO_READINGS, printer } = frame
          const reading: HoleReading = {
            id: newId(),
            printerId: printer.id,
            materialId: material.id,
            lies,
            drawnMm: clearMm,
            measuredMm,
            by,
            date: dayOf(new Date()),
          }
          putReadings({ holeReadings: [...holeReadings, reading] }, 'take a measured hole')
        }}
      />
    </div>
  )
}

function ReadingList() {
  const { putReadings, dropLessons } = useActions()
  const frame = useAppState((state) => state.frame)
  const carried = useAppState((state) => state.workshop.holeReadings ?? NO_READINGS)
  const own = frame.holeReadings ?? NO_READINGS
  const others = carried.filter(({ id }) => !id.startsWith(`${frame.id}/`))
  const all = [...own, ...others]
  if (all.length === 0) return null
  const spools = [...new Set(all.map(({ materialId }) => materialId))]
  return (
    <>
      {spools.map((id) => {
        const material = materialOf(frame, id)
        const { of, from } = holeLoss(material, frame.printer.id, all)
        const { low, mid, high } = of('upright')
        return from === 0 ? null : (
          <p key={id}>
            Upright holes of {material.name} lose {showLength(mid, 2)}, likely {showMm(low, 2)} to{' '}
            {showMm(high, 2)}, after {from === 1 ? 'one hole' : `${from} holes`} measured.
          </p>
        )
      })}
      <ul className="drill-readings" aria-label="Measured holes">
        {all.map(({ id, lies, drawnMm, measuredMm, by, materialId }) => (
          <li key={id}>
            {materialOf(frame, materialId).name}, {lies === 'upright' ? 'upright' : 'lying'}, drawn{' '}
            {showLength(drawnMm, 2)}: {showLength(measuredMm, 2)} by {by}
            {own.some((each) => each.id === id) ? '' : ', from another frame'}
            <Button
              className="link"
              onPress={() => {
                if (own.some((each) => each.id === id)) {
                  const holeReadings = own.filter((each) => each.id !== id)
                  putReadings({ holeReadings }, 'take out a measured hole')
                } else dropLessons([id])
              }}
            >
              Take out
            </Button>
          </li>
        ))}
      </ul>
    </>
  )
}

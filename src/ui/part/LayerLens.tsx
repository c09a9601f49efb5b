import type { LedgerRow } from '../../state/store/derived.ts'
import { showLength, showMass, showMm, showNumber } from '../show.ts'
import { moveCutPlane } from './cutPlane.ts'
import { LaidList } from './LaidList.tsx'
import type { LensLayer } from './lensLayer.ts'
import { useLaidAs } from './useLaidAs.ts'

interface LayerLensProps {
  readonly row: LedgerRow
  readonly lens: LensLayer
}

/** Which layer is looked into: its number, its height, what it lays in grams. */
export function LayerLens({ row, lens }: LayerLensProps) {
  const { id } = row.part
  const { layer, layers, topMm, heightMm, planeAt } = lens
  const laid = useLaidAs(row, layer)
  const allG = laid.reduce((total, { massG }) => total + massG, 0)
  const words =
    `Layer ${showNumber(layer + 1, 0)} of ${showNumber(layers, 0)}, ` +
    `${showMm(topMm - heightMm, 2)} to ${showLength(topMm, 2)} up`
  const grams = laid.length === 0 ? 'being counted' : showMass(allG)
  return (
    <section className="layer-lens" aria-label="Layer lens">
      <label className="section-slider">
        <span className="unseen">Layer</span>
        <input
          type="range"
          min={1}
          max={layers}
          step={1}
          value={layer + 1}
          aria-valuetext={`${words}: ${grams}`}
          onChange={(event) => {
            moveCutPlane(id, planeAt(Number(event.currentTarget.value) - 1))
          }}
        />
        <output>
          {words}: <b>{grams}</b>
        </output>
      </label>
      {laid.length === 0 ? null : (
        <div className="breakdown">
          <LaidList shares={laid} />
        </div>
      )}
    </section>
  )
}

import { useId } from 'react'
import type { Range } from '../../../core/model/figures.ts'
import type { HeardTone } from '../../../core/stiffness/knock/firstTone.ts'
import { showNumber } from '../../show.ts'

const WIDTH = 360
const HEIGHT = 110
const FLOOR = HEIGHT - 18
/** Below the peak by so much is the bottom of the picture. dB */
const DEEP_DB = 40

/** What was heard over frequency, the tone that was taken, and the band that was reckoned. */
export function ToneSpectrum({
  tone,
  expected,
}: {
  readonly tone: HeardTone
  readonly expected: Range
}) {
  const twinId = useId()
  const { stepHz, power } = tone.spectrum
  const mostHz = 2.4 * Math.max(tone.hz, expected.mid)
  const x = (hz: number): number => (hz / mostHz) * WIDTH
  const peak = power[Math.round(tone.hz / stepHz)] ?? 1
  const y = (value: number): number => {
    const below = Math.min(DEEP_DB, Math.max(0, 10 * Math.log10(peak / Math.max(value, 1e-30))))
    return 6 + (below / DEEP_DB) * (FLOOR - 6)
  }
  const points = Array.from(power.subarray(1, Math.ceil(mostHz / stepHz)), (value, i) =>
    [x((i + 1) * stepHz), y(value)].map((at) => at.toFixed(1)).join(','),
  )
  return (
    <figure>
      <svg
        viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
        role="img"
        aria-details={twinId}
        aria-label={`Loudness over frequency, highest at ${showNumber(tone.hz, 1)} Hz`}
      >
        <rect
          className="knock-band"
          x={x(expected.low)}
          y={0}
          width={x(expected.high) - x(expected.low)}
          height={FLOOR}
        />
        <polyline className="moved-line" points={points.join(' ')} />
        <line className="knock-tone" x1={x(tone.hz)} x2={x(tone.hz)} y1={0} y2={FLOOR} />
        <text x={x(tone.hz) + 4} y={HEIGHT - 5}>
          {showNumber(tone.hz, 1)} Hz
        </text>
      </svg>
      <figcaption id={twinId}>
        Loudness over frequency; the band, {showNumber(expected.low, 1)} to{' '}
        {showNumber(expected.high, 1)} Hz, is what was reckoned.
      </figcaption>
    </figure>
  )
}

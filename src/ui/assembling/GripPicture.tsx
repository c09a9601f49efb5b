import type { GripLayer, GripStack } from '../../core/aircraft/hardware/gripStack.ts'
import { showLength, showMm } from '../show.ts'
import { pieceName, type Joinable } from './pieces.ts'

const WIDE_PX = 300
const HIGH_PX = 84
const MIDDLE_PX = 34
const SIDE_PX = 6
/** How far blocks reach on both sides of the screw. px */
const BLOCK_PX = 26
/** Narrower blocks have no room for their number. px */
const LEAST_PX = 16

interface GripPictureProps {
  readonly stack: GripStack
  readonly parts: readonly Joinable[]
}

/**
 * The stack of thicknesses a screw goes through, with its length and what it ends in; the sentence
 * says the same.
 */
export function GripPicture({ stack, parts }: GripPictureProps) {
  const { headMm, shankMm, layers, lengthMm } = stack
  const deepMm = Math.max(lengthMm ?? 0, ...layers.map(({ toMm }) => toMm))
  const scale = (WIDE_PX - 2 * SIDE_PX) / (headMm.high + deepMm)
  const x = (mm: number): number => SIDE_PX + (headMm.high + mm) * scale
  // As thick as it is long, as far as the head leaves plates to be seen beside it.
  const across = Math.min(scale, (1.3 * BLOCK_PX) / headMm.wide)
  const half = (mm: number): number => (mm / 2) * across
  return (
    <figure className="grip-picture">
      <svg
        viewBox={`0 0 ${WIDE_PX} ${HIGH_PX}`}
        width={WIDE_PX}
        height={HIGH_PX}
        aria-hidden="true"
      >
        {layers.map((layer) => {
          const { kind, fromMm, toMm } = layer
          const wide = (toMm - fromMm) * scale
          const high = kind === 'washer' || kind === 'nut' ? half(headMm.wide) : BLOCK_PX
          return (
            <g key={`${kind} ${fromMm}`}>
              {kind === 'gap' ? null : (
                <rect
                  className={`grip-${kind}`}
                  x={x(fromMm)}
                  y={MIDDLE_PX - high}
                  width={wide}
                  height={2 * high}
                />
              )}
              {wide < LEAST_PX ? null : (
                <text className="grip-number" x={x(fromMm) + wide / 2} y={HIGH_PX - 8}>
                  {showMm(toMm - fromMm, 1)}
                </text>
              )}
            </g>
          )
        })}
        <rect
          className="grip-screw"
          x={SIDE_PX}
          y={MIDDLE_PX - half(headMm.wide)}
          width={headMm.high * scale}
          height={2 * half(headMm.wide)}
        />
        {lengthMm === null ? null : (
          <rect
            className="grip-screw"
            x={x(0)}
            y={MIDDLE_PX - half(shankMm)}
            width={lengthMm * scale}
            height={2 * half(shankMm)}
          />
        )}
      </svg>
      <figcaption className="hint">{gripWords(stack, parts)}</figcaption>
    </figure>
  )
}

function gripWords({ thread, lengthMm, layers }: GripStack, parts: readonly Joinable[]): string {
  const words = layers.map((layer) => layerWords(layer, parts)).join(', ')
  const screw = lengthMm === null ? `no stocked ${thread} does` : `${thread} × ${lengthMm}`
  return `From under the head: ${words}. Screw: ${screw}.`
}

function layerWords({ kind, at, fromMm, toMm }: GripLayer, parts: readonly Joinable[]): string {
  const mm = showLength(toMm - fromMm, 1)
  if (kind === 'washer') return `${mm} of washers`
  if (kind === 'gap') return `a gap of ${mm}`
  if (kind === 'nut') return `a nut of ${mm}`
  const name = at === null ? '' : pieceName(parts, at)
  return kind === 'bitten' ? `into ${name}, ${mm} deep` : `${mm} of ${name}`
}

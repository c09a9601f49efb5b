import { PreweighError } from '../../model/problem.ts'
import { stockedLengths, THREADS, WASHERS } from './data.ts'
import { nutHeightMm } from './nut.ts'
import type { Stack, StackAnswer, StackEnd } from './stack.ts'
import { stackWarnings } from './stackWarnings.ts'
import type { MetricSize } from './types.ts'

/**
 * Threads that should stand out of a nut, so that it grips on full thread (common practice, no
 * source).
 */
const THREADS_PAST_NUT = 2
/**
 * Self-tapping screws in plastic hold over 2–3 diameters (Lincoln, Gomes, Braden, doi
 * 10.1201/9780203747889-6).
 */
const PLASTIC_BITE = 2
/**
 * Thread in a brass insert, a post or a motor, in screw diameters; an insert shorter than that is
 * used whole (common practice, no source).
 */
const METAL_BITE = 1

/**
 * How long a screw has to be to cross the layers and washers and bite, which stocked length does
 * it, and what is wrong with it. Lengths count from under the head, of a countersunk screw from its
 * flush top. Throws `bad-settings` for a size the standard does not have or a negative thickness.
 */
export function stackUp(stack: Stack): StackAnswer {
  const gripMm = gripOf(stack)
  const bite = biteOf(stack.end, stack.size)
  const leastMm = round(gripMm + bite.leastMm)
  const mostMm = bite.mostMm === null ? null : round(gripMm + bite.mostMm)
  const lengthMm =
    stack.lengthMm ??
    stockedLengths(stack.size).find(
      (length) => length >= leastMm && (mostMm === null || length <= mostMm),
    ) ??
    null
  const engagementMm = lengthMm === null ? null : round(Math.max(0, lengthMm - gripMm))
  const answer = { gripMm, leastMm, mostMm, lengthMm, engagementMm }
  return { ...answer, warnings: stackWarnings(stack, answer) }
}

interface Bite {
  readonly leastMm: number
  readonly mostMm: number | null
}

/** Length of screw wanted past the layers. */
function biteOf(end: StackEnd, size: MetricSize): Bite {
  const { diameterMm, pitchMm } = THREADS[size]
  switch (end.kind) {
    case 'nut':
      return {
        leastMm: nutHeightMm(end.standard, size) + THREADS_PAST_NUT * pitchMm,
        mostMm: null,
      }
    case 'insert':
      return { leastMm: Math.min(end.insertMm, METAL_BITE * diameterMm), mostMm: end.holeDepthMm }
    case 'plastic':
      return { leastMm: PLASTIC_BITE * diameterMm, mostMm: end.holeDepthMm }
    case 'post':
      return { leastMm: METAL_BITE * diameterMm, mostMm: end.depthMm }
    case 'motor':
      return { leastMm: Math.min(METAL_BITE * diameterMm, end.depthMm), mostMm: end.depthMm }
  }
}

function gripOf(stack: Stack): number {
  for (const { name, thicknessMm } of stack.layers) {
    if (thicknessMm >= 0 && Number.isFinite(thicknessMm)) continue
    throw new PreweighError(
      'bad-settings',
      `“${name}” cannot be ${thicknessMm} mm thick.`,
      'Type a thickness of 0 mm or more.',
    )
  }
  const layersMm = stack.layers.reduce((sum, layer) => sum + layer.thicknessMm, 0)
  return round(layersMm + stack.washers * WASHERS[stack.size].heightMm)
}

/** Binary fractions of a tenth must not decide whether 12 mm is enough for 12.000000000000002. */
function round(lengthMm: number): number {
  return Math.round(lengthMm * 1e6) / 1e6
}

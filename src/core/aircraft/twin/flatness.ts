import type { Census } from '../../model/census.ts'

/** Whether a part could as well be cut from plate, as it lies. */
export interface Flatness {
  /**
   * `plate`: its outline holds over its height. `bar`: low, but it tapers or has steps; a plate is
   * a stand-in.
   */
  readonly kind: 'plate' | 'bar' | 'no'
  readonly words: string
}

/**
 * Mean departure of a layer's area from the middle one, as a share. Decks lie below 0.02, crowned
 * arms at 0.2 to 0.29.
 */
const PLATE_SPREAD = 0.1
const BAR_SPREAD = 0.3
/** Height over the side of a square as large as the middle layer: a cube is 1. */
const SLIM = 0.4

/**
 * Judges from the areas of the layers alone: nearly constant and low is flat (bounds ours, set on
 * drawn parts). The census knows the part only as it lies on the bed, so a deck printed on edge is
 * not seen as flat.
 */
export function flatness(census: Pick<Census, 'layers' | 'heightMm'>): Flatness {
  const { layers, heightMm } = census
  const sorted = layers.areaMm2.toSorted()
  const middle = sorted[Math.floor(sorted.length / 2)] ?? 0
  if (!(middle > 0)) return { kind: 'no', words: 'No layer to take an outline from.' }
  let off = 0
  for (let i = 0; i < layers.count; i++) {
    off += Math.abs((layers.areaMm2[i] ?? 0) - middle) * (layers.heightMm[i] ?? 0)
  }
  const spread = off / (heightMm * middle)
  const slim = heightMm / Math.sqrt(middle)
  const percent = (100 * spread).toFixed(0)
  if (spread <= PLATE_SPREAD && slim <= SLIM) {
    return { kind: 'plate', words: 'Flat: its layers have the same outline all the way up.' }
  }
  if (spread <= BAR_SPREAD && slim <= SLIM) {
    return {
      kind: 'bar',
      words: `Low, but its layers differ by ${percent} % in area: a cut plate only stands in for it.`,
    }
  }
  return {
    kind: 'no',
    words:
      slim > SLIM
        ? `Too stout for a plate as it lies: ${mm(heightMm)} mm high over an outline as large as a ` +
          `square of ${mm(Math.sqrt(middle))} mm.`
        : `Not flat: its layers differ by ${percent} % in area.`,
  }
}

function mm(value: number): string {
  return String(Number(value.toFixed(value < 10 ? 1 : 0)))
}

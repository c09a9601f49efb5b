import type { Spot } from '../model/runs.ts'
import { sineCosine, turnedBox } from './hull.ts'
import { mirrorOutline } from './mirror.ts'
import type { PieceOutline } from './types.ts'

/** What is kept of a place: finer than any printer, coarse enough to be read. mm */
const kept = (mm: number): number => Math.round(mm * 1000) / 1000
/** Hands that drag place pieces to the tenth of a millimetre. */
export const tenth = (mm: number): number => Math.round(mm * 10) / 10

/** The middle of a piece's box as it was drawn, on the bed, mm. */
export function middleOf(
  { xMm, yMm, turnDeg, mirrored }: Spot,
  outline: PieceOutline,
): readonly [number, number] {
  const { hullMm } = mirrored === true ? mirrorOutline(outline) : outline
  const { minX, minY, widthMm, depthMm } = turnedBox(hullMm, 0)
  const [x, y] = [minX + widthMm / 2, minY + depthMm / 2]
  const [sine, cosine] = sineCosine(turnDeg)
  return [xMm + cosine * x - sine * y, yMm + sine * x + cosine * y]
}

/** The piece with its middle somewhere else, mm. */
export function moveTo(spot: Spot, outline: PieceOutline, to: readonly [number, number]): Spot {
  const [x, y] = middleOf(spot, outline)
  return { ...spot, xMm: kept(spot.xMm + to[0] - x), yMm: kept(spot.yMm + to[1] - y) }
}

/** The piece turned about its middle to so many degrees. */
export function turnTo(spot: Spot, outline: PieceOutline, turnDeg: number): Spot {
  const turned = { ...spot, turnDeg: ((turnDeg % 360) + 360) % 360 }
  return moveTo(turned, outline, middleOf(spot, outline))
}

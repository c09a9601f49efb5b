import { arrange, type LoosePiece } from '../core/drawing/arrange.ts'
import { boxInView } from '../core/drawing/boxInView.ts'
import { drawLines } from '../core/drawing/drawLines.ts'
import type { DrawnPiece, LineDrawing } from '../core/drawing/types.ts'
import { unitToMm } from '../core/model/units.ts'
import { takingOf, type MeshShelf } from './meshShelf.ts'
import type { DrawAnswer, DrawAsk, LooseRow } from './protocol.ts'

/** Draws a frame; a part whose mesh cannot be read is told and left out. */
export async function drawFrame(ask: DrawAsk, shelf: MeshShelf): Promise<DrawAnswer> {
  const placed: DrawnPiece[] = []
  const loose: LoosePiece[] = []
  const left: string[] = []
  for (const { item, source, unit, motions, looseCount } of ask.parts) {
    try {
      const mesh = shelf.outward(await shelf.read(source), takingOf(source, unit))
      for (const motion of motions) placed.push({ item, mesh, motion })
      const scaleToMm = unitToMm(unit)
      for (let i = 0; i < looseCount; i++) loose.push({ item, mesh, scaleToMm })
    } catch {
      left.push(item)
    }
  }
  const pieces = arrange(placed, loose, ask.view, ask.apart)
  const drawing = drawLines(pieces, ask.view, ask.sheet, ask.samples)
  return {
    drawing,
    left,
    loose: drawing === null ? null : looseRow(drawing, pieces.slice(placed.length)),
  }
}

function looseRow(drawing: LineDrawing, loose: readonly DrawnPiece[]): LooseRow | null {
  if (loose.length === 0) return null
  const { left, right, top, bottom } = boxInView(loose, drawing.view)
  const [x, y] = drawing.originPx
  const { scale } = drawing
  return {
    items: [...new Set(loose.map(({ item }) => item))],
    boxPx: [x + scale * left, y - scale * top, x + scale * right, y - scale * bottom],
  }
}

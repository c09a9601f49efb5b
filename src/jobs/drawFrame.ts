import { arrange, type LoosePiece } from '../core/drawing/arrange.ts'
import { boxInView } from '../core/drawing/boxInView.ts'
import { drawLines } from '../core/drawing/drawLines.ts'
import { project } from '../core/drawing/project.ts'
import type { DrawnPiece, LineDrawing, Sheet } from '../core/drawing/types.ts'
import { unitToMm } from '../core/model/units.ts'
import { plus, times } from '../core/model/vectors.ts'
import { takingOf, type MeshShelf } from './meshShelf.ts'
import type { DrawAnswer, DrawAsk, DrawPart, LooseRow } from './asks/frameAsks.ts'

/** Draws a frame; a part whose mesh cannot be read is told and left out. */
export async function drawFrame(ask: DrawAsk, shelf: MeshShelf): Promise<DrawAnswer> {
  const placed: DrawnPiece[] = []
  const loose: LoosePiece[] = []
  const ghosts: DrawnPiece[] = []
  const bought: DrawnPiece[] = []
  const left: string[] = []
  const lay = async (parts: readonly DrawPart[], into: DrawnPiece[]): Promise<void> => {
    for (const { item, source, unit, motions, looseCount, ways = [] } of parts) {
      try {
        const mesh = shelf.outward(await shelf.read(source), takingOf(source, unit))
        motions.forEach((motion, i) => {
          const way = ways[i] ?? null
          into.push({ item, mesh, motion, ...(way === null ? {} : { way }) })
        })
        const scaleToMm = unitToMm(unit)
        for (let i = 0; i < looseCount; i++) loose.push({ item, mesh, scaleToMm })
      } catch {
        left.push(item)
      }
    }
  }
  await lay(ask.parts, placed)
  await lay(ask.ghosts, ghosts)
  await lay(ask.bought, bought)
  const all = arrange([...placed, ...bought], loose, ask.view, ask.apart)
  const bodies = all.slice(placed.length, placed.length + bought.length)
  const pieces = all.filter((piece) => !bodies.includes(piece))
  const isAlone = ghosts.length + bought.length === 0
  const sheet = isAlone ? ask.sheet : sheetFor([...all, ...ghosts], ask)
  const drawing = drawLines(pieces, ask.view, sheet, ask.samples)
  return {
    drawing,
    left,
    loose: drawing === null ? null : looseRow(drawing, pieces.slice(placed.length)),
    ghost: drawLines(ghosts, ask.view, sheet, ask.samples),
    bought: boughtLines(bodies, ask, sheet),
  }
}

/** Bought things, the propellers upon the others. */
function boughtLines(
  bodies: readonly DrawnPiece[],
  { bought, view, samples }: DrawAsk,
  sheet: Sheet,
): LineDrawing | null {
  const swept = new Set(bought.flatMap(({ item, isSwept }) => (isSwept ? [item] : [])))
  const drawn = [false, true].flatMap((isSwept) => {
    const own = bodies.filter(({ item }) => swept.has(item) === isSwept)
    return drawLines(own, view, sheet, samples) ?? []
  })
  const [first] = drawn
  return first === undefined ? null : { ...first, items: drawn.flatMap(({ items }) => items) }
}

/** The sheet on which all of these have room, for drawings that lie upon each other. */
function sheetFor(all: readonly DrawnPiece[], { view, sheet }: DrawAsk): Sheet {
  const fitted = project(all, view, sheet)
  if (fitted === null || sheet.scale !== undefined) return sheet
  const { right, up } = fitted.axes
  const [x, y] = fitted.originPx
  const across = (sheet.widthPx / 2 - x) / fitted.scale
  const upwards = (y - sheet.heightPx / 2) / fitted.scale
  return {
    ...sheet,
    scale: fitted.scale,
    middleMm: plus(times(right, across), times(up, upwards)),
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

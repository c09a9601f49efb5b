import type { Mesh, Vec3 } from '../model/mesh.ts'
import type { DrawnPiece, Motion, Sheet, View } from './types.ts'
import type { ViewAxes } from './viewAxes.ts'
import { viewAxes } from './viewAxes.ts'

/** A piece in view axes; one entry a vertex. */
export interface ProjectedPiece {
  /** Number of its item in the drawing. */
  readonly item: number
  readonly mesh: Mesh
  /** To the right and down, px. */
  readonly x: Float64Array
  readonly y: Float64Array
  /** Towards the eye, mm. */
  readonly depth: Float64Array
  /** Its triangles are wound the other way round. */
  readonly mirrored: boolean
}

export interface Projection {
  readonly items: readonly string[]
  readonly pieces: readonly ProjectedPiece[]
  readonly scale: number
  readonly originPx: readonly [number, number]
  readonly boxPx: readonly [number, number, number, number]
  readonly axes: ViewAxes
}

/** Lays pieces into a view and fits them to the sheet. Null when there is nothing with a size. */
export function project(
  pieces: readonly DrawnPiece[],
  view: View,
  sheet: Sheet,
): Projection | null {
  const axes = viewAxes(view)
  const items = [...new Set(pieces.map(({ item }) => item))]
  const box = { left: Infinity, right: -Infinity, top: Infinity, bottom: -Infinity }
  const laid = pieces.map(({ item, mesh, motion }) => {
    const seen = projectPiece(mesh, motion, axes)
    widen(box, seen, mesh.indices)
    return { item: items.indexOf(item), mesh, ...seen, mirrored: isMirrored(motion) }
  })
  const width = box.right - box.left
  const height = box.bottom - box.top
  if (!(Math.max(width, height) > 0) || !Number.isFinite(width + height)) return null
  const room = (px: number): number => Math.max(1, px - 2 * sheet.marginPx)
  const scale =
    sheet.scale ??
    Math.min(
      room(sheet.widthPx) / Math.max(width, 1e-9),
      room(sheet.heightPx) / Math.max(height, 1e-9),
    )
  const [midX, midY] =
    sheet.middleMm === undefined
      ? [(box.left + box.right) / 2, (box.top + box.bottom) / 2]
      : [dot(axes.right, sheet.middleMm), -dot(axes.up, sheet.middleMm)]
  const originX = sheet.widthPx / 2 - scale * midX
  const originY = sheet.heightPx / 2 - scale * midY
  for (const { x, y } of laid) {
    for (let v = 0; v < x.length; v++) {
      x[v] = originX + scale * x[v]!
      y[v] = originY + scale * y[v]!
    }
  }
  return {
    items,
    pieces: laid,
    scale,
    originPx: [originX, originY],
    boxPx: [
      originX + scale * box.left,
      originY + scale * box.top,
      originX + scale * box.right,
      originY + scale * box.bottom,
    ],
    axes,
  }
}

/** One piece in a view: to the right, down and towards the eye, mm; one entry a vertex. */
export function projectPiece(
  { positions }: Mesh,
  motion: Motion,
  { right, up, toEye }: ViewAxes,
): { x: Float64Array; y: Float64Array; depth: Float64Array } {
  const [rx, ry, rz, r0] = along(right, motion)
  const [ux, uy, uz, u0] = along(up, motion)
  const [ex, ey, ez, e0] = along(toEye, motion)
  const count = Math.floor(positions.length / 3)
  const x = new Float64Array(count)
  const y = new Float64Array(count)
  const depth = new Float64Array(count)
  for (let v = 0, p = 0; v < count; v++, p += 3) {
    const px = positions[p]!
    const py = positions[p + 1]!
    const pz = positions[p + 2]!
    x[v] = rx * px + ry * py + rz * pz + r0
    y[v] = -(ux * px + uy * py + uz * pz + u0)
    depth[v] = ex * px + ey * py + ez * pz + e0
  }
  return { x, y, depth }
}

/**
 * A view axis pulled back through a motion: what each coordinate of a vertex adds along it, and a
 * constant.
 */
function along([a, b, c]: Vec3, m: Motion): readonly [number, number, number, number] {
  return [
    a * m[0] + b * m[4] + c * m[8],
    a * m[1] + b * m[5] + c * m[9],
    a * m[2] + b * m[6] + c * m[10],
    a * m[3] + b * m[7] + c * m[11],
  ]
}

function isMirrored(m: Motion): boolean {
  const determinant =
    m[0] * (m[5] * m[10] - m[6] * m[9]) -
    m[1] * (m[4] * m[10] - m[6] * m[8]) +
    m[2] * (m[4] * m[9] - m[5] * m[8])
  return determinant < 0
}

function widen(
  box: { left: number; right: number; top: number; bottom: number },
  { x, y }: { readonly x: Float64Array; readonly y: Float64Array },
  indices: Uint32Array,
): void {
  for (const v of indices) {
    if (x[v]! < box.left) box.left = x[v]!
    if (x[v]! > box.right) box.right = x[v]!
    if (y[v]! < box.top) box.top = y[v]!
    if (y[v]! > box.bottom) box.bottom = y[v]!
  }
}

const dot = (a: Vec3, b: readonly number[]): number =>
  a[0] * (b[0] ?? 0) + a[1] * (b[1] ?? 0) + a[2] * (b[2] ?? 0)

import { MaxRectsPacker, Rectangle } from 'maxrects-packer/dist/maxrects-packer.mjs'
import { outlineOf } from '../../src/core/runs/outline.ts'
import { nest } from '../../src/core/runs/nest.ts'
import { turnedBox } from '../../src/core/runs/hull.ts'
import type { Bed, LaidPart } from '../../src/core/runs/types.ts'
import { placeMesh } from '../../src/core/mesh/pose.ts'
import { outwardMesh } from '../../src/core/mesh/outwardMesh.ts'
import { readMesh } from '../../src/core/formats/read.ts'
import { unitToMm } from '../../src/core/model/units.ts'
import { POSE_AS_DRAWN } from '../../src/core/model/settings.ts'
import type { Mesh } from '../../src/core/model/mesh.ts'
import { loadFrame } from '../../src/cli/loadFrame.ts'
import { prism, tube } from '../support/meshes.ts'

/*
 * Beds used and share of bed, beside a kept packer of rectangles that is given each piece's smallest
 * box. `npm run beds`.
 */

const GAP_MM = 2
const BED: Bed = { widthMm: 220, depthMm: 220, heightMm: 240, marginMm: 0 }

async function demoParts(id: string, times: number): Promise<readonly LaidPart[]> {
  const loaded = await loadFrame(id, '.', 'en-US')
  if (!loaded.ok) throw new Error(loaded.problem.message)
  return loaded.value.frame.parts.flatMap(
    ({ id: partId, meshHash, fileName, unit, pose, ...part }) => {
      const bytes = loaded.value.meshes.get(meshHash)
      if (bytes === undefined) return []
      const scaleToMm = unitToMm(unit)
      const outward = outwardMesh(readMesh(bytes, fileName).mesh, { scaleToMm, keepsHairs: false })
      const outline = outlineOf(placeMesh(outward, scaleToMm, pose))
      const count = times * (part.quantity + part.spares)
      return outline === null ? [] : [{ id: partId, count, outline, brimMm: part.recipe.brimMm }]
    },
  )
}

function shapes(kinds: readonly (readonly [mesh: Mesh, count: number])[]): readonly LaidPart[] {
  return kinds.flatMap(([mesh, count], i) => {
    const outline = outlineOf(placeMesh(mesh, 1, POSE_AS_DRAWN))
    return outline === null ? [] : [{ id: `${i}`, count, outline, brimMm: 0 }]
  })
}

/** Longest and shortest side of the smallest box. */
function smallestBox({ outline, brimMm }: LaidPart): readonly [number, number] {
  const boxes = Array.from({ length: 180 }, (_, i) => turnedBox(outline.hullMm, i / 2))
  const { widthMm, depthMm } = boxes.reduce((a, b) =>
    b.widthMm * b.depthMm < a.widthMm * a.depthMm ? b : a,
  )
  return [widthMm + 2 * brimMm, depthMm + 2 * brimMm]
}

function byRectangles(parts: readonly LaidPart[]): number {
  const packer = new MaxRectsPacker(BED.widthMm, BED.depthMm, GAP_MM, {
    smart: false,
    pot: false,
    square: false,
    allowRotation: true,
  })
  packer.addArray(
    parts.flatMap((part) => {
      const [width, depth] = smallestBox(part)
      return Array.from({ length: part.count }, () => new Rectangle(width, depth))
    }),
  )
  return packer.bins.length
}

const angle = (long: number, wide: number, thick: number): Mesh =>
  prism(
    [
      [0, 0],
      [long, 0],
      [long, thick],
      [thick, thick],
      [thick, wide],
      [0, wide],
    ],
    5,
  )
const wedge = (long: number, root: number, tip: number): Mesh =>
  prism(
    [
      [0, 0],
      [long, (root - tip) / 2],
      [long, (root + tip) / 2],
      [0, root],
    ],
    5,
  )

const SETS: readonly (readonly [string, readonly LaidPart[]])[] = [
  ['Sandpiper once', await demoParts('sandpiper', 1)],
  ['Sandpiper four times', await demoParts('sandpiper', 4)],
  ['Tern once', await demoParts('tern', 1)],
  ['Tern twice', await demoParts('tern', 2)],
  ['40 angles of 90 × 60, 12 wide', shapes([[angle(90, 60, 12), 40]])],
  ['24 tapered arms of 160', shapes([[wedge(160, 46, 14), 24]])],
  [
    '6 rings of 140 and 24 discs of 40',
    shapes([
      [tube(70, 52, 5, 96), 6],
      [tube(20, 5, 5, 48), 24],
    ]),
  ],
]

console.log('set | pieces | area bound | rectangles | ours | ours share | ms')
for (const [name, parts] of SETS) {
  const fitting = parts.filter(
    (part) =>
      smallestBox(part)[0] <= 310 && part.outline.heightMm <= BED.heightMm && nestable(part),
  )
  const pieces = fitting.reduce((sum, { count }) => sum + count, 0)
  const area = fitting.reduce((sum, { count, outline }) => sum + count * outline.areaMm2, 0)
  const started = performance.now()
  const beds = nest(fitting, BED, { gapMm: GAP_MM })
  const ms = performance.now() - started
  const bedMm2 = BED.widthMm * BED.depthMm
  const rectangles = byRectangles(fitting)
  console.log(
    [
      name,
      pieces,
      Math.ceil(area / bedMm2),
      `${rectangles} (${((100 * area) / bedMm2 / rectangles).toFixed(0)} %)`,
      beds.length,
      `${((100 * area) / bedMm2 / beds.length).toFixed(0)} %`,
      ms.toFixed(0),
    ].join(' | '),
  )
}

function nestable({ outline, brimMm }: LaidPart): boolean {
  return Array.from({ length: 360 }, (_, i) => turnedBox(outline.hullMm, i / 2)).some(
    ({ widthMm, depthMm }) =>
      widthMm + 2 * brimMm <= BED.widthMm && depthMm + 2 * brimMm <= BED.depthMm,
  )
}

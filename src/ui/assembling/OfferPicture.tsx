import { useMemo } from 'react'
import { VIEWS } from '../../core/drawing/viewAxes.ts'
import { wayOf } from '../../core/joints/jointMotion.ts'
import type { Repeat } from '../../core/joints/repeatWay.ts'
import type { Way } from '../../core/joints/waysFor.ts'
import { mapDirection } from '../../core/mesh/rigidMaps.ts'
import { MiniDrawing } from './MiniDrawing.tsx'
import type { Assembling } from './useAssembling.ts'

const CARD_WIDE_PX = 150
const CARD_HIGH_PX = 92

/** What stands, with the piece where one way would put it. */
export function WayPicture({ way, model }: { readonly way: Way; readonly model: Assembling }) {
  const { motion, joint } = way
  const { partId } = joint.b
  const ghosts = useMemo(() => [{ partId, motion }], [partId, motion])
  return (
    <MiniDrawing
      laid={model.laid}
      ghosts={ghosts}
      view={viewOf(way, model)}
      widthPx={CARD_WIDE_PX}
      heightPx={CARD_HIGH_PX}
    />
  )
}

/** What stands, with every piece that taking the way again would put. */
export function RepeatPicture({
  repeat,
  model,
}: {
  readonly repeat: Repeat
  readonly model: Assembling
}) {
  const ghosts = useMemo(
    () => repeat.placed.map(({ joint, motion }) => ({ partId: joint.b.partId, motion })),
    [repeat],
  )
  return (
    <MiniDrawing
      laid={model.laid}
      ghosts={ghosts}
      view={model.way === null ? VIEWS.top : viewOf(model.way, model)}
      widthPx={CARD_WIDE_PX}
      heightPx={CARD_HIGH_PX}
    />
  )
}

/** Along the holes that meet, as near as one of the views comes. */
function viewOf({ joint }: Way, { standing, laid }: Assembling) {
  const a = standing.findIndex(
    ({ partId, piece }) => partId === joint.a.partId && piece === joint.a.piece,
  )
  const motion = laid[a]?.motion
  if (motion === undefined) return VIEWS.top
  const [x, y, z] = mapDirection(motion, wayOf(joint.a)).map(Math.abs) as [number, number, number]
  if (z >= x && z >= y) return VIEWS.top
  return x >= y ? VIEWS.front : VIEWS.side
}

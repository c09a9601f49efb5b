import { useState, type ReactNode } from 'react'
import { describe, expect, test } from 'vitest'
import { drillList } from '../../src/core/drill/drillList.ts'
import type { HoleUse } from '../../src/core/model/drill.ts'
import { BODY_DEFAULTS } from '../../src/core/joints/patternShelf.ts'
import type { ItemBody } from '../../src/core/model/aircraft.ts'
import type { Joint } from '../../src/core/model/joints.ts'
import type { Spot } from '../../src/core/model/runs.ts'
import type { PieceOutline } from '../../src/core/runs/types.ts'
import { ledgerRows } from '../../src/state/store/derived.ts'
import { materialOf } from '../../src/state/store/materialOf.ts'
import { AppContext, useAppState } from '../../src/ui/appContext.ts'
import { BodyFields } from '../../src/ui/aircraft/items/BodyFields.tsx'
import { FreedomFields } from '../../src/ui/assembling/JointFields.tsx'
import { CouponBlock } from '../../src/ui/bench/CouponBlock.tsx'
import { groupRows } from '../../src/ui/bench/drillGroups.ts'
import { HoleUseChoice } from '../../src/ui/bench/HoleUseChoice.tsx'
import { ScaleFields, SCALE_AT_FIRST } from '../../src/ui/bench/ScaleFields.tsx'
import { SpotFields } from '../../src/ui/bench/SpotFields.tsx'
import { StiffnessBlock } from '../../src/ui/part/stiffness/StiffnessBlock.tsx'
import { holeAt } from '../support/drillParts.ts'
import { draw, drawAircraft, openSection } from '../support/drawAircraft.tsx'
import { typeAll } from '../support/numberBoxes.ts'
import { boxFile, startSession } from '../support/session.ts'

/*
 * Number boxes that `app/numberFields` does not walk to, since a frame must be joined, bored or laid for them: beds,
 * spools, drill list, coupon, joints, loads. Browsers of other languages differ in what they show alone, and that is
 * tried there; what is typed is read by the same words here.
 */

/** Types into every box of a place with either mark; gives the labels. */
async function typed(place: Element): Promise<readonly string[]> {
  const all = await typeAll(place)
  const wrong = all.filter(({ label, typed: text, shown, said }) => {
    const local = text.replace(',', '.')
    // What was measured goes into a list.
    return label === 'Measured' ? shown !== '' : shown !== local && !said.includes(local)
  })
  expect(wrong).toEqual([])
  return [...new Set(all.map(({ label }) => label))]
}

const OUTLINE: PieceOutline = {
  cellMm: 1,
  across: 20,
  down: 10,
  cells: new Uint8Array(200).fill(1),
  fromMm: [0, 0],
  hullMm: new Float64Array([0, 0, 20, 0, 20, 10, 0, 10]),
  heightMm: 5,
  areaMm2: 200,
}

function KeptSpot() {
  const [spot, setSpot] = useState<Spot>({ partId: 'a', xMm: 5, yMm: 5, turnDeg: 0 })
  return (
    <SpotFields
      name="a"
      spot={spot}
      outline={OUTLINE}
      run={0}
      runs={[0]}
      onPlace={setSpot}
      isCoupon={false}
      onCoupon={() => undefined}
      onPass={() => undefined}
    />
  )
}

const END = { piece: 0, face: null, bores: [] } as const
const FACE = { pointMm: [0, 0, 0], normal: [0, 0, 1] } as const
const JOINT: Omit<Joint, 'id'> = {
  kind: 'bores',
  mirrored: false,
  a: { ...END, partId: 'a' },
  b: { ...END, partId: 'b' },
  fastener: null,
  turnDeg: 0,
  slideMm: 0,
  gapMm: 0,
}

function KeptFreedom({ touches }: { readonly touches: boolean }) {
  const [joint, setJoint] = useState(JOINT)
  const face = touches ? FACE : null
  return (
    <FreedomFields
      joint={{ ...joint, a: { ...joint.a, face }, b: { ...joint.b, face } }}
      onChange={(patch) => setJoint({ ...joint, ...patch })}
    />
  )
}

/** The one hole of the first part, as the drill list has it. */
function OneHole() {
  const part = useAppState((state) => state.frame.parts[0])
  const frame = useAppState((state) => state.frame)
  if (part === undefined) return null
  const found = { partId: part.id, holes: [holeAt()], necks: [] }
  const material = materialOf(frame, part.materialId)
  const rows = drillList([{ part, material, found }], [], frame.printer.id, [])
  const [group] = groupRows(rows)
  return (
    <>
      {group === undefined ? null : <HoleUseChoice group={group} />}
      <CouponBlock rows={rows} />
    </>
  )
}

function KeptScale() {
  const [scale, setScale] = useState(SCALE_AT_FIRST)
  return <ScaleFields scale={scale} onChange={setScale} />
}

function KeptBody({ kind }: { readonly kind: 'motor' | 'board' }) {
  const [body, setBody] = useState<ItemBody | undefined>(BODY_DEFAULTS[kind])
  return <BodyFields body={body} onChange={setBody} />
}

const LOOSE: readonly (readonly [string, () => ReactNode, readonly string[]])[] = [
  ['a piece on a bed', () => <KeptSpot />, ['Middle from the left', 'from the front', 'Turned']],
  ['a joint of faces', () => <KeptFreedom touches />, ['Turn', 'Gap between the faces']],
  ['a joint on an axis', () => <KeptFreedom touches={false} />, ['Turn', 'Slide along the axis']],
  ['a motor’s body', () => <KeptBody kind="motor" />, ['Diameter', 'High']],
  ['a board’s body', () => <KeptBody kind="board" />, ['Long', 'Wide', 'High']],
  ['a scale', () => <KeptScale />, ['Tare still on the scale']],
]

describe('every number box takes either decimal mark and loses nothing', () => {
  test.each(LOOSE)('of %s', async (_, drawn, labels) => {
    const { store, actions } = await startSession()
    draw(<AppContext value={{ store, actions }}>{drawn()}</AppContext>)
    await expect.poll(() => document.querySelector('.number-box')).not.toBeNull()
    expect(await typed(document.body)).toEqual(expect.arrayContaining([...labels]))
  })

  test('of beds and spools', async () => {
    const { actions } = await drawAircraft({}, [boxFile('deck.stl', 40, 30, 3)])
    actions.putRuns({ order: 'one at a time' }, 'begin')
    const runs = await openSection('Print runs')
    await runs.getByRole('button', { name: 'Put a spool on the shelf' }).click()
    await expect.element(runs.getByRole('textbox', { name: 'Empty reel 1' })).toBeVisible()
    const fields = runs.element().querySelector('.run-fields')!
    expect(await typed(fields)).toEqual([
      'An evening',
      'Between pieces',
      'Edge of the bed',
      'Round the nozzle',
      'Below the rail',
    ])
    const shelf = runs.element().querySelector('.spool-shelf')!
    expect(await typed(shelf)).toEqual(['Spool 1 with its reel', 'Empty reel 1'])
  })

  test('of a load, and of holes and the coupon that measures them', async () => {
    const session = await startSession()
    const { store, actions } = session
    await actions.addFiles([boxFile('plate.stl', 40, 30, 4)])
    await actions.settled()
    const [row] = ledgerRows(session.state())
    const { id } = row!.part
    const { centreMm, diameterMm } = holeAt()
    const use = (chosen: HoleUse) => {
      actions.updateParts([id], { holeUses: [{ centreMm, diameterMm, use: chosen }] })
    }
    use({ kind: 'damper', neckMm: diameterMm, grooveMm: null })
    draw(
      <AppContext value={{ store, actions }}>
        <section aria-label="Hole">
          <OneHole />
        </section>
        <StiffnessBlock row={row!} />
      </AppContext>,
    )
    const hole = await openSection('Hole')
    expect(await typed(hole.element())).toEqual(['Neck', 'Groove', 'Measured'])
    use({ kind: 'shaft', shaftMm: 3 })
    await expect.element(hole.getByRole('textbox', { name: 'Shaft' })).toBeVisible()
    expect(await typed(hole.element())).toEqual(['Shaft', 'Measured'])
    const block = await openSection('How it gives, breaks and rings')
    expect(await typed(block.element())).toEqual(['Load'])
  })
})

import { expect, test } from 'vitest'
import { VIEWS } from '../../../src/core/drawing/viewAxes.ts'
import { boxFile, startSession } from '../../support/session.ts'

const WANTED = {
  view: VIEWS.top,
  sheet: { widthPx: 400, heightPx: 300, marginPx: 20, scale: 2 },
  apart: 0,
  samples: 1,
} as const

test('pieces with a place are drawn there, the others beside them, each in its own size', async () => {
  const { actions, state } = await startSession()
  await actions.addFiles([boxFile('deck.stl', 80, 40, 4), boxFile('foot.stl', 10, 10, 10)])
  await actions.settled()
  const [deck, foot] = state().frame.parts
  const place = { partId: deck!.id, positionMm: [0, 0, 0], rotateDeg: [0, 0, 90] } as const
  actions.putAircraft({ places: [{ ...place, mirrored: false }] }, 'place')
  actions.updateParts([foot!.id], { quantity: 2 })

  const answer = await actions.drawFrame(WANTED)
  const [drawnDeck, drawnFeet] = answer!.drawing!.items
  // 2 px a mm: an area of 80 × 40 mm is 12,800 px², two feet are 800 px².
  expect(Math.abs(drawnDeck!.areaPx2 / 12_800 - 1)).toBeLessThan(0.01)
  expect(Math.abs(drawnFeet!.areaPx2 / 800 - 1)).toBeLessThan(0.1)
  // Turned a quarter, the deck is 40 mm wide; the feet stand in a row below it.
  const [left, top, right, bottom] = answer!.drawing!.boxPx
  expect(right - left).toBeLessThan(2 * 85)
  expect(bottom - top).toBeGreaterThan(2 * 90)
  expect(answer!.left).toEqual([])
  // The row of those without a place: two feet of 20 px and what is left between them, a pitch of
  // 0.12 of a foot.
  expect(answer!.loose?.items).toEqual([foot!.id])
  const [rowLeft, rowTop, rowRight, rowBottom] = answer!.loose!.boxPx
  expect(rowRight - rowLeft).toBeCloseTo(2 * 20 + 0.12 * 20, 6)
  expect(rowBottom - rowTop).toBeCloseTo(20, 6)
  expect(rowBottom).toBeCloseTo(bottom, 6)
})

test('a frame without parts gives no drawing', async () => {
  const { actions } = await startSession()
  expect(await actions.drawFrame(WANTED)).toEqual({
    drawing: null,
    bought: null,
    left: [],
    loose: null,
    ghost: null,
  })
})

import { describe, expect, test } from 'vitest'
import { COVERAGE } from '../../../src/core/doubt/bell.ts'
import { scaleNoiseG } from '../../../src/core/doubt/readings.ts'
import { foretellPieces } from '../../../src/core/frame/foretellPieces.ts'
import { frameDoubt } from '../../../src/core/frame/frameDoubt.ts'
import { doubtedPart, onScale } from '../../support/doubtedParts.ts'

const SCALE = { pieces: 1, stepG: 0.1, tareG: 0 }
const deck = doubtedPart('deck', 30, 1)
const arm = doubtedPart('arm', 20, 4)

describe('what the scale should show', () => {
  test('is the calculated mass, as wide as the piece and the scale are unsure', () => {
    const doubt = frameDoubt([deck, arm], [])
    const { netG } = foretellPieces(doubt, { ...SCALE, partId: 'deck' })!
    const alone = doubt.bell('mass', 'flying', ['deck'])
    expect(netG.mid).toBeCloseTo(30, 9)
    const sigma = Math.hypot(alone.sigma, scaleNoiseG(30, 0.1, false))
    expect(netG.high).toBeCloseTo(30 + COVERAGE * sigma, 9)
    const ten = foretellPieces(doubt, { ...SCALE, partId: 'arm', pieces: 10 })!
    expect(ten.netG.mid).toBeCloseTo(200, 9)
  })

  test('follows what other pieces said, and narrows', () => {
    const before = foretellPieces(frameDoubt([deck, arm], []), { ...SCALE, partId: 'arm' })!
    const heavy = { ...deck, weighed: onScale(31.5) }
    const after = foretellPieces(frameDoubt([heavy, arm], []), { ...SCALE, partId: 'arm' })!
    expect(after.netG.mid).toBeGreaterThan(20.5)
    expect(after.netG.high - after.netG.low).toBeLessThan(before.netG.high - before.netG.low)
  })

  test('hears no earlier weighing of the same pieces', () => {
    const weighed = { ...deck, weighed: onScale(33) }
    const scale = { ...SCALE, partId: 'deck' }
    const again = foretellPieces(frameDoubt([weighed, arm], []), scale)!
    expect(again.netG).toEqual(foretellPieces(frameDoubt([deck, arm], []), scale)!.netG)
  })

  test('one in twenty lies outside its range, and what is taken is the frame with it', () => {
    const doubt = frameDoubt([deck, arm], [])
    const told = foretellPieces(doubt, { ...SCALE, partId: 'deck' })!
    // Two deviations of a normal: 4.55 % (JCGM 100:2008, table G.1 gives 95.45 % for k = 2).
    expect(told.lookAt(told.netG.high).chance).toBeCloseTo(0.0455, 4)
    expect(told.lookAt(30).chance).toBeCloseTo(1, 6)
    expect(told.lookAt(30).isFar).toBe(false)
    expect(told.lookAt(60).isFar).toBe(true)
    const taken = frameDoubt([{ ...deck, weighed: onScale(31) }, arm], [])
    expect(told.lookAt(31).frameG).toBeCloseTo(
      taken.bell('mass', 'flying', ['deck', 'arm']).mean,
      9,
    )
  })

  test('a part that only the scale knows foretells nothing', () => {
    const alone = { ...deck, byScale: true as const }
    expect(foretellPieces(frameDoubt([alone, arm], []), { ...SCALE, partId: 'deck' })).toBeNull()
  })
})

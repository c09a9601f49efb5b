import { describe, expect, it } from 'vitest'
import type { FlightSetup, Place } from '../../../../src/core/model/aircraft.ts'
import { AIRCRAFT_DEFAULTS } from '../../../../src/core/data/aircraft.ts'
import { hoverTurnHz } from '../../../../src/core/aircraft/twin/armShake.ts'
import { RECIPE_DEFAULTS } from '../../../../src/core/model/settings.ts'
import { typedItem } from '../../../support/ledgerParts.ts'
import { box } from '../../../support/meshes.ts'
import { reportFrame, reportOf, reportPart } from '../../../support/reportFrame.ts'

const SOLID = { ...RECIPE_DEFAULTS, infillPct: 100 }
const deck = reportPart('deck', box(100, 60, 4), { recipe: SOLID })
const arm = reportPart('arm', box(120, 16, 6), { quantity: 3, spares: 2 })
const foot = reportPart('foot', box(30, 30, 3), { quantity: 3, materialId: 'tpu-95a' })
const mast = reportPart('mast', box(8, 8, 50))
const parts = [deck, arm, foot, mast]

const FLIGHT: FlightSetup = {
  motors: 3,
  motorThrustG: 620,
  propDiameterMm: 152.4,
  packCells: 3,
  packMah: 2200,
  voltsPerCell: 3.7,
  usableShare: 0.8,
  avionicsW: 3,
  motorRadiusMm: 210,
}
const ITEMS = [
  typedItem('motor', 30, { group: 'drive', quantity: 3, costEach: 14 }),
  typedItem('pack', 185, { group: 'power', positionMm: [-10, 0, 20] }),
]
const at = (partId: string, x: number, y = 0, z = 0): Place => ({
  partId,
  positionMm: [x, y, z],
  rotateDeg: [0, 0, 0],
  mirrored: false,
})

describe('the report of an aircraft', () => {
  it('uses one all-up mass everywhere: the sum of the lines', () => {
    const deckOnScale = reportPart('deck', box(100, 60, 4), { recipe: SOLID, scaleG: 31.5 })
    const weighed = [deckOnScale, arm, foot, mast]
    const frame = reportFrame(weighed, { items: ITEMS, flight: FLIGHT, limitG: 450 })
    const { sum: whole, flight, twin, odds, standings } = reportOf(weighed, frame)
    const { ledger } = whole
    const sum = ledger.lines.reduce((total, line) => total + line.quantity * line.massG, 0)
    expect(ledger.basicMassG).toBeCloseTo(sum, 9)
    expect(ledger.lines.find((line) => line.name === 'deck')).toMatchObject({
      massG: 31.5,
      status: 'weighed',
    })
    expect(flight?.auwG).toBe(ledger.basicMassG)
    expect(twin.sides.printed.auwG.mid).toBeCloseTo(ledger.basicMassG, 9)
    expect(twin.sides.printed.hover?.hoverMin.mid).toBeCloseTo(flight?.hoverMin.mid ?? 0, 9)
    expect(odds.map(({ id }) => id)).toEqual([
      'limit',
      ...AIRCRAFT_DEFAULTS.massLines.map(({ id }) => id),
    ])
    expect(odds[0]?.odds.thresholdG).toBe(450)
    expect(odds[0]?.odds.midG).toBeCloseTo(ledger.basicMassG, 9)
    expect(standings.map(({ below }) => below)).toEqual(
      AIRCRAFT_DEFAULTS.massLines.map(({ thresholdG }) => ledger.basicMassG < thresholdG),
    )
  })

  it('cuts flat parts from plate and leaves tall and soft ones printed', () => {
    const { twin } = reportOf(parts, reportFrame(parts))
    const [deckTwin, armTwin, footTwin, mastTwin] = twin.parts
    const thickness = deckTwin?.twin?.chosen.thicknessMm ?? 0
    // A solid deck of 2.247 GPa, 4 mm thick, is as stiff as 4 · (2.247 / 50)^(1/3) = 1.42 mm of
    // carbon: 1.5 is stocked.
    expect(thickness).toBe(1.5)
    expect(deckTwin?.twin?.chosen.massG.mid).toBeCloseTo(6 * thickness * 1.55, 6)
    expect(armTwin?.twin).not.toBeNull()
    expect(footTwin).toMatchObject({ twin: null, kind: 'plate' })
    expect(footTwin?.words).toContain('soft')
    expect(mastTwin).toMatchObject({ twin: null, kind: 'no' })
    const kept = 3 * foot.figures.massG.mid + mast.figures.massG.mid
    const cut = (deckTwin?.twin?.chosen.massG.mid ?? 0) + 3 * (armTwin?.twin?.chosen.massG.mid ?? 0)
    expect(twin.sides.cut?.massG.mid).toBeCloseTo(kept + cut, 9)
  })

  it('cuts a soft part too when its thickness is typed', () => {
    const setup = { ...AIRCRAFT_DEFAULTS.twin, thicknessMm: { foot: 1 } }
    const { twin } = reportOf(parts, reportFrame(parts, { twin: setup }))
    expect(twin.parts[2]?.twin?.chosen.thicknessMm).toBe(1)
  })

  it('plays the season against the bought frame, else against the cut one', () => {
    const season = { ...AIRCRAFT_DEFAULTS.season, breakShare: { arm: 0.5, foot: 0.2 } }
    const frame = reportFrame(parts, { season })
    const cut = reportOf(parts, frame)
    expect(cut.season.carbonFrame).toBe('cut')
    const armTwin = cut.twin.parts.find(({ partId }) => partId === 'arm')?.twin
    expect(cut.season.breaks).toMatchObject({
      partId: 'arm',
      printed: {
        first: cut.twin.sides.printed.cost.mid,
        perBreak: arm.figures.cost.mid,
      },
      carbon: { first: cut.twin.sides.cut?.cost.mid, perBreak: armTwin?.cost },
    })
    // The foot waits for its printer on both frames: no days of delivery for it.
    expect(cut.season.carbon?.lines.map(({ partId }) => partId)).toContain('foot')

    const bought = reportOf(parts, { ...frame, carbon: { massG: 120, price: 40 } })
    expect(bought.season.carbonFrame).toBe('bought')
    expect(bought.season.breaks?.carbon).toEqual({ first: 40, perBreak: 10 })
    expect(bought.season.carbon?.cost.mid).toBeGreaterThan(40)
  })

  it('has no carbon season where nothing is carbon', () => {
    const { season } = reportOf([mast], reportFrame([mast]))
    expect(season).toMatchObject({ carbon: null, carbonFrame: null, breaks: null })
  })

  it('balances placed parts and items by hand arithmetic', () => {
    const two = [deck, mast]
    const places = [at('deck', -50, -30), at('mast', 96, -4)]
    const { balance } = reportOf(two, reportFrame(two, { places, items: ITEMS }))
    const [deckG, mastG] = [deck.figures.massG.mid, mast.figures.massG.mid]
    const all = deckG + mastG + 185
    expect(balance?.massG).toBeCloseTo(all, 9)
    expect(balance?.cgMm[0]).toBeCloseTo((100 * mastG - 10 * 185) / all, 6)
    expect(balance?.cgMm[1]).toBeCloseTo(0, 6)
    expect(balance?.unplaced).toEqual(['motor'])
    expect(balance?.unplacedG).toBeCloseTo(90, 9)
  })

  it('balances with the mass from the scale', () => {
    const places = [at('deck', 0), at('mast', 200)]
    const heavy = reportPart('mast', box(8, 8, 50), { materialId: 'pla', scaleG: 50 })
    const { balance } = reportOf([deck, heavy], reportFrame([deck, heavy], { places }))
    const deckG = deck.figures.massG.mid
    // The weighing tells on the deck's first layer too: a ten-thousandth of a gram.
    expect(balance?.cgMm[0]).toBeCloseTo((50 * deckG + 204 * 50) / (deckG + 50), 3)
  })

  it('gives no balance from motors alone, and none for places of parts that are gone', () => {
    const motors = { items: ITEMS.slice(0, 1), flight: FLIGHT }
    expect(reportOf(parts, reportFrame(parts, motors)).balance).toBeNull()
    const places = [at('gone', 10)]
    expect(reportOf(parts, reportFrame(parts, { ...motors, places })).balance).toBeNull()
  })

  it('judges a wing by area and balance', () => {
    const wing = {
      areaDm2: 10,
      meanChordMm: 140,
      leadingEdgeMm: 50,
      balanceMm: [40, 60],
    } as const
    const report = reportOf([deck], reportFrame([deck], { wing, places: [at('deck', -50)] }))
    expect(report.wing?.loading?.areaLoadingGDm2).toBeCloseTo(deck.figures.massG.mid / 10, 9)
    // The deck's middle lands on x = 0, 50 mm behind the leading edge.
    expect(report.wing?.balance).toMatchObject({ verdict: 'inside' })
    expect(report.wing?.balance?.behindMm).toBeCloseTo(50, 6)
    expect(report.flight).toBeNull()
    const without = reportOf([deck], reportFrame([deck], { wing }))
    expect(without.wing?.balance).toBeNull()
  })

  it('tells how arms ring: those of the role, and parts with a typed free length', () => {
    const beam = reportPart('beam', box(120, 16, 6), { quantity: 3, role: 'arm' })
    const setup = { items: ITEMS, flight: FLIGHT }
    const { twin, sum } = reportOf([deck, beam], reportFrame([deck, beam], setup))
    const { ledger } = sum
    expect(twin.arms.map(({ partId, typed }) => [partId, typed])).toEqual([['beam', false]])
    // A third of the all-up mass hangs on each propeller.
    const [shake] = twin.arms
    expect(shake?.turnHz.mid).toBeCloseTo(hoverTurnHz(ledger.basicMassG / 3, 152.4).mid, 9)
    expect(shake?.tipG).toBe(30)
    const typed = { ...AIRCRAFT_DEFAULTS.twin, freeMm: { deck: 60, beam: 100 } }
    const both = reportOf([deck, beam], reportFrame([deck, beam], { ...setup, twin: typed }))
    expect(both.twin.arms.map(({ partId, freeMm }) => [partId, freeMm])).toEqual([
      ['deck', 60],
      ['beam', 100],
    ])
    expect(reportOf([beam], reportFrame([beam])).twin.arms).toEqual([])
  })

  it('neither hovers a plane nor puts its motors on a circle', () => {
    const wing = { areaDm2: 10, meanChordMm: 140, leadingEdgeMm: 0, balanceMm: [40, 60] } as const
    const setup = { items: ITEMS, flight: FLIGHT, places: [at('deck', 0)] }
    const copter = reportOf([deck], reportFrame([deck], setup))
    expect(copter.flight).not.toBeNull()
    expect(copter.balance?.onMotors).toEqual(['motor'])
    const plane = reportOf([deck], reportFrame([deck], { ...setup, wing }))
    expect(plane.flight).toBeNull()
    expect(plane.twin.sides.printed.hover).toBeNull()
    expect(plane.balance?.onMotors).toEqual([])
    expect(plane.balance?.unplaced).toEqual(['motor'])
  })

  it('names parts without figures and leaves them out of the sums', () => {
    const { sum, cautions } = reportOf([deck, arm], reportFrame(parts))
    expect(sum.ledger.lines.map(({ name }) => name)).toEqual(['deck', 'arm'])
    const missing = cautions.find(({ code }) => code === 'parts-missing')
    expect(missing?.message).toContain('“foot”, “mast”')
  })

  it('takes a part whose layers are not counted yet, without a twin', () => {
    const rough = { ...deck, census: null, traits: null }
    const report = reportOf([rough], reportFrame([rough], { places: [at('deck', 0)] }))
    expect(report.sum.ledger.lines).toHaveLength(1)
    expect(report.twin.parts).toEqual([])
    expect(report.balance).toBeNull()
  })

  it('cautions about plate dust only where something is cut, and about props only where something flies', () => {
    const codes = (report: ReturnType<typeof reportOf>) => report.cautions.map(({ code }) => code)
    const printed = reportOf([mast], reportFrame([mast], { massLines: [] }))
    expect(codes(printed)).toEqual([])
    const flying = reportOf([deck], reportFrame([deck], { flight: FLIGHT, massLines: [] }))
    expect(codes(flying)).toEqual(['plate-dust', 'props', 'pack', 'first-flight'])
  })

  it('is an empty report for an empty frame', () => {
    const { sum, balance, flight, wing, twin } = reportOf([], reportFrame([]))
    expect([sum.ledger.basicMassG, balance, flight, wing, twin.parts]).toEqual([
      0,
      null,
      null,
      null,
      [],
    ])
  })
})

import { describe, expect, test, vi } from 'vitest'
import { page, userEvent } from 'vitest/browser'
import type { FlightSetup, Item, WingSetup } from '../../src/core/model/aircraft.ts'
import { drawAircraft, factOf, openSection, type } from '../support/drawAircraft.tsx'
import { boxFile } from '../support/session.ts'

const PACK: Item = {
  id: 'pack',
  name: 'Pack',
  group: 'power',
  quantity: 1,
  massG: 1000,
  costEach: 20,
  status: 'estimated',
  basis: 'typed',
  positionMm: null,
}
const FLIGHT: FlightSetup = {
  motors: 4,
  motorThrustG: 500,
  propDiameterMm: 254,
  packCells: 4,
  packMah: 5000,
  voltsPerCell: 3.7,
  usableShare: 0.8,
  avionicsW: 5,
  motorRadiusMm: 200,
}
const WING: WingSetup = { areaDm2: 20, meanChordMm: 200, leadingEdgeMm: 0, balanceMm: [40, 60] }
/** Figures follow a moment after a change; on a busy machine that may be long. */
const SOON = { timeout: 20_000 } as const
const DECK = boxFile('deck.stl', 100, 50, 3)

describe('Mass', () => {
  test('adds the growth typed for what is estimated, and tells the margin left', async () => {
    await drawAircraft({ items: [PACK], limitG: 1200 })
    const mass = await openSection('Mass')
    await type(mass.getByRole('textbox', { name: 'On what is estimated' }), '15')
    // 1000 g and 15 % of it; 1200 − 1150 are left.
    await expect.poll(() => factOf(mass, 'Growth'), SOON).toBe('+150.0 g')
    expect(factOf(mass, 'Predicted mass')).toBe('1,150 g')
    await expect.element(mass.getByText(/1,150 g, 50\.0 g under it\.$/)).toBeVisible()
    await type(mass.getByRole('textbox', { name: 'All-up at most' }), '1100')
    // An error of ±10 % (two standard deviations) makes 100 g two of them: one-sided 97.7 % (any
    // normal table).
    await expect
      .element(
        mass.getByText(
          /^1,000 g as it stands, 100\.0 g under .* and 9[78] % likely to end below; but .* 50\.0 g over it\.$/,
        ),
      )
      .toBeVisible()
  })

  test('never says yes or no within 3 % of a line', async () => {
    await drawAircraft({ items: [{ ...PACK, status: 'weighed' }], limitG: 1029 })
    const mass = await openSection('Mass')
    await expect
      .element(mass.getByText(/>99(\.99)? % likely to end below, too close to say/))
      .toBeVisible()
  })

  test('asks for the mass that is most in doubt, says where to type it, and is content then', async () => {
    await drawAircraft({ items: [PACK, { ...PACK, id: 'motor', name: 'Motor', massG: 100 }] })
    const mass = await openSection('Mass')
    await expect
      .element(mass.getByText(/Weigh one “Pack”/))
      .toHaveTextContent(
        'Type its mass under “Bolts and bought items”, and say there that it is weighed.',
      )
    const items = await openSection('Bolts and bought items')
    await items.getByRole('button', { name: 'Pack', exact: true }).click()
    await items.getByRole('button', { name: /Its mass is/ }).click()
    await page.getByRole('option', { name: 'weighed' }).click()
    await expect.element(mass.getByText(/Weigh one “Motor”/)).toBeVisible()
  })

  test('says at once that a change crosses a mass line', async () => {
    const { state } = await drawAircraft({ items: [{ ...PACK, massG: 249 }] })
    const items = await openSection('Bolts and bought items')
    await items.getByRole('button', { name: 'Pack', exact: true }).click()
    await type(items.getByRole('textbox', { name: 'Mass of one' }), '250')
    await expect
      .poll(() => state().notice?.text ?? '', SOON)
      .toMatch(
        /^250(\.0)? g all-up: no longer below .*EU 250 g.*UK 250 g.*Check your authority.s rules/,
      )
    await type(items.getByRole('textbox', { name: 'Mass of one' }), '249.9')
    await expect.poll(() => state().notice?.text ?? '', SOON).toContain('249.9 g all-up: now below')
  })

  test('takes no day that is none for a mass line', async () => {
    const { state } = await drawAircraft({ items: [PACK] })
    const mass = await openSection('Mass')
    await mass.getByRole('button', { name: 'Edit mass line EU 250 g' }).click()
    const day = mass.getByRole('textbox', { name: 'Read on' })
    const before = state().frame.aircraft.massLines
    await type(day, 'last week')
    await expect.element(mass.getByRole('alert')).toHaveTextContent(/year-month-day/)
    expect(state().frame.aircraft.massLines).toBe(before)
    await type(day, '2027-01-31')
    await expect
      .poll(
        () => state().frame.aircraft.massLines.find(({ id }) => id === 'eu-250')?.readOn ?? '',
        SOON,
      )
      .toBe('2027-01-31')
  })
})

describe('Flight', () => {
  test('tells thrust-to-weight, both throttles and the least power by hand arithmetic', async () => {
    await drawAircraft({ items: [PACK], flight: FLIGHT })
    const flight = await openSection('Flight')
    await expect.element(flight.getByText(/Thrust-to-weight 2/)).toBeVisible()
    // 1 kg on 2 kg of thrust: the square root of a half, and a half.
    expect(factOf(flight, 'Hover throttle, thrust with its square')).toContain('71')
    expect(factOf(flight, 'Hover throttle, thrust straight with it')).toContain('50')
    // Momentum theory: (m g)^1.5 / √(2 ρ A), 9.80665 N, 1.225 kg/m³, four disks of 254 mm.
    const disks = 4 * Math.PI * 0.127 ** 2
    const watts = 9.80665 ** 1.5 / Math.sqrt(2 * 1.225 * disks)
    const least = Number.parseFloat(factOf(flight, 'Least power'))
    expect(Math.abs(least - watts)).toBeLessThan(0.05)
    await type(flight.getByRole('textbox', { name: 'Full thrust of one' }), '400')
    await expect.element(flight.getByText(/Thrust-to-weight 1\.6/)).toBeVisible()
    // 1600 g of thrust lift 800 g at twice the weight: 200 g too many.
    await expect.poll(() => factOf(flight, 'Too heavy'), SOON).toBe('200 g')
    await type(flight.getByRole('textbox', { name: 'Full thrust of one' }), '200')
    await expect.element(flight.getByText(/^0\.0 min of hover/)).toBeVisible()
  })

  test('takes the thrust of a propeller table', async () => {
    const { state } = await drawAircraft({ items: [PACK], flight: FLIGHT })
    const flight = await openSection('Flight')
    await flight.getByRole('button', { name: 'Thrust from a propeller table' }).click()
    await type(flight.getByRole('textbox', { name: 'At full throttle' }), '6000')
    await flight.getByRole('button', { name: 'Take it' }).click()
    // C_T ρ n² D⁴ (McCormick, Aerodynamics, Aeronautics and Flight Mechanics), in grams of force.
    const newton = 0.1 * 1.225 * 100 ** 2 * 0.254 ** 4
    expect(state().frame.aircraft.flight?.motorThrustG).toBe(Math.round((newton / 9.80665) * 1000))
  })

  test('loads a plane by its wing, cautions its first throw, and hovers it not', async () => {
    await drawAircraft({ items: [PACK], flight: FLIGHT, wing: WING })
    const flight = await openSection('Flight')
    await expect.element(flight.getByText(/^50\.0 g\/dm² on the wing$/)).toBeVisible()
    await type(flight.getByRole('textbox', { name: 'Wing area' }), '25')
    await expect.element(flight.getByText(/^40\.0 g\/dm² on the wing$/)).toBeVisible()
    await expect.element(flight.getByText(/Throw it first in calm air/)).toBeVisible()
    expect(flight.getByText(/min of hover/).elements()).toEqual([])
  })

  test('says what is missing where nothing weighs anything', async () => {
    await drawAircraft({ flight: FLIGHT })
    const flight = await openSection('Flight')
    await expect.element(flight.getByText(/Nothing to lift yet/)).toBeVisible()
  })
})

describe('Balance', () => {
  const ends: readonly Item[] = [
    { ...PACK, massG: 100, positionMm: [0, 0, 0] },
    {
      ...PACK,
      id: 'tail',
      name: 'Tail',
      group: 'structure',
      massG: 100,
      positionMm: [-100, 20, 0],
    },
  ]

  test('finds the middle of two equal masses, and follows a place that is typed', async () => {
    await drawAircraft({ items: ends })
    const balance = await openSection('Balance')
    await expect.poll(() => factOf(balance, 'Centre of gravity'), SOON).toBe('50.0 mmaft')
    expect(factOf(balance, 'Sideways')).toBe('10.0 mmleft')
    const items = await openSection('Bolts and bought items')
    await items.getByRole('button', { name: 'Tail', exact: true }).click()
    await type(items.getByRole('textbox', { name: 'Forward of middle' }), '-40')
    await expect.poll(() => factOf(balance, 'Centre of gravity'), SOON).toBe('20.0 mmaft')
  })

  test('holds a plane against its typed range, and tells the nose weight', async () => {
    await drawAircraft({ items: ends, wing: WING })
    const balance = await openSection('Balance')
    await expect
      .element(balance.getByText(/50\.0 mm behind the leading edge, inside/))
      .toBeVisible()
    await type(
      balance.getByRole('textbox', { name: 'Balance wanted to, behind the leading edge' }),
      '45',
    )
    await expect.element(balance.getByText(/tail-heavy, and not safe to fly/)).toBeVisible()
    // Lever about the wanted point, 45 mm aft: 200 g × 5 mm = w × (200 + 45) mm.
    await expect.poll(() => factOf(balance, 'Nose weight'), SOON).toBe('4.1 g')
    // Sliding 100 g of 200 moves the whole half as far.
    expect(factOf(balance, 'Or slide “Pack”')).toBe('10 mm forward')
  })
})

describe('Carbon twin', { timeout: 120_000 }, () => {
  test('weighs a flat part in plate by area × thickness × density, and hands out its outline in mm', async () => {
    await drawAircraft({ items: [PACK] }, [DECK])
    const twin = await openSection('Carbon twin')
    const thickness = twin.getByRole('textbox', { name: 'Thickness of deck' })
    await type(thickness, '2')
    const grams = () =>
      twin.element().querySelector('.twins tbody td')?.firstChild?.textContent ?? 'no table'
    // 100 × 50 × 2 mm at 1.55 g/cm³; then 4 mm.
    await expect.poll(grams, SOON).toBe('15.5')
    await type(thickness, '4')
    await expect.poll(grams, SOON).toBe('31.0')

    const made: Blob[] = []
    const create = vi.spyOn(URL, 'createObjectURL').mockImplementation((blob) => {
      made.push(blob as Blob)
      return 'data:,'
    })
    await twin.getByRole('button', { name: 'SVG outline of deck' }).click()
    create.mockRestore()
    const svg = (await made[0]?.text()) ?? ''
    expect(svg).toContain('width="100mm" height="50mm" viewBox="0 0 100 50"')
    const place = document.createElement('div')
    place.innerHTML = svg.slice(svg.indexOf('<svg'))
    document.body.append(place)
    // The browser itself measures the path: once round a rectangle of 100 × 50.
    expect(place.querySelector('path')?.getTotalLength()).toBeCloseTo(300, 2)
  })

  test('plays a season whose breaks follow flights, crashes and the share typed for the part', async () => {
    await drawAircraft({ items: [PACK] }, [DECK])
    const twin = await openSection('Carbon twin')
    await expect.element(twin.getByText(/Nothing breaks yet/)).toBeVisible()
    await type(twin.getByRole('textbox', { name: 'deck', exact: true }), '50')
    const row = () => twin.getByRole('row', { name: /^deck/ }).last().element().textContent
    // 60 flights × 10 % × 50 % = 3.0 broken; Poisson needs 6 spares for less than 5 % (P(N ≤ 6) =
    // 0.966, P(N ≤ 5) = 0.916).
    await expect.poll(row, SOON).toMatch(/^deck3\.0.*6 0 there$/)
    await type(twin.getByRole('textbox', { name: 'Flights' }), '20')
    // Mean 1.0: P(N ≤ 2) = 0.920, P(N ≤ 3) = 0.981.
    await expect.poll(row, SOON).toMatch(/^deck1\.0.*3 0 there$/)
  })

  test('names the price of a broken piece: the table’s where it is cut, and why not where it is bought', async () => {
    const { actions } = await drawAircraft({ items: [PACK] }, [DECK])
    const twin = await openSection('Carbon twin')
    await type(twin.getByRole('textbox', { name: 'deck', exact: true }), '50')
    const money = (text: string | null) => /\d+\.\d\d/.exec(text ?? '')?.[0] ?? 'no money'
    const inTable = () => money(twin.element().querySelector('[data-head="cost"]')!.textContent)
    const chartSays = () => twin.element().querySelector('.chart .hint')?.textContent ?? 'no chart'
    await expect.poll(chartSays, SOON).toMatch(/one cut from plate \D*\d+\.\d\d\D*\.$/)
    expect(chartSays().match(/\d+\.\d\d/g)?.[1]).toBe(inTable())

    actions.putCarbon({ massG: 90, price: 40 })
    await type(twin.getByRole('textbox', { name: 'A carbon part' }), '11')
    await expect.poll(chartSays, SOON).toMatch(/a bought carbon one \D*11\.00\D*, the price typed/)
    expect(chartSays()).toContain('its spares are bought too')
    expect(money(/Cut from plate.*/.exec(chartSays())?.[0] ?? '')).toBe(inTable())
  })

  test('says of a part that stays printed both its height and its width', async () => {
    await drawAircraft({ items: [PACK] }, [boxFile('peg.stl', 2, 2, 1)])
    const twin = await openSection('Carbon twin')
    await expect
      .element(twin.getByText(/^peg: /))
      .toHaveTextContent(/1 mm high over an outline as large as a square of 2 mm/)
  })

  test('stands by nonsense in its fields: no NaN, no endless figure, no blank page', async () => {
    await drawAircraft({ items: [PACK], flight: FLIGHT }, [DECK])
    const names = ['Bolts and bought items', 'Mass', 'Balance', 'Carbon twin', 'Flight']
    for (const name of names) await openSection(name)
    await page.getByRole('button', { name: 'Find a screw length' }).click()
    await expect.element(page.getByRole('textbox', { name: 'Thickness of deck' })).toBeVisible()
    const boxes = () => [...document.querySelectorAll<HTMLInputElement>('.number-line input')]
    for (const text of ['99999999999999999999', '-99999999', '']) {
      for (let at = 0; at < boxes().length; at++) {
        const box = boxes()[at]!
        box.focus()
        box.select()
        await userEvent.keyboard(text === '' ? '{Delete}' : text)
        box.blur()
      }
      await expect.poll(() => document.body.innerText, SOON).toMatch(/g all-up/)
      expect(document.body.innerText).not.toMatch(/NaN|Infinity|∞|undefined/)
    }
  })
})

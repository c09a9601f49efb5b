import type { Locator, Page } from 'playwright'
import { expect, test } from 'vitest'
import { withApp } from '../support/app.ts'
import { box } from '../support/meshes.ts'
import { typeIntoAll, valuesIn, type Typed } from '../support/numberBoxes.ts'
import {
  dropFiles,
  goToSheet,
  openPrinter,
  openRow,
  openSection,
  waitForCensus,
} from '../support/page.ts'
import { meshXml, modelXml, pack3mf, writeStlBinary } from '../support/writeMesh.ts'

interface Place {
  readonly name: string
  /** Goes there and unfolds it. */
  readonly open: (page: Page) => Promise<Locator>
  /** Brings about what only some frames have; once, before the first visit. */
  readonly begin?: (page: Page) => Promise<void>
  readonly close?: (place: Locator) => Promise<void>
  /** Words of a box that is there when all are. */
  readonly last: string | RegExp
  /** Words of the place once all was typed. */
  readonly holds?: readonly string[]
  /** Only reckons with what is typed, or adds it to a list: empty at the next visit. */
  readonly isDraft?: true
}

const press = (place: Locator | Page, name: string | RegExp): Promise<void> =>
  place.getByRole('button', { name }).first().click()

const typeInto = async (place: Locator, name: string, text: string): Promise<void> => {
  const field = place.getByRole('textbox', { name })
  await field.fill(text)
  await field.press('Enter')
}

const choose = async (place: Locator, label: RegExp, option: RegExp): Promise<void> => {
  await press(place, label)
  await place.page().getByRole('option', { name: option }).click()
}

const dialog = (open: (page: Page) => Promise<void>) => ({
  open: async (page: Page) => {
    await open(page)
    return page.getByRole('dialog')
  },
  close: (place: Locator) => press(place, 'Close'),
})

const PLACES: readonly Place[] = [
  {
    name: 'printer',
    ...dialog(async (page) => {
      await openPrinter(page)
      await press(page, 'Show habits')
    }),
    last: 'Joined ends',
  },
  { name: 'prices', ...dialog((page) => press(page, /^Prices: /)), last: 'Prints that fail' },
  {
    name: 'a material',
    ...dialog(async (page) => {
      await press(page, /^Materials: /)
      await press(page.getByRole('dialog'), /^Edit PLA/)
    }),
    close: async (place) => {
      const keep = place.getByRole('button', { name: 'Keep these figures' })
      if (await keep.isVisible()) await keep.click()
      await press(place, 'Close')
    },
    last: 'Bed',
  },
  {
    name: 'ticked parts',
    open: async (page) => {
      const frame = await goToSheet(page, 'frame')
      await frame.locator('thead .tick').click()
      return page.getByRole('toolbar', { name: 'Ticked parts' })
    },
    close: (place) => place.page().locator('thead .tick').click(),
    last: 'Infill',
  },
  {
    name: 'part',
    open: (page) => openRow(page, 'deck'),
    begin: async (page) => {
      const place = await openRow(page, 'deck')
      await place.getByText('Supports', { exact: true }).click()
      const zone = { name: 'zone.stl', bytes: writeStlBinary(box(30, 16, 8)) }
      await dropFiles(page, [zone], '.zone-field')
    },
    last: 'Infill in zone.stl',
  },
  {
    name: 'a search',
    open: async (page) => {
      const search = await openSection(page, 'Find')
      await search.getByText('How parts give').click()
      return search
    },
    last: / rings at least/,
    isDraft: true,
  },
  {
    name: 'catalogue',
    open: async (page) => {
      const items = await openSection(page, 'Bolts and bought items')
      await press(items, 'From the catalogue')
      const form = items.getByRole('group', { name: 'From the catalogue' })
      await choose(form, /Standard/, /tube|Tube/)
      return form
    },
    last: 'Inside diameter',
    isDraft: true,
  },
  {
    name: 'screw',
    open: async (page) => {
      const items = await openSection(page, 'Bolts and bought items')
      await press(items, 'Find a screw length')
      return items.getByRole('group', { name: 'Find a screw length' })
    },
    last: 'Pieces',
    isDraft: true,
  },
  {
    name: 'screw in an insert',
    open: async (page) => {
      const items = await openSection(page, 'Bolts and bought items')
      const form = items.getByRole('group', { name: 'Find a screw length' })
      await choose(form, /Bites into/, /insert/)
      return form
    },
    last: 'Depth of the hole',
    isDraft: true,
  },
  {
    name: 'item',
    begin: async (page) => {
      const items = await openSection(page, 'Bolts and bought items')
      await press(items, 'Type one in')
      await press(items.getByRole('group', { name: /^Item / }), 'Give it a place')
      await press(items.getByRole('table'), /./)
    },
    open: async (page) => {
      const items = await openSection(page, 'Bolts and bought items')
      await press(items.getByRole('table'), /./)
      return items.getByRole('group', { name: /^Item / })
    },
    last: 'Cost of one',
  },
  {
    name: 'mass',
    begin: async (page) => {
      const mass = await openSection(page, 'Mass')
      await press(mass, 'Set a mass limit')
      await press(mass, 'Limit the printed parts')
    },
    open: async (page) => {
      const mass = await openSection(page, 'Mass')
      await press(mass, /^Edit mass line /)
      return mass
    },
    last: 'Threshold',
  },
  {
    name: 'places round a circle',
    open: async (page) => {
      const balance = await openSection(page, 'Balance')
      await press(balance, 'Place them round a circle')
      return balance
    },
    last: 'Radius to its origin',
    isDraft: true,
  },
  {
    name: 'one place',
    begin: async (page) => {
      await press(await openSection(page, 'Balance'), 'Place one piece')
    },
    open: async (page) => {
      const balance = await openSection(page, 'Balance')
      const opener = balance.locator('.places .craft-opener')
      if ((await opener.getAttribute('aria-expanded')) === 'false') await opener.click()
      return balance.locator('.places')
    },
    last: 'Turned',
  },
  {
    name: 'flight',
    begin: async (page) => {
      await press(await openSection(page, 'Flight'), 'Set motors and pack')
    },
    open: (page) => openSection(page, 'Flight'),
    last: 'Pack used',
  },
  {
    name: 'propeller table',
    open: async (page) => {
      const flight = await openSection(page, 'Flight')
      await press(flight, 'Thrust from a propeller table')
      return flight.getByRole('group', { name: 'Thrust from a propeller table' })
    },
    last: 'At full throttle',
    isDraft: true,
  },
  {
    name: 'carbon frame',
    open: (page) => openSection(page, 'Against a carbon frame'),
    last: 'Carbon price',
  },
  {
    name: 'twin',
    // Something at the tip of each arm: a few for every motor.
    begin: async (page) => {
      await choose(await openRow(page, 'arm'), /Recipe for/, /^Arm/)
      const items = await openSection(page, 'Bolts and bought items')
      await press(items, 'Type one in')
      const item = items.getByRole('group', { name: /^Item / })
      await choose(item, /Group$/, /^Drive$/)
      await typeInto(item, 'Mass of one', '20')
      await typeInto(item, 'Pieces', '12')
    },
    open: (page) => openSection(page, 'Carbon twin'),
    last: 'Free length of arm',
  },
  {
    name: 'bench',
    open: (page) => goToSheet(page, 'bench'),
    last: 'Spares of deck',
    holds: ['All printed parts: 1,0 g', 'All printed parts: 2,0 g'],
  },
]

/** Of a plane, which has no arms. */
const WING_PLACES: readonly Place[] = [
  {
    name: 'wing',
    begin: async (page) => {
      await press(await openSection(page, 'Flight'), 'It is a plane: set its wing')
    },
    open: (page) => openSection(page, 'Flight'),
    last: 'Drag',
  },
  {
    name: 'balance of a wing',
    open: async (page) => (await openSection(page, 'Balance')).locator('.chord-fields'),
    last: 'Nose weight',
  },
]

/** Two hundred boxes, most of them gone to twice. */
const TIMEOUT = { timeout: 500_000 }

test.each(['de-DE', 'fr-FR'])('every number box of a browser of %s', TIMEOUT, async (locale) => {
  await withApp(
    async ({ page }) => {
      await dropFiles(page, [{ name: 'frame.3mf', bytes: FRAME }])
      await waitForCensus(page)
      await press(await openRow(page, 'frame'), 'Make rows of them')
      await goToSheet(page, 'frame')
      await waitForCensus(page)
      const boxes = (await walk(page, PLACES)) + (await walk(page, WING_PLACES))
      expect(boxes).toBeGreaterThan(150)
    },
    { locale, viewport: { width: 1440, height: 900 } },
  )
})

/**
 * Types into every box of some places, and sees the same in them after the page was loaded anew.
 */
async function walk(page: Page, places: readonly Place[]): Promise<number> {
  let boxes = 0
  for (const place of places) {
    await place.begin?.(page)
    const opened = await visit(page, place)
    const typed = await typeIntoAll(opened)
    boxes += typed.length / 2
    const wrong = typed.filter(isLost)
    expect({ place: place.name, wrong }).toEqual({ place: place.name, wrong: [] })
    for (const words of place.holds ?? []) {
      await expect
        .poll(async () => (await opened.innerText()).replaceAll(/\s+/g, ' '))
        .toContain(words)
    }
    await place.close?.(opened)
  }
  const held = await valuesOf(page, places)
  await page.getByText('Saved on this device').waitFor()
  await page.reload()
  await waitForCensus(page)
  expect(await valuesOf(page, places)).toEqual(held)
  return boxes
}

async function visit(page: Page, { open, last }: Place): Promise<Locator> {
  const place = await open(page)
  await place.getByRole('textbox', { name: last }).first().waitFor()
  return place
}

async function valuesOf(
  page: Page,
  places: readonly Place[],
): Promise<Readonly<Record<string, readonly string[]>>> {
  const all: Record<string, readonly string[]> = {}
  for (const place of places.filter(({ isDraft }) => isDraft !== true)) {
    const opened = await visit(page, place)
    all[place.name] = await valuesIn(opened)
    await place.close?.(opened)
  }
  return all
}

/** Neither shown as the number it is nor told of. */
function isLost({ label, typed, shown, said }: Typed): boolean {
  const local = typed.replace('.', ',')
  // What all parts weigh together goes into a list.
  if (label === 'It shows') return shown !== ''
  return shown !== local && !said.includes(local)
}

/** Two arms of one object and a deck, with their places. */
const FRAME = pack3mf(
  modelXml(
    `<object id="1" name="arm" type="model">${meshXml(box(110, 12, 6))}</object>` +
      `<object id="2" name="deck" type="model">${meshXml(box(80, 40, 3))}</object>`,
    '<item objectid="1"/><item objectid="1" transform="1 0 0 0 1 0 0 0 1 0 60 0"/><item objectid="2"/>',
  ),
)

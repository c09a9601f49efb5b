import { createRoot, type Root } from 'react-dom/client'
import type { ReactNode } from 'react'
import { afterEach, describe, expect, test } from 'vitest'
import { page, userEvent } from 'vitest/browser'
import type { Item } from '../../src/core/model/aircraft.ts'
import { dropFromShelf, keepOnShelf, shelfItems } from '../../src/state/storage/shelf.ts'
import { ScrewHelper } from '../../src/ui/aircraft/items/ScrewHelper.tsx'
import { AppContext } from '../../src/ui/appContext.ts'
import { startSession } from '../support/session.ts'

let root: Root | undefined

function draw(node: ReactNode): void {
  const place = document.createElement('div')
  document.body.append(place)
  root = createRoot(place)
  root.render(node)
}

afterEach(() => {
  root?.unmount()
  document.body.replaceChildren()
  localStorage.clear()
})

const MOTOR: Item = {
  id: 'motor',
  name: 'Motor',
  group: 'drive',
  quantity: 4,
  massG: 30,
  costEach: 12,
  status: 'weighed',
  basis: 'typed',
  positionMm: [80, 80, 0],
}

/** It offers the parts of a frame to set an insert into; here there are none. */
async function drawHelper(onAdd: (item: Item) => void): Promise<void> {
  const { store, actions } = await startSession()
  draw(
    <AppContext value={{ store, actions }}>
      <ScrewHelper onAdd={onAdd} />
    </AppContext>,
  )
}

describe('the screw length helper', () => {
  test('finds the stocked length through plate and arm into a locknut', async () => {
    const added: Item[] = []
    await drawHelper((item) => added.push(item))
    // 3 + 6 mm, a 4 mm locknut (DIN 985) and two threads of 0.5 mm past it make 14: the next
    // stocked M3 is 16.
    await expect.element(page.getByText('M3 × 16 mm')).toBeVisible()
    await expect.element(page.getByText('14 mm or more')).toBeVisible()
    await page.getByRole('button', { name: 'Add in steel' }).click()
    expect(added.map(({ name, quantity }) => ({ name, quantity }))).toEqual([
      { name: 'Screw M3 × 16, socket head, steel (ISO 4762)', quantity: 4 },
    ])
  })

  test('warns of a countersunk head deeper than the plate it sits in', async () => {
    await drawHelper(() => undefined)
    const thickness = page.getByRole('textbox', { name: 'Thickness of Plate' })
    await userEvent.fill(thickness, '1')
    await userEvent.tab()
    await page.getByRole('button', { name: /Head/ }).click()
    await page.getByRole('option', { name: 'Countersunk' }).click()
    await expect.element(page.getByText(/Head deeper than plate/)).toBeVisible()
  })
})

describe('the shelf', () => {
  test('keeps an item across projects without its place, once by name, and lets it go', () => {
    expect(keepOnShelf(MOTOR)).toBe(true)
    expect(keepOnShelf({ ...MOTOR, massG: 31 })).toBe(true)
    expect(shelfItems()).toEqual([{ ...MOTOR, massG: 31, positionMm: null }])
    dropFromShelf('Motor')
    expect(shelfItems()).toEqual([])
  })

  test('skips what does not read as an item', () => {
    keepOnShelf(MOTOR)
    const kept = JSON.parse(localStorage.getItem('preweigh.shelf') ?? '[]') as unknown[]
    localStorage.setItem('preweigh.shelf', JSON.stringify([...kept, { name: 'half' }, 7]))
    expect(shelfItems().map(({ name }) => name)).toEqual(['Motor'])
    localStorage.setItem('preweigh.shelf', 'not JSON')
    expect(shelfItems()).toEqual([])
  })
})

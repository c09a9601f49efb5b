import { createRoot, type Root } from 'react-dom/client'
import type { ReactNode } from 'react'
import { afterEach, expect } from 'vitest'
import { page, userEvent, type Locator } from 'vitest/browser'
import type { Aircraft } from '../../src/core/model/aircraft.ts'
import type { IncomingFile } from '../../src/state/store/types.ts'
import { AircraftSheet } from '../../src/ui/set/AircraftSheet.tsx'
import { BenchSheet } from '../../src/ui/set/BenchSheet.tsx'
import { CarbonSheet } from '../../src/ui/set/CarbonSheet.tsx'
import { CrossingWatch } from '../../src/ui/aircraft/CrossingWatch.tsx'
import { AppContext } from '../../src/ui/appContext.ts'
import { startSession } from './session.ts'

let root: Root | undefined

export function draw(node: ReactNode): void {
  const place = document.createElement('div')
  document.body.append(place)
  root = createRoot(place)
  root.render(node)
}

afterEach(() => {
  root?.unmount()
  document.body.replaceChildren()
})

/**
 * The sheets of aircraft, carbon and bench under one another, over a frame of these files and this
 * aircraft.
 */
export async function drawAircraft(
  aircraft: Partial<Aircraft>,
  files: readonly IncomingFile[] = [],
) {
  const session = await startSession()
  if (files.length > 0) await session.actions.addFiles(files)
  await session.actions.settled()
  session.actions.putAircraft(aircraft, 'begin')
  const { store, actions } = session
  draw(
    <AppContext value={{ store, actions }}>
      <CrossingWatch />
      <AircraftSheet />
      <CarbonSheet />
      <BenchSheet />
    </AppContext>,
  )
  return session
}

export async function openSection(name: string): Promise<Locator> {
  const section = page.getByRole('region', { name, exact: true })
  await expect.element(section).toBeVisible()
  return section
}

/** Types over what a box holds and leaves it. */
export async function type(box: Locator, text: string): Promise<void> {
  await userEvent.click(box)
  await userEvent.keyboard('{Control>}a{/Control}')
  await userEvent.keyboard(text === '' ? '{Delete}' : text)
  await userEvent.tab()
}

/** What stands behind the words of a list of facts. */
export function factOf(section: Locator, words: string): string {
  const terms = [...section.element().querySelectorAll('dt')]
  const found = terms.find((term) => term.textContent.startsWith(words))
  return found?.nextElementSibling?.textContent ?? `no “${words}”`
}

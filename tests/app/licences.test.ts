import { readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { expect, inject, test } from 'vitest'
import { withApp } from '../support/app.ts'
import { chooseFromMenu } from '../support/page.ts'

/**
 * Packages whose code is in the built page, as its source maps tell; not what package.json says of
 * it.
 */
function shippedPackages(): ReadonlySet<string> {
  const assets = path.join(inject('appFolder'), 'assets')
  const files = readdirSync(assets)
  const maps = files.filter((name) => name.endsWith('.js.map'))
  // A script without a map would hide what it holds; only the bundler's own few lines come without
  // one.
  const scripts = files.filter((name) => name.endsWith('.js'))
  const bare = scripts.filter((name) => !files.includes(`${name}.map`))
  for (const name of bare) {
    expect(name).toMatch(/^(rolldown-runtime|preload-helper)-/)
    expect(readFileSync(path.join(assets, name)).byteLength).toBeLessThan(2_000)
  }
  expect(maps).toHaveLength(scripts.length - bare.length)
  const packages = new Set<string>()
  for (const map of maps) {
    const { sources } = JSON.parse(readFileSync(path.join(assets, map), 'utf8')) as {
      sources: readonly string[]
    }
    for (const source of sources) {
      const name = /.*node_modules\/((?:@[^/]+\/)?[^/]+)\//.exec(source)?.[1]
      if (name !== undefined) packages.add(name)
    }
  }
  return packages
}

test('every package whose code is in the page is listed with its licence and its text', async () => {
  const shipped = shippedPackages()
  for (const sure of ['react', 'three', 'fflate', 'saxes']) expect(shipped).toContain(sure)
  await withApp(async ({ page }) => {
    await chooseFromMenu(page, 'Licences')
    const dialog = page.getByRole('dialog')
    await dialog.getByText(/^three \d/).waitFor()
    const lines = await dialog.locator('.licences summary').allInnerTexts()
    const listed = new Map(lines.map((line) => [line.split(' ')[0], line]))
    const missing = [...shipped].filter((name) => !listed.has(name))
    expect(missing).toEqual([])
    for (const line of lines) expect(line).toMatch(/^\S+ \d+\.\d+\.\d+\S* \S+/)
    const texts = await dialog.locator('.licences pre').allTextContents()
    expect(texts).toHaveLength(lines.length)
    // Each names who gave it and what may be done with it.
    const empty = lines.filter((_, i) => !/copyright|permission|licen[cs]e/i.test(texts[i] ?? ''))
    expect(empty).toEqual([])
  })
}, 300_000)

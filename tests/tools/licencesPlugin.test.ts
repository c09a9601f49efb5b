import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { collectLicences } from '../../src/tools/licencesPlugin.ts'

test('every package the page may hold is listed with its licence, those needed by others too', () => {
  const { packages, texts } = collectLicences(process.cwd())
  const names = packages.map((each) => each.name)
  const { dependencies } = JSON.parse(readFileSync('package.json', 'utf8')) as {
    dependencies: Record<string, string>
  }
  expect(names).toEqual(expect.arrayContaining(Object.keys(dependencies)))
  // react-dom needs it, d3-shape needs that.
  expect(names).toEqual(expect.arrayContaining(['scheduler', 'd3-path']))
  expect(names).not.toContain('vitest')
  const three = packages.find((each) => each.name === 'three')
  expect(three).toMatchObject({ licence: 'MIT' })
  expect(texts[three?.text ?? -1]).toBe(readFileSync('node_modules/three/LICENSE', 'utf8').trim())
  expect(new Set(texts).size).toBe(texts.length)
  // It has no file of its licence, as published: who made it and the terms are told all the same.
  const saxes = texts[packages.find((each) => each.name === 'saxes')?.text ?? -1]
  expect(saxes).toMatch(/Dubeau.*ISC licence:\n\n.*Permission to use, copy, modify/s)
  expect(saxes).not.toMatch(/Bostock/)
  expect(packages.filter((each) => each.text === null)).toEqual([])
  for (const each of packages) {
    // Licences that let the page be given away as it is; a new one is to be read before it is added
    // here. A typeface under the OFL may be bundled with any software, as long as notice and
    // licence come with it.
    const isTypeface = each.name.startsWith('@fontsource')
    if (isTypeface && each.licence === 'OFL-1.1') continue
    expect(each.licence).toMatch(/^(MIT|ISC|Apache-2\.0|BSD-[23]-Clause|0BSD|BlueOak-1\.0\.0)$/)
  }
})

import { expect, test } from 'vitest'
import { failedPart, priceMesh } from '../../src/cli/priceMesh.ts'
import { MATERIALS } from '../../src/core/data/materials.ts'
import { PRICES_DEFAULTS } from '../../src/core/data/prices.ts'
import { PRINTER_DEFAULT } from '../../src/core/data/printers.ts'
import { POSE_AS_DRAWN, RECIPE_DEFAULTS } from '../../src/core/model/settings.ts'
import { createInProcessRunner } from '../../src/jobs/inProcess.ts'
import { sphere } from '../support/meshes.ts'
import { problemOf } from '../support/problemOf.ts'
import { writeStlBinary } from '../support/writeMesh.ts'

/*
 * A binary STL copied half was read as far as it went, and then refused as a mesh whose drawing has gaps to close. The
 * header's count against the bytes that are there tells the real reason.
 */
const WHOLE = writeStlBinary(sphere(20, 97))
const TRIANGLES = (WHOLE.length - 84) / 50
const HELD = 1 + Math.floor(TRIANGLES / 3)
const CUT = WHOLE.slice(0, 84 + 50 * HELD)

const missing = `${(TRIANGLES - HELD).toLocaleString('en')} are missing`

test('the command says that the file was cut off, not that the drawing is open', () => {
  const settings = {
    unitOf: () => 'millimetre' as const,
    pose: POSE_AS_DRAWN,
    recipe: RECIPE_DEFAULTS,
    material: MATERIALS[0]!,
    printer: PRINTER_DEFAULT,
    prices: PRICES_DEFAULTS,
    zones: [],
    keepsHairs: false,
  }
  const problem = problemOf(() =>
    priceMesh({ name: 'wing.stl', bytes: CUT }, 'wing.stl', settings, () => {}),
  )
  expect(problem.message).toContain(
    `wing.stl: Its header promises ${TRIANGLES.toLocaleString('en')}`,
  )
  expect(problem.message).toContain(missing)
  expect(problem.message).toContain('copy or export it again')
  expect(problem.advice).not.toMatch(/gaps in your drawing/)
  expect(problem.findings).toMatchObject([{ code: 'short-count', grade: 'changes the grams' }])
  expect(failedPart('wing.stl', problem).error.findings).toEqual(problem.findings)
})

test('and so does the worker', async () => {
  const { supports, ...geometry } = RECIPE_DEFAULTS
  const outcome = await createInProcessRunner().run({
    kind: 'analyse',
    source: { hash: 'cut', name: 'wing.stl', blob: new Blob([CUT]) },
    zones: [],
    unit: 'millimetre',
    pose: POSE_AS_DRAWN,
    geometry: { ...geometry, supports },
    wantRead: true,
    wantCoarse: false,
  })
  expect(outcome.ok ? null : outcome.problem.message).toContain(missing)
})

import { expect, test } from 'vitest'
import { priceMesh } from '../../src/cli/priceMesh.ts'
import { MATERIALS } from '../../src/core/data/materials.ts'
import { PRICES_DEFAULTS } from '../../src/core/data/prices.ts'
import { PRINTER_DEFAULT } from '../../src/core/data/printers.ts'
import { POSE_AS_DRAWN, RECIPE_DEFAULTS } from '../../src/core/model/settings.ts'
import { circle, prism, rectangle } from '../support/meshes.ts'
import { writeStlBinary } from '../support/writeMesh.ts'

/* Holes of 0.266 in pass a ¼ in screw; the part was told to be drawn in centimetres, and the command told nothing. */
test('the command tells what the page tells of a part in inches with ¼ in holes', () => {
  const plate = prism(rectangle(5, 2.5), 0.125, [
    circle(0.133, 48, 0.6, 0.6),
    circle(0.133, 48, 4.1, 1.9),
  ])
  const { report } = priceMesh(
    { name: 'rib.stl', bytes: writeStlBinary(plate) },
    'rib.stl',
    {
      unitOf: () => 'millimetre',
      pose: POSE_AS_DRAWN,
      recipe: RECIPE_DEFAULTS,
      material: MATERIALS[0]!,
      printer: PRINTER_DEFAULT,
      prices: PRICES_DEFAULTS,
      zones: [],
      keepsHairs: false,
    },
    () => {},
  )
  expect(report.unitHint).toMatchObject({ unit: 'inch', also: 'centimetre' })
  expect(report.findings[0]).toMatchObject({
    code: 'not-millimetres',
    grade: 'changes the grams',
    short: 'drawn in inches?',
  })
})

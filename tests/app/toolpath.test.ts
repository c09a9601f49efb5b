import { expect, test } from 'vitest'
import { MATERIALS } from '../../src/core/data/materials.ts'
import { withApp } from '../support/app.ts'
import { box } from '../support/meshes.ts'
import { dropFiles, goToSheet, textFile, waitForCensus } from '../support/page.ts'
import { writeStlBinary } from '../support/writeMesh.ts'
import { PLAIN, SMALL_BOX, writeBox } from '../support/writeToolpath.ts'

test('a printer file dropped with its mesh stands beside the part, and gives it its recipe', async () => {
  const { sizeMm, layers, layerMm } = SMALL_BOX
  await withApp(async ({ page }) => {
    const mesh = writeStlBinary(box(sizeMm[0], sizeMm[1], layers * layerMm))
    const { text, filamentMm } = writeBox(SMALL_BOX, PLAIN)
    await dropFiles(page, [{ name: 'block.stl', bytes: mesh }, textFile('print.gcode', text)])
    await waitForCensus(page)
    await goToSheet(page, 'bench')
    const table = page.getByRole('region', { name: 'Printer file print.gcode' })
    await table.getByText('It prints block.').waitFor()
    const line = (words: string) => table.getByRole('row', { name: new RegExp(`^${words}`) })
    await expect.poll(() => line('Line width').innerText()).toMatch(/0\.45 mm\s+0\.4 mm\s+differs/)
    await table.getByRole('button', { name: 'Give block this recipe' }).click()
    await line('Line width').filter({ hasNotText: 'differs' }).waitFor()
    await waitForCensus(page)
    const grams = ((filamentMm * Math.PI * 1.75 ** 2) / 4000) * MATERIALS[0]!.densityGCm3.value
    await expect
      .poll(() => line('Plastic, all of it').innerText())
      .toContain(`${grams.toFixed(1)}\u00A0g`)
    await page.getByRole('button', { name: 'Undo' }).click()
    await line('Line width').filter({ hasText: 'differs' }).waitFor()
  })
})

import { expect, test } from 'vitest'
import { withApp } from '../support/app.ts'
import { box } from '../support/meshes.ts'
import { dropFiles, goToSheet, textFile, waitForCensus } from '../support/page.ts'
import { writeStlBinary } from '../support/writeMesh.ts'
import { PLAIN, SMALL_BOX, writeBox } from '../support/writeToolpath.ts'

test('a printer file made as its part is counts as a reading, and is taken out again', async () => {
  const { sizeMm, layers, layerMm } = SMALL_BOX
  await withApp(async ({ page }) => {
    const mesh = writeStlBinary(box(sizeMm[0], sizeMm[1], layers * layerMm))
    const { text } = writeBox(SMALL_BOX, PLAIN)
    await dropFiles(page, [{ name: 'block.stl', bytes: mesh }, textFile('print.gcode', text)])
    await waitForCensus(page)
    await goToSheet(page, 'bench')
    const table = page.getByRole('region', { name: 'Printer file print.gcode' })
    // Other settings: what it lays more or less is not the printer's way of laying.
    await table.getByText(/As a reading it would teach .* line width/).waitFor()
    await table.getByRole('button', { name: 'Give block this recipe' }).click()
    await waitForCensus(page)
    await table.getByRole('button', { name: 'Take it as a reading' }).click()
    const list = page.getByRole('list', { name: 'Printer files taken as readings' })
    const words = await list.getByRole('listitem').innerText()
    expect(words).toContain('print.gcode, block')
    expect(words).toMatch(/cm³, .*(it counts|too far off)/)
    await list.getByRole('button', { name: 'Take out' }).click()
    await list.waitFor({ state: 'detached' })
    await table.getByRole('button', { name: 'Take it as a reading' }).waitFor()
    await page.getByRole('button', { name: /^Undo/ }).click()
    await list.waitFor()
  })
})

import { expect, test } from 'vitest'
import { withApp } from '../support/app.ts'
import { boredPlate, straight } from '../support/boredPlate.ts'
import { rectangle } from '../support/meshes.ts'
import { dropFiles, goToSheet, waitForCensus } from '../support/page.ts'
import { writeStlBinary } from '../support/writeMesh.ts'

const HOLES = [
  [8, 8],
  [34, 10],
  [12, 22],
] as const

function plate(heightMm: number): Uint8Array {
  const borings = HOLES.map(([x, y]) => straight(x, y, 1.6, heightMm, 32))
  return writeStlBinary(boredPlate(rectangle(45, 30), heightMm, borings))
}

test('two plates whose holes meet are joined by a press, and part again by another', async () => {
  await withApp(async ({ page }) => {
    await dropFiles(page, [
      { name: 'low.stl', bytes: plate(4) },
      { name: 'high.stl', bytes: plate(3) },
    ])
    await waitForCensus(page)
    await goToSheet(page, 'aircraft')
    const joints = page.getByRole('region', { name: 'Joints' })
    await joints.getByRole('button', { name: 'Look for holes that meet' }).click()
    await joints
      .getByRole('button', { name: /^Join low – high/ })
      .first()
      .click()
    const undo = joints.getByRole('button', { name: 'Undo the joint of low and high' })
    await undo.waitFor()
    await page.getByRole('list', { name: 'Placed by joints' }).getByText('high 1').waitFor()
    await joints.getByRole('status').getByText('No two or more holes meet of pieces').waitFor()
    await page.getByText('Saved on this device').waitFor()
    await page.reload()
    await waitForCensus(page)
    await undo.click()
    await undo.waitFor({ state: 'detached' })
    expect(await page.getByRole('list', { name: 'Placed by joints' }).count()).toBe(0)
  })
})

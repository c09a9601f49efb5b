import { expect, test } from 'vitest'
import { sharedApp, withApp } from '../support/app.ts'
import { box, meshOf } from '../support/meshes.ts'
import { dropFiles, goToSheet, loadSandpiper, waitForCensus } from '../support/page.ts'
import { writeStlBinary } from '../support/writeMesh.ts'

const WIDE = { locale: 'en-GB', viewport: { width: 1280, height: 900 }, hasCounted: true }
const onSample = sharedApp(loadSandpiper, WIDE)

test('the sample is drawn with a number for every part that shows, and a number opens its part', async () => {
  await onSample(async ({ page }) => {
    const numbers = page.locator('.item-number')
    await numbers.first().waitFor()
    // The collar, saved in inches, is too small to see: it is told below the drawing.
    await expect.poll(() => numbers.count()).toBe(12)
    await page.getByText('Hidden here: 8 Pivot collar.').waitFor()
    expect(await page.locator('.loose-label').count()).toBe(0)
    await expect.poll(() => page.locator(':not(.piece-bought) > .piece-outline').count()).toBe(13)
    // Motors, propellers, controller, pack, camera, receiver, GPS and servo, in phantom lines.
    await expect.poll(() => page.locator('.piece-bought').count()).toBe(8)
    await page.getByText('In phantom lines, bought: A Motor,').waitFor()

    await page.getByRole('button', { name: 'Top', exact: true }).click()
    await page.locator('.assembly-view[aria-pressed="true"]', { hasText: 'Top' }).waitFor()
    const turned = page.getByRole('slider', { name: /Assembly drawing/ })
    await turned.focus()
    await page.keyboard.press('ArrowRight')
    await expect
      .poll(() => turned.getAttribute('aria-valuetext'))
      .toBe('turned 185°, 90° from above')

    // Once chooses, twice opens.
    const boom = page.getByRole('button', { name: /^2 Tail boom/ })
    await boom.click()
    await page.locator('.item-number[data-item="2"][aria-pressed="true"]').waitFor()
    await boom.click()
    await page.getByRole('group', { name: 'Settings of Tail boom' }).waitFor()
  })
})

test('a part without a place lies below the placed ones, and it is said there and in words', async () => {
  await onSample(async ({ page }) => {
    await goToSheet(page, 'frame')
    await dropFiles(page, [{ name: 'block.stl', bytes: writeStlBinary(box(30, 20, 10)) }])
    await waitForCensus(page)
    await page.locator('.loose-label', { hasText: 'not placed yet' }).waitFor()
    await page.getByText('Not placed yet: 14 block.').waitFor()
    const below = async (): Promise<number> => {
      const label = await page.locator('.loose-label').boundingBox()
      const rest = await page.locator('.piece-outline').first().boundingBox()
      return label!.y - rest!.y
    }
    await expect.poll(below).toBeGreaterThan(0)
  })
})

test('a part whose outlines are open is marked in the drawing; without places all lie side by side', async () => {
  await withApp(async ({ page }) => {
    // A box without its left side: 20 of the 100 mm round each layer are open, fewer than are
    // refused.
    const whole = box(30, 20, 10)
    const kept: number[] = []
    for (let i = 0; i < whole.indices.length; i += 3) {
      const xs = [0, 1, 2].map((k) => whole.positions[3 * whole.indices[i + k]!]!)
      if (xs.every((x) => x === 0)) continue
      kept.push(...whole.indices.slice(i, i + 3))
    }
    const points = Array.from(
      { length: whole.positions.length / 3 },
      (_, v) => Array.from(whole.positions.subarray(3 * v, 3 * v + 3)) as [number, number, number],
    )
    const open = meshOf(points, kept)
    await dropFiles(page, [
      { name: 'open.stl', bytes: writeStlBinary(open) },
      { name: 'whole.stl', bytes: writeStlBinary(whole) },
    ])
    await waitForCensus(page)
    await page.getByText('No part has a place yet; they lie side by side.').waitFor()
    expect(await page.locator('.loose-label').count()).toBe(0)
    await page.getByRole('button', { name: /^1 open, .*of its outlines open: choose$/ }).waitFor()
    await page.locator('.leader-amber .mark-ring').waitFor()
    await expect.poll(() => page.locator('.leader-amber').count()).toBe(1)
  }, WIDE)
})

test('two fingers bring the frame nearer and shift it, one turns it, and the page scrolls at its sides', async () => {
  await withApp(
    async ({ page }) => {
      await loadSandpiper(page)
      await page.locator('.piece-bought').nth(7).waitFor()
      const drawing = page.locator('.assembly-sheet svg')
      const { x, y, width, height } = (await drawing.boundingBox())!
      const middle = { x: x + width / 2, y: y + height / 2 }
      const pxPerMm = async () => {
        const bar = (await page.locator('.assembly-sheet .draw-scale').boundingBox())!
        return (
          bar.width /
          Number.parseFloat(
            (await page.locator('.assembly-sheet .draw-scale + .draw-name').textContent()) ?? '',
          )
        )
      }
      // Signs and masses come after the pieces and may make the rest smaller; once it was brought
      // nearer, its scale is the hand's alone.
      const fitting = await pxPerMm()
      await drawing.press('+')
      await expect.poll(async () => (await pxPerMm()) / fitting).toBeGreaterThan(1.15)
      const before = await pxPerMm()
      const turned = () => drawing.getAttribute('aria-valuetext')
      const hand = await page.context().newCDPSession(page)
      type Finger = readonly [right: number, down: number]
      const touch = async (type: 'touchStart' | 'touchMove' | 'touchEnd', ...fingers: Finger[]) => {
        const touchPoints = fingers.map(([dx, dy], id) => ({
          x: middle.x + dx,
          y: middle.y + dy,
          id,
        }))
        await hand.send('Input.dispatchTouchEvent', { type, touchPoints })
      }
      await touch('touchStart', [-60, 0])
      await touch('touchStart', [-60, 0], [60, 0])
      await touch('touchMove', [-90, 0], [60, 0])
      await touch('touchMove', [-90, 0], [90, 0])
      await touch('touchEnd', [-90, 0])
      await touch('touchEnd')
      await expect.poll(async () => (await pxPerMm()) / before).toBeCloseTo(1.5, 1)
      expect(await page.locator('.item-number[aria-pressed="true"]').count()).toBe(0)

      await touch('touchStart', [0, 0])
      await touch('touchMove', [40, 0])
      await touch('touchEnd')
      await expect.poll(turned).toBe('turned 126°, 28° from above')

      await touch('touchStart', [12 - width / 2, 0])
      await touch('touchMove', [12 - width / 2, -40])
      await touch('touchMove', [12 - width / 2, -160])
      await touch('touchEnd')
      await expect.poll(() => page.evaluate(() => window.scrollY)).toBeGreaterThan(50)
      await expect.poll(turned).toBe('turned 126°, 28° from above')
    },
    { locale: 'en-GB', viewport: { width: 768, height: 1024 }, hasTouch: true, hasCounted: true },
  )
})

import { describe, expect, test } from 'vitest'
import { withApp } from '../support/app.ts'
import { box } from '../support/meshes.ts'
import { dropFiles, goToSheet, openRow, waitForCensus } from '../support/page.ts'
import { writeStlBinary } from '../support/writeMesh.ts'

const BAR = box(100, 12, 8)
/** A solid sum of some seconds, on a busy machine. */
const SLOW = { timeout: 150_000 }

describe('how a part gives', { timeout: 600_000 }, () => {
  test('a bar is reckoned, its load is typed, an old answer is told to be old', async () => {
    await withApp(async ({ page }) => {
      await dropFiles(page, [{ name: 'bar.stl', bytes: writeStlBinary(BAR) }])
      await waitForCensus(page)
      const panel = await openRow(page, 'bar')
      await panel.getByRole('button', { name: 'How it gives, breaks and rings' }).click()
      const block = panel.getByRole('region', { name: 'How it gives, breaks and rings' })
      await block.getByText(/no licence to fly over people/).waitFor()
      // The beam, scaled by one sum of the solid model, follows the settings at once.
      const beam = panel.getByText(/^As a beam under 10 N it gives .* as its solid model does/)
      await beam.waitFor(SLOW)
      const plain = await beam.innerText()
      await panel.getByRole('textbox', { name: 'Infill share' }).fill('100')
      await page.keyboard.press('Enter')
      await expect.poll(() => beam.innerText()).not.toBe(plain)
      await panel.getByRole('textbox', { name: 'Infill share' }).fill('30')
      await page.keyboard.press('Enter')
      await expect.poll(() => beam.innerText()).toBe(plain)
      await block.getByRole('button', { name: 'Reckon it', exact: true }).click()
      await block
        .getByText(/Held at its left end, pushed upwards at its right end by 10 N/)
        .waitFor(SLOW)
      await block.getByRole('button', { name: 'Reckon it again' }).waitFor(SLOW)
      const gives = block.getByRole('row', { name: /Gives way by/ }).locator('b')
      const before = Number.parseFloat(await gives.innerText())
      expect(before).toBeGreaterThan(0)

      // Twice the load, twice as far: it is linear.
      await block.getByRole('textbox', { name: /Load/ }).fill('20')
      await page.keyboard.press('Enter')
      await block.getByText(/this is how it was before/).waitFor()
      await block.getByRole('button', { name: 'Reckon it again' }).click()
      await block.getByText(/by 20 N/).waitFor(SLOW)
      await block.getByRole('button', { name: 'Reckon it again' }).waitFor(SLOW)
      const after = Number.parseFloat(await gives.innerText())
      expect(after / before).toBeGreaterThan(1.9)
      expect(after / before).toBeLessThan(2.1)

      // Its load is kept for the visit: for the beam above too, and when the part is left and
      // opened again.
      await panel.getByText(/^As a beam under 20 N it gives/).waitFor(SLOW)
      await goToSheet(page, 'frame')
      await openRow(page, 'bar')
      await expect.poll(() => block.getByRole('textbox', { name: /Load/ }).inputValue()).toBe('20')
      await block.getByRole('button', { name: 'Reckon it' }).click()
      // Reckoned before: there at once.
      await block.getByRole('button', { name: 'Reckon it again' }).waitFor()

      // A knock, as a made-up microphone hears it, is held against it and teaches the plastic.
      await block.getByText(/^Rings first at/).waitFor()
      const ringsFirst = block.getByRole('row', { name: /Rings first at/ }).locator('b')
      const reckonedHz = Number.parseFloat(await ringsFirst.innerText())
      await page.evaluate((hz) => {
        const fake = () => {
          const context = new AudioContext()
          const { sampleRate } = context
          const sound = context.createBuffer(1, 2 * sampleRate, sampleRate)
          const samples = sound.getChannelData(0)
          const start = Math.floor(0.8 * sampleRate)
          for (let i = start; i < samples.length; i++) {
            const t = (i - start) / sampleRate
            samples[i] =
              0.6 * Math.exp(-0.02 * 2 * Math.PI * hz * t) * Math.sin(2 * Math.PI * hz * t)
          }
          const source = context.createBufferSource()
          source.buffer = sound
          source.loop = true
          const out = context.createMediaStreamDestination()
          source.connect(out)
          source.start()
          return Promise.resolve(out.stream)
        }
        Object.defineProperty(navigator.mediaDevices, 'getUserMedia', { value: fake })
      }, 1.08 * reckonedHz)
      await block.getByRole('button', { name: 'Listen to a knock' }).click()
      const rings = await block.getByText(/^It rings at/).innerText()
      const heardHz = Number.parseFloat(/It rings at ([\d.]+)/.exec(rings)?.[1] ?? '')
      expect(Math.abs(heardHz / (1.08 * reckonedHz) - 1)).toBeLessThan(0.01)
      expect(rings).toMatch(/So it is 1[5-8] % stiffer/)
      const shots = process.env['STIFF_SHOTS']
      if (shots !== undefined) {
        for (const width of [1440, 768, 360]) {
          await page.setViewportSize({ width, height: 1000 })
          await block.screenshot({ path: `${shots}/stiff-${width}.png` })
        }
        await page.emulateMedia({ colorScheme: 'dark' })
        await page.setViewportSize({ width: 1440, height: 1000 })
        await block.screenshot({ path: `${shots}/stiff-dark.png` })
      }
      await block.getByRole('button', { name: /^Take [\d.]+ GPa for/ }).click()
      await block.getByText(/this is how it was before/).waitFor()
      await page.keyboard.press('Control+z')

      // What cannot be is said, and what was found stays.
      await block.getByRole('button', { name: /Pushed/ }).click()
      await page.getByRole('option', { name: 'Left end' }).click()
      await block.getByRole('button', { name: 'Reckon it again' }).click()
      await block
        .getByRole('alert')
        .getByText(/What is pushed is what is held/)
        .waitFor()
    })
  })
})

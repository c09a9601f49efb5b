import { readFile } from 'node:fs/promises'
import { framePlaces } from '../../../src/core/joints/framePlaces.ts'
import { describe, expect, test } from 'vitest'
import { createInProcessRunner } from '../../../src/jobs/inProcess.ts'
import { ledgerRows } from '../../../src/state/store/derived.ts'
import { createDemoSource } from '../../../src/state/actions/demos.ts'
import { holding, startSession } from '../../support/session.ts'

const BASE = 'http://localhost/somewhere/'

/** Serves public/demo from the disk; `broken` paths answer 404. */
function fromDisk(broken: readonly string[] = []): typeof fetch {
  return async (input) => {
    const path = String(input instanceof Request ? input.url : input).slice(BASE.length)
    if (broken.includes(path)) return new Response('', { status: 404 })
    return new Response(Uint8Array.from(await readFile(`public/${path}`)))
  }
}

describe.each(['sandpiper', 'tern'] as const)('the demo “%s”', (id) => {
  test('gives a part for every line of its manifest, as that says', async () => {
    // The layers are not counted here: what is looked at is there before.
    const { runner } = holding(createInProcessRunner())
    const demos = createDemoSource(BASE, fromDisk())
    const { actions, state } = await startSession({ demos, runner })
    await actions.loadDemo(id)
    expect(state().failures).toEqual([])
    const manifest = JSON.parse(await readFile(`public/demo/${id}.json`, 'utf8')) as {
      name: string
      parts: { name: string; quantity: number; material: string; recipe: object; unit: string }[]
    }
    expect(state().frame.name).toBe(manifest.name)
    expect(state().frame.parts).toMatchObject(
      manifest.parts.map(({ name, quantity, material, recipe, unit }) => ({
        name,
        quantity,
        unit,
        materialId: material,
        recipe,
      })),
    )
    expect(ledgerRows(state()).every((row) => row.basis === 'rough')).toBe(true)
    actions.undo()
    expect(state().frame.parts).toEqual([])
    actions.close()
  })
})

test('a demo comes with its story, which goes with a word', async () => {
  const { runner } = holding(createInProcessRunner())
  const demos = createDemoSource(BASE, fromDisk())
  const { actions, state } = await startSession({ demos, runner })
  await actions.loadDemo('tern')
  expect(state().story?.text).toContain('invented')
  expect(state().story?.frameId).toBe(state().frame.id)
  actions.dismissStory()
  expect(state().story).toBeNull()
  actions.close()
})

test('what a demo says of parts by name reaches them by id', async () => {
  const { runner } = holding(createInProcessRunner())
  const demos = createDemoSource(BASE, fromDisk())
  const { actions, state } = await startSession({ demos, runner })
  await actions.loadDemo('sandpiper')
  const { parts, aircraft } = state().frame
  const idOf = (name: string) => parts.find((part) => part.name === name)?.id ?? ''
  expect(aircraft.limitG).toBe(610)
  const weighed = parts.flatMap(({ name, weighIn }) => (weighIn ? [[name, weighIn.massG]] : []))
  expect(weighed).toEqual(
    expect.arrayContaining([
      ['Front arm', 22.05],
      ['Upper deck', 15],
    ]),
  )
  expect(weighed).toHaveLength(2)
  expect(aircraft.season.breakShare[idOf('Tail boom')]).toBe(0.5)
  const ids = new Set(parts.map((part) => part.id))
  expect(aircraft.places.every(({ partId }) => ids.has(partId))).toBe(true)
  // Bought things with a body are joined, too.
  const bodied = aircraft.items.filter(({ body }) => body !== undefined)
  for (const { id } of bodied) ids.add(id)
  expect(aircraft.joints.every(({ a, b }) => ids.has(a.partId) && ids.has(b.partId))).toBe(true)
  expect(framePlaces(parts, aircraft).places.length).toBeGreaterThan(10)
  expect(aircraft.flight).toMatchObject({ motors: 3, motorThrustG: 620 })
  actions.close()
})

test('a demo that cannot be fetched is a failure with words, and the frame stays', async () => {
  const demos = createDemoSource(BASE, fromDisk(['demo/tern.json']))
  const { actions, state } = await startSession({ demos })
  const { frame } = state()
  await actions.loadDemo('tern')
  expect(state().frame).toBe(frame)
  expect(state().failures).toMatchObject([{ problem: { code: 'unreadable-file' } }])
})

import { createHash } from 'node:crypto'
import { readFileSync, readdirSync } from 'node:fs'
import { afterAll, expect, it } from 'vitest'
import { drawAircraft } from '../../src/demo/drawAircraft.ts'
import { SANDPIPER } from '../../src/demo/sandpiper.ts'
import { TERN } from '../../src/demo/tern.ts'
import { openWorkshop } from '../../src/demo/workshop.ts'

const folder = new URL('../../public/demo/', import.meta.url)
const shop = await openWorkshop()
afterAll(() => shop.close())

const drawn = new Map([SANDPIPER, TERN].flatMap((aircraft) => [...drawAircraft(shop, aircraft)]))

const sha256 = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex')

it('draws exactly the files that are committed (else run npm run demo)', () => {
  const committed = Object.fromEntries(
    readdirSync(folder).map((name) => [name, sha256(readFileSync(new URL(name, folder)))]),
  )
  expect(Object.fromEntries([...drawn].map(([name, bytes]) => [name, sha256(bytes)]))).toEqual(
    committed,
  )
})

it('keeps the whole demo below 3 MB', () => {
  const total = [...drawn.values()].reduce((sum, bytes) => sum + bytes.length, 0)
  expect(total).toBeLessThan(3_000_000)
})

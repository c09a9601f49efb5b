/* Writes the demo aircraft to public/demo: npm run demo. */
import { mkdir, writeFile } from 'node:fs/promises'
import { drawAircraft } from './drawAircraft.ts'
import { SANDPIPER } from './sandpiper.ts'
import { TERN } from './tern.ts'
import { openWorkshop } from './workshop.ts'

const folder = new URL('../../public/demo/', import.meta.url)
await mkdir(folder, { recursive: true })
const shop = await openWorkshop()
let total = 0
for (const aircraft of [SANDPIPER, TERN]) {
  for (const [name, bytes] of drawAircraft(shop, aircraft)) {
    await writeFile(new URL(name, folder), bytes)
    total += bytes.length
    console.log(`${name.padEnd(22)} ${(bytes.length / 1024).toFixed(1).padStart(8)} KiB`)
  }
}
shop.close()
console.log(`${'in all'.padEnd(22)} ${(total / 1024).toFixed(1).padStart(8)} KiB`)

import { strToU8 } from 'fflate'
import type { Aircraft } from './aircraft.ts'
import type { DemoManifest } from './manifest.ts'
import { markJoints } from './markJoints.ts'
import type { Workshop } from './workshop.ts'

/**
 * Every file of one aircraft as bytes, by name: its meshes and its manifest. The same on every run.
 */
export function drawAircraft(shop: Workshop, aircraft: Aircraft): ReadonlyMap<string, Uint8Array> {
  const files = new Map<string, Uint8Array>()
  for (const part of aircraft.parts) files.set(part.file, part.draw(shop))
  const told = aircraft.about.aircraft
  const manifest: DemoManifest = {
    ...aircraft.about,
    labelledSample: true,
    aircraft: {
      ...told,
      places: told.places.filter(({ partId }) => aircraft.roots.includes(partId)),
      joints: markJoints(aircraft, files),
    },
    // What draws a part is a function, and JSON leaves functions out.
    parts: aircraft.parts,
  }
  files.set(`${aircraft.id}.json`, strToU8(`${JSON.stringify(manifest, null, 2)}\n`))
  return files
}

import { createRequire } from 'node:module'
import * as THREE from 'three'

interface OldLoader {
  parse(data: ArrayBuffer): THREE.BufferGeometry
}

/**
 * three-stl-loader 1.0.6 made to run with today's three: it calls `addAttribute`, which three
 * renamed, so it is handed a copy of three whose geometry still answers to the old name. Its code
 * is untouched.
 *
 * Known limits of that loader, kept out of the comparisons: a text "solid" must be lower case and
 * the file's first bytes, a coordinate such as "1." or "+.5" may not match its patterns, and it
 * fails on a count that the file does not hold.
 */
export function parseWithThreeStlLoader(bytes: Uint8Array): Float32Array {
  class Geometry extends THREE.BufferGeometry {
    addAttribute(name: string, attribute: THREE.BufferAttribute): this {
      return this.setAttribute(name, attribute)
    }
  }
  const require = createRequire(import.meta.url)
  const create = require('three-stl-loader') as (three: unknown) => new () => OldLoader
  const Loader = create({ ...THREE, BufferGeometry: Geometry })
  const geometry = new Loader().parse(bytes.slice().buffer)
  return Float32Array.from(geometry.getAttribute('position').array, (value) => value + 0)
}

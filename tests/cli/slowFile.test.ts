import { execFileSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { parseOptions } from '../../src/cli/options.ts'
import { priceAll } from '../../src/cli/priceAll.ts'
import { box } from '../support/meshes.ts'
import { writeStlBinary } from '../support/writeMesh.ts'

let folder = ''
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'preweigh-slow-'))
})
afterEach(() => rmSync(folder, { recursive: true }))

/**
 * A file that gives nothing before the test writes it stands first; more others than are handed out
 * ahead.
 */
async function priceWithSlow(order: 'in order' | 'as they come'): Promise<readonly string[]> {
  const bytes = writeStlBinary(box(8, 6, 2))
  const slow = join(folder, 'slow.stl')
  execFileSync('mkfifo', [slow])
  const others = Array.from({ length: 20 }, (_, i) => `${i}.stl`)
  for (const name of others) writeFileSync(join(folder, name), bytes)
  const options = parseOptions(['slow.stl', ...others], () => '', 'en-GB')!
  const seen: string[] = []
  let done = 0
  await priceAll(
    options,
    {
      base: folder,
      cores: 2,
      onProgress() {
        // All others are done while the slow one has not given a byte.
        if (++done === others.length) void writeFile(slow, bytes)
      },
    },
    order,
    (parts) => seen.push(...parts.map(({ file }) => file)),
  )
  return seen
}

describe('a slow file among many', () => {
  test('comes last where results leave as they come', async () => {
    const seen = await priceWithSlow('as they come')
    expect(seen).toHaveLength(21)
    expect(seen.at(-1)).toBe('slow.stl')
  })

  test('holds up no other where they are told in order', async () => {
    const seen = await priceWithSlow('in order')
    expect(seen).toEqual(['slow.stl', ...Array.from({ length: 20 }, (_, i) => `${i}.stl`)])
  })
})

import { execFile } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { box } from '../support/meshes.ts'
import { writeStlBinary } from '../support/writeMesh.ts'

let folder: string
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'pairs-'))
})
afterEach(() => {
  rmSync(folder, { recursive: true })
})

function runPairs(...args: readonly string[]): Promise<{ code: number; out: string; err: string }> {
  return new Promise((done) => {
    const child = execFile(
      process.execPath,
      [
        resolve('node_modules/tsx/dist/cli.mjs'),
        resolve('tests/bench/pairs/pairs.ts'),
        folder,
        ...args,
      ],
      (_, out, err) => done({ code: child.exitCode ?? -1, out, err }),
    )
  })
}

const listed = (pairs: object): void =>
  writeFileSync(join(folder, 'pairs.json'), JSON.stringify(pairs))

describe('toolpaths held against the count', () => {
  test('of any folder: what can be scored is, the rest is named with what it lacks', async () => {
    for (const name of ['sound', 'bare', 'heightless']) {
      writeFileSync(join(folder, `${name}.stl`), writeStlBinary(box(20, 20, 4)))
    }
    writeFileSync(join(folder, 'spoilt.stl'), 'solid of nothing')
    const seen = { layer: '0.2', part: 1600, bead: 0.4 }
    listed({
      sound: { use: { walls: 2, infill: 100 }, seen },
      meshless: { seen },
      spoilt: { seen },
      bare: { use: null, seen: 'nothing' },
      heightless: { seen: { part: 1600, bead: 0.4, layer: -1 } },
    })
    const { code, out, err } = await runPairs()
    expect({ code, err }).toEqual({ code: 0, err: '' })
    // A block of 20 × 20 × 4 mm holds 1600 mm³.
    expect(out).toMatch(/sound .* [+−][0-2]\.\d %/)
    expect(out).toContain('all: 1 pairs')
    expect(out).toContain('left out: meshless: no mesh')
    expect(out).toMatch(/left out: spoilt: \S+/)
    expect(out).toContain('left out: bare: no layer height')
    expect(out).toContain('left out: heightless: no layer height')
  })

  test.each([
    ['no list', null, /pairs\.json cannot be read/],
    ['a list cut short', '{"a": {', /is no JSON/],
    ['a list of names', '["a"]', /holds no object of pairs/],
  ])('of a folder with %s are refused in a sentence', async (_, text, words) => {
    if (text !== null) writeFileSync(join(folder, 'pairs.json'), text)
    const { code, out, err } = await runPairs()
    expect({ code, out }).toEqual({ code: 2, out: '' })
    expect(err).toMatch(words)
    expect(err).not.toContain('    at ')
  })

  test('of a folder where nothing can be scored say so', async () => {
    listed({})
    expect((await runPairs()).out).toContain('No pair could be scored.')
  })
})

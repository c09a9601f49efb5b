import { readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, test } from 'vitest'

/**
 * What each folder of src may import: other folders, and packages from npm (`node:` stands for
 * Node's own). core <- jobs <- state <- ui, view3d; the composition points (main.tsx, cli) sit
 * above what they wire up.
 */
const RULES: Record<string, { folders: readonly string[]; packages: readonly string[] }> = {
  core: { folders: [], packages: ['valibot', 'fflate', 'saxes'] },
  jobs: { folders: ['core'], packages: ['fflate'] },
  state: { folders: ['core', 'jobs'], packages: ['zustand/vanilla', 'idb', 'valibot', 'fflate'] },
  view3d: { folders: ['core', 'state'], packages: ['three'] },
  ui: {
    folders: ['core', 'state', 'view3d'],
    packages: [
      'react',
      'react-dom',
      'react-aria-components',
      'zustand',
      'd3-scale',
      'd3-shape',
      'virtual:licences',
    ],
  },
  // Of state the command takes what reads frames, nothing that holds one.
  cli: { folders: ['core', 'jobs', 'state'], packages: ['node:', 'valibot', 'tsx'] },
  demo: { folders: ['core'], packages: ['node:', 'manifold-3d', 'fflate'] },
  tools: { folders: [], packages: ['node:', 'vite'] },
}

/**
 * What each room of src/core may import besides itself: facts at the bottom, the whole aircraft on
 * top.
 */
const ROOMS: Record<string, readonly string[]> = {
  model: [],
  words: ['model'],
  data: ['model'],
  formats: ['model', 'words'],
  mesh: ['model', 'words'],
  census: ['model', 'words', 'mesh'],
  doubt: ['model', 'words', 'data'],
  calibration: ['model'],
  figures: ['model', 'words', 'data', 'doubt'],
  frame: ['model', 'words', 'data', 'doubt', 'figures'],
  joints: ['model', 'words', 'data', 'mesh'],
  stiffness: ['model', 'words', 'data', 'mesh', 'census', 'doubt'],
  aircraft: [
    'model',
    'words',
    'data',
    'mesh',
    'joints',
    'census',
    'stiffness',
    'doubt',
    'figures',
    'frame',
  ],
  choose: ['model', 'words', 'data', 'doubt', 'figures', 'frame', 'stiffness', 'aircraft'],
  drawing: ['model', 'mesh'],
  drill: ['model', 'words', 'data', 'mesh', 'joints', 'doubt', 'aircraft'],
  toolpath: ['model', 'mesh', 'figures'],
  runs: ['model', 'words', 'data', 'mesh', 'census', 'doubt', 'figures', 'frame'],
}

interface Import {
  readonly file: string
  readonly target: string
}

const IMPORTS = [
  /\b(?:from|import)\s*\(?\s*(['"])(.+?)\1/g,
  // How a worker's file is named.
  /\bnew URL\(\s*(['"])(.+?\.tsx?)\1/g,
]

/**
 * Import targets of a source text: static, dynamic, for side effects, and worker files named by
 * URL.
 */
function importsOf(text: string): string[] {
  const code = text.replaceAll(/\/\*[\s\S]*?\*\//g, '').replaceAll(/^\s*\/\/.*$/gm, '')
  return IMPORTS.flatMap((pattern) => [...code.matchAll(pattern)]).flatMap(
    ([, , target]) => target ?? [],
  )
}

function readImports(folder: string): Import[] {
  return readdirSync(path.join('src', folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.(?:tsx?|mjs)$/.test(name))
    .map((name) => path.join('src', folder, name))
    .flatMap((file) => importsOf(readFileSync(file, 'utf8')).map((target) => ({ file, target })))
}

/** Why an import breaks the rule of its folder; null when it does not. */
function complaint({ file, target }: Import): string | null {
  const folder = file.split(path.sep)[1] ?? ''
  const rule = RULES[folder]
  if (rule === undefined) return `src/${folder} has no rule in tests/imports.test.ts`
  if (!target.startsWith('.')) {
    const isAllowed = rule.packages.some(
      (name) => target === name || target.startsWith(name.endsWith(':') ? name : `${name}/`),
    )
    return isAllowed ? null : `${file} imports the package ${target}`
  }
  const [top, other = ''] = path.join(path.dirname(file), target).split(path.sep)
  if (top !== 'src') return `${file} imports ${target}, outside src`
  return other === folder || rule.folders.includes(other) ? null : `${file} imports src/${other}`
}

/**
 * Why an import breaks the order of the rooms inside core; null when it does not. Files beside the
 * rooms join them.
 */
function roomComplaint({ file, target }: Import): string | null {
  const [, , room = '', inner] = file.split(path.sep)
  if (!target.startsWith('.') || inner === undefined) return null
  const allowed = ROOMS[room]
  if (allowed === undefined) return `src/core/${room} has no rule in tests/imports.test.ts`
  const [, , other = ''] = path.join(path.dirname(file), target).split(path.sep)
  return other === room || allowed.includes(other) ? null : `${file} imports core/${other}`
}

const folders = readdirSync('src', { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .map((entry) => entry.name)

describe('imports', () => {
  test.each(folders)('src/%s imports only what it may', (folder) => {
    const complaints = readImports(folder)
      .map(complaint)
      .filter((text) => text !== null)
    expect(complaints).toEqual([])
  })

  test('the rooms of core import only those below them', () => {
    const complaints = readImports('core')
      .map(roomComplaint)
      .filter((text) => text !== null)
    expect(complaints).toEqual([])
  })

  test('a breach of the order of the rooms is seen', () => {
    const file = path.join('src', 'core', 'mesh', 'x.ts')
    expect(roomComplaint({ file, target: '../model/mesh.ts' })).toBeNull()
    expect(roomComplaint({ file, target: '../figures/mass.ts' })).toContain('core/figures')
    const stray = path.join('src', 'core', 'attic', 'x.ts')
    expect(roomComplaint({ file: stray, target: '../model/mesh.ts' })).toContain('no rule')
  })

  test('the rule sees every way to import, and a breach of it', () => {
    const text = [
      "import a from '../state/store.ts'",
      "import type { B } from 'three'",
      'import {',
      '  c,',
      "} from './c.ts'",
      "import './d.css'",
      "export * from '../e.ts'",
      "const f = await import('../ui/f.ts')",
      "new Worker(new URL('../jobs/g.worker.ts', import.meta.url))",
      "// import h from 'h'",
    ].join('\n')
    expect(importsOf(text)).toEqual([
      '../state/store.ts',
      'three',
      './c.ts',
      './d.css',
      '../e.ts',
      '../ui/f.ts',
      '../jobs/g.worker.ts',
    ])
    const file = path.join('src', 'core', 'figures', 'x.ts')
    expect(complaint({ file, target: '../../state/store.ts' })).toContain('imports src/state')
    expect(complaint({ file, target: 'three' })).toContain('three')
    expect(complaint({ file, target: '../units.ts' })).toBeNull()
    expect(complaint({ file: path.join('src', 'new', 'x.ts'), target: 'three' })).toContain(
      'no rule',
    )
  })

  test('core is found at all', () => {
    expect(readImports('core').length).toBeGreaterThan(10)
  })
})

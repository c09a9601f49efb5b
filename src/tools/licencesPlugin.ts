import { existsSync, readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import type { Plugin } from 'vite'

/** The module under which the page finds the licences; see `src/ui/licences/licences.d.ts`. */
const MODULE = 'virtual:licences'

export interface Licences {
  readonly packages: readonly {
    readonly name: string
    readonly version: string
    readonly licence: string
    /**
     * Index into `texts`; null when the package comes without a text and no other has one of its
     * licence.
     */
    readonly text: number | null
  }[]
  /** Each text once: most packages of one house share theirs. */
  readonly texts: readonly string[]
}

/**
 * Makes the licences of everything from npm that may be in the built page a module of its own,
 * loaded when asked for.
 */
export function licencesPlugin(): Plugin {
  let root = ''
  return {
    name: 'preweigh-licences',
    configResolved(config) {
      root = config.root
    },
    resolveId: (id) => (id === MODULE ? `\0${MODULE}` : null),
    load: (id) =>
      id === `\0${MODULE}`
        ? `export const LICENCES = JSON.parse(${JSON.stringify(JSON.stringify(collectLicences(root)))})`
        : null,
  }
}

interface Manifest {
  readonly name: string
  readonly version: string
  readonly license?: string | { readonly type: string }
  readonly author?: string | { readonly name: string }
  readonly dependencies?: Readonly<Record<string, string>>
}

/**
 * Of every package the ones in `dependencies` need, directly or through others; sorted by name.
 * Throws where one is not installed.
 */
export function collectLicences(root: string): Licences {
  const found = new Map<string, { manifest: Manifest; folder: string }>()
  const waiting = needsOf(readManifest(root)).map((name) => ({ name, from: root }))
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    const folder = folderOf(next.name, next.from)
    if (found.has(folder)) continue
    const manifest = readManifest(folder)
    found.set(folder, { manifest, folder })
    waiting.push(...needsOf(manifest).map((name) => ({ name, from: folder })))
  }
  const packages = [...found.values()]
    .toSorted((a, b) => (a.manifest.name < b.manifest.name ? -1 : 1))
    .map(({ manifest, folder }) => ({ manifest, text: textIn(folder) }))
  const termsOf = (licence: string): string | null =>
    packages.find(({ manifest, text }) => text !== null && licenceOf(manifest) === licence)?.text ??
    null
  const texts: string[] = []
  const listed = packages.map(({ manifest, text: own }) => {
    const { name, version } = manifest
    const licence = licenceOf(manifest)
    const text = own ?? textWithout(manifest, termsOf(licence))
    if (text !== null && !texts.includes(text)) texts.push(text)
    return { name, version, licence, text: text === null ? null : texts.indexOf(text) }
  })
  return { packages: listed, texts }
}

function licenceOf({ license = 'not stated' }: Manifest): string {
  return typeof license === 'string' ? license : license.type
}

/**
 * For a package that names its licence but has no file of it: whom it names, and the terms as
 * another package has them.
 */
function textWithout(manifest: Manifest, terms: string | null): string | null {
  if (terms === null) return null
  const { name, author } = manifest
  const by = typeof author === 'object' ? author.name : (author ?? 'no author')
  const plain = terms.replaceAll(/^.*(copyright \(c\)|copyright \d|©).*$/gim, '').trim()
  return (
    `${name} comes without a file of its licence. ` +
    `It names ${by} and the ${licenceOf(manifest)} licence:\n\n${plain}`
  )
}

function needsOf({ dependencies = {} }: Manifest): readonly string[] {
  // Types have no code in the page.
  return Object.keys(dependencies).filter((name) => !name.startsWith('@types/'))
}

function readManifest(folder: string): Manifest {
  return JSON.parse(readFileSync(path.join(folder, 'package.json'), 'utf8')) as Manifest
}

/** Where `name` is found from inside `from`: in the nearest `node_modules` upwards. */
function folderOf(name: string, from: string): string {
  for (let at = from; ; at = path.dirname(at)) {
    const folder = path.join(at, 'node_modules', name)
    if (existsSync(path.join(folder, 'package.json'))) return folder
    if (at === path.dirname(at)) throw new Error(`${name}, needed by ${from}, is not installed.`)
  }
}

function textIn(folder: string): string | null {
  const [file] = readdirSync(folder)
    .filter((name) => /^(licen[cs]e|copying)(\.|-|$)/i.test(name))
    .toSorted()
  return file === undefined ? null : readFileSync(path.join(folder, file), 'utf8').trim()
}

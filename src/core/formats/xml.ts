import { DecodeUTF8 } from 'fflate'
import { SaxesParser } from 'saxes'
import { PreweighError } from '../model/problem.ts'
import { breach } from './breach.ts'
import { MAX_XML_DEPTH } from './limits.ts'
import { grouped } from '../words/counts.ts'
import { refuse } from './refuse.ts'
import { decodeText } from './text.ts'

export type Attributes = Readonly<Record<string, string | undefined>>

export interface XmlReader {
  readonly open: (tag: string, attributes: Attributes) => void
  readonly close: () => void
}

/** Bytes decoded and parsed at a time, so that a long part never becomes one long string. */
const CHUNK = 64 * 1024

/**
 * Runs through the XML of one part of a package; `path` is the part's name, `name` the file's.
 * `begin` gets a function that says where the parser stands and returns what is to be told. Throws
 * `bad-xml` for unsound XML, for nesting without end and for document type declarations: these can
 * define entities that expand without end, and 3MF forbids them.
 */
export function readXml(
  xml: Uint8Array,
  path: string,
  name: string,
  begin: (where: () => string) => XmlReader,
): void {
  const parser = new SaxesParser<{ xmlns: false; position: true }>({ xmlns: false, position: true })
  const where = () => `at character ${grouped(parser.position)} of "${path}"`
  const reader = begin(where)
  let depth = 0
  parser.on('doctype', () => {
    refuse(
      name,
      'bad-xml',
      `There is a document type declaration ${where()}, which 3MF forbids.`,
      breach('XML'),
    )
  })
  parser.on('opentag', ({ name: tag, attributes }) => {
    if (++depth > MAX_XML_DEPTH) {
      refuse(
        name,
        'bad-xml',
        `Elements are nested deeper than ${MAX_XML_DEPTH} ${where()}.`,
        breach('XML'),
      )
    }
    reader.open(tag, attributes)
  })
  parser.on('closetag', () => {
    depth--
    reader.close()
  })
  const feed = new DecodeUTF8((chunk) => {
    parser.write(chunk)
  })
  try {
    const bytes = utf8Of(xml)
    for (let at = 0; at < bytes.length; at += CHUNK) {
      feed.push(bytes.subarray(at, at + CHUNK), at + CHUNK >= bytes.length)
    }
    parser.close()
  } catch (error) {
    if (error instanceof PreweighError) throw error
    const cause = error instanceof Error ? error.message : 'unknown cause'
    refuse(name, 'bad-xml', `"${path}" is not sound XML${causeWords(cause)}.`, breach('XML'))
  }
}

/** “14:41: disallowed character.” as the parser says it. */
function causeWords(cause: string): string {
  const [, line, column, what = cause] = /^(\d+):(\d+): (.*)$/s.exec(cause) ?? []
  const at = line === undefined ? '' : ` at line ${line}, column ${column}`
  return `${at}: ${what.replace(/\.$/, '')}`
}

/** A part is UTF-8 or UTF-16; names beyond ASCII are lost from the latter, numbers are not. */
function utf8Of(xml: Uint8Array): Uint8Array {
  const text = decodeText(xml)
  return text === null ? xml : text.bytes.subarray(text.start)
}

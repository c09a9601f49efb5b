import type { Problem } from '../model/problem.ts'
import { counted } from '../words/counts.ts'
import { refuse } from './refuse.ts'
import { decodeText } from './text.ts'
import { isEmptyZip, isZip, listEntries } from './zip.ts'

/**
 * Files that builders drop beside meshes, by their first bytes (each format's own published
 * signature).
 */
const KNOWN: readonly { begins: string; is: string; advice: string }[] = [
  {
    begins: 'ISO-10303-21',
    is: 'a STEP file, which holds surfaces and not triangles',
    advice: 'Export the part from your CAD program as STL, OBJ or 3MF.',
  },
  {
    begins: 'glTF',
    is: 'a glTF file',
    advice: 'Export the part as STL, OBJ or 3MF.',
  },
  { begins: 'ply\n', is: 'a PLY file', advice: 'Export the part as STL, OBJ or 3MF.' },
  {
    begins: '<?xml',
    is: 'a single XML text',
    advice: 'A 3MF file is a ZIP package with such a text in it: export the part again as 3MF.',
  },
  { begins: '%PDF', is: 'a PDF', advice: 'Drop the mesh instead of its drawing.' },
  { begins: '\x89PNG', is: 'a PNG image', advice: 'Drop the mesh instead of its picture.' },
  { begins: '\xff\xd8\xff', is: 'a JPEG image', advice: 'Drop the mesh instead of its picture.' },
  { begins: '7z\xbc\xaf', is: 'a 7z archive', advice: 'Unpack it, or pack the meshes as ZIP.' },
  { begins: 'Rar!', is: 'a RAR archive', advice: 'Unpack it, or pack the meshes as ZIP.' },
  { begins: '\x1f\x8b', is: 'a gzip archive', advice: 'Unpack it, or pack the meshes as ZIP.' },
]

/** Whether the first bytes are those of another well-known format. */
export function isOtherFormat(bytes: Uint8Array): boolean {
  return findKnown(bytes) !== undefined
}

/** Says what a file is that no reader takes. */
export function refuseUnknown(bytes: Uint8Array, name: string): never {
  if (bytes.length === 0) {
    refuse(name, 'empty-file', 'It is 0 bytes long.', 'Export or download it again.')
  }
  if (isZip(bytes)) {
    // Says it better where the archive is broken.
    listEntries(bytes, name)
    refuse(
      name,
      'bad-archive',
      'It is a ZIP archive, but not a 3MF package.',
      'Drop a ZIP with STL, OBJ or 3MF files in it, or unpack it and drop the meshes.',
    )
  }
  if (isEmptyZip(bytes)) {
    refuse(name, 'bad-archive', 'It is a ZIP with no file in it.', 'Pack the meshes again.')
  }
  const known = findKnown(bytes)
  if (known) refuse(name, 'unknown-format', `It is ${known.is}.`, known.advice)
  const kind = decodeText(bytes) === null ? 'binary' : 'text'
  refuse(
    name,
    'unknown-format',
    `Its ${counted(bytes.length, 'byte')} of ${kind} are not STL, OBJ or 3MF.`,
    'Export the part as STL, OBJ or 3MF. If it is one of these, it is damaged: export it again.',
  )
}

/** By its name alone: a spoilt one has nothing else left to tell it by. */
export function isNamedProject(name: string): boolean {
  return /\.preweigh$/i.test(name)
}

/** Says that a saved frame is spoilt: no mesh was meant, so no export helps. */
export function spoiltProject(bytes: Uint8Array, name: string): Problem {
  return {
    code: 'bad-project',
    message:
      `${name}: Its name is that of a saved frame, and its ${counted(bytes.length, 'byte')} are none ` +
      'any more: it was cut off or changed.',
    advice:
      'Copy or download it again. The frame itself may still be in the list of projects of the browser ' +
      'that saved it: save it from there anew.',
  }
}

function findKnown(bytes: Uint8Array) {
  return KNOWN.find(({ begins }) => {
    for (let i = 0; i < begins.length; i++) {
      if (bytes[i] !== begins.charCodeAt(i)) return false
    }
    return true
  })
}

import { strToU8, zipSync } from 'fflate'
import type { LengthUnit, Mesh } from '../../src/core/model/mesh.ts'

/**
 * Binary STL: 80 bytes of header, a count, 50 bytes a triangle, coordinates rounded to 32-bit
 * floats.
 */
export function writeStlBinary(mesh: Mesh, header = 'written by a test'): Uint8Array {
  const triangles = mesh.indices.length / 3
  const bytes = new Uint8Array(84 + triangles * 50)
  bytes.set(strToU8(header).subarray(0, 80))
  const view = new DataView(bytes.buffer)
  view.setUint32(80, triangles, true)
  let at = 84
  for (let t = 0; t < triangles; t++) {
    for (const value of normalOf(mesh, t)) {
      view.setFloat32(at, value, true)
      at += 4
    }
    for (let corner = 0; corner < 3; corner++) {
      for (const value of cornerOf(mesh, t, corner)) {
        view.setFloat32(at, value, true)
        at += 4
      }
    }
    at += 2
  }
  return bytes
}

export interface StlAsciiOptions {
  readonly name?: string
  readonly newline?: string
  /**
   * How a coordinate is spelled; the default is the shortest text that reads back as the same
   * number.
   */
  readonly number?: (value: number) => string
}

/** One ASCII STL solid. */
export function writeStlAscii(mesh: Mesh, options: StlAsciiOptions = {}): Uint8Array {
  const { name = 'part', newline = '\n', number = String } = options
  const lines = [`solid ${name}`]
  for (let t = 0; t < mesh.indices.length / 3; t++) {
    lines.push(`  facet normal ${normalOf(mesh, t).map(number).join(' ')}`, '    outer loop')
    for (let corner = 0; corner < 3; corner++) {
      lines.push(`      vertex ${cornerOf(mesh, t, corner).map(number).join(' ')}`)
    }
    lines.push('    endloop', '  endfacet')
  }
  lines.push(`endsolid ${name}`, '')
  return strToU8(lines.join(newline))
}

/** OBJ with one object and triangles only; vertex numbers start at 1. */
export function writeObj(mesh: Mesh, name = 'part'): Uint8Array {
  const lines = [`o ${name}`]
  for (let v = 0; v < mesh.positions.length; v += 3) {
    lines.push(`v ${mesh.positions.subarray(v, v + 3).join(' ')}`)
  }
  for (let i = 0; i < mesh.indices.length; i += 3) {
    lines.push(`f ${Array.from(mesh.indices.subarray(i, i + 3), (index) => index + 1).join(' ')}`)
  }
  return strToU8(lines.join('\n') + '\n')
}

/** A 3MF package with one object and one build item. */
export function write3mf(mesh: Mesh, unit: LengthUnit = 'millimetre', name = 'part'): Uint8Array {
  return pack3mf(
    modelXml(
      `<object id="1" name="${name}" type="model">${meshXml(mesh)}</object>`,
      '<item objectid="1"/>',
      unit,
    ),
  )
}

/** The `<mesh>` element of a 3MF object. */
export function meshXml(mesh: Mesh): string {
  const parts = ['<mesh><vertices>']
  for (let v = 0; v < mesh.positions.length; v += 3) {
    const [x, y, z] = mesh.positions.subarray(v, v + 3)
    parts.push(`<vertex x="${x}" y="${y}" z="${z}"/>`)
  }
  parts.push('</vertices><triangles>')
  for (let i = 0; i < mesh.indices.length; i += 3) {
    const [a, b, c] = mesh.indices.subarray(i, i + 3)
    parts.push(`<triangle v1="${a}" v2="${b}" v3="${c}"/>`)
  }
  parts.push('</triangles></mesh>')
  return parts.join('\n')
}

/** A whole 3MF model part from the inside of its `<resources>` and `<build>`. */
export function modelXml(
  resources: string,
  build: string,
  unit: LengthUnit = 'millimetre',
  production = false,
): string {
  // The standard spells these two units the American way.
  const spelled = { millimetre: 'millimeter', centimetre: 'centimeter', metre: 'meter' }
  const unitText = (spelled as Record<string, string>)[unit] ?? unit
  const namespaces =
    'xmlns="http://schemas.microsoft.com/3dmanufacturing/core/2015/02"' +
    (production
      ? ' xmlns:p="http://schemas.microsoft.com/3dmanufacturing/production/2015/06" requiredextensions="p"'
      : '')
  return `<?xml version="1.0" encoding="UTF-8"?>
<model unit="${unitText}" xml:lang="en-US" ${namespaces}>
<resources>${resources}</resources>
<build>${build}</build>
</model>`
}

/** A 3MF package around one root model part and, by path, any others. */
export function pack3mf(
  rootModel: string,
  otherParts: Readonly<Record<string, string | Uint8Array>> = {},
  rootPath = '3D/3dmodel.model',
): Uint8Array {
  const files: Record<string, Uint8Array> = {
    '[Content_Types].xml': strToU8(
      '<?xml version="1.0" encoding="UTF-8"?>' +
        '<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">' +
        '<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>' +
        '<Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/></Types>',
    ),
    '_rels/.rels': strToU8(
      '<?xml version="1.0" encoding="UTF-8"?>' +
        '<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">' +
        `<Relationship Id="r0" Target="/${rootPath}" ` +
        'Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/></Relationships>',
    ),
    [rootPath]: strToU8(rootModel),
  }
  for (const [path, content] of Object.entries(otherParts)) {
    files[path] = typeof content === 'string' ? strToU8(content) : content
  }
  // A fixed date keeps the bytes the same from run to run.
  return zipSync(files, { level: 6, mtime: new Date('2025-01-01T00:00:00Z') })
}

function cornerOf(mesh: Mesh, triangle: number, corner: number): [number, number, number] {
  const v = (mesh.indices[triangle * 3 + corner] ?? NaN) * 3
  return [mesh.positions[v] ?? NaN, mesh.positions[v + 1] ?? NaN, mesh.positions[v + 2] ?? NaN]
}

function normalOf(mesh: Mesh, triangle: number): [number, number, number] {
  const a = cornerOf(mesh, triangle, 0)
  const b = cornerOf(mesh, triangle, 1)
  const c = cornerOf(mesh, triangle, 2)
  const u = [b[0] - a[0], b[1] - a[1], b[2] - a[2]] as const
  const v = [c[0] - a[0], c[1] - a[1], c[2] - a[2]] as const
  const n = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]]
  const length = Math.hypot(...n) || 1
  return [(n[0] ?? 0) / length, (n[1] ?? 0) / length, (n[2] ?? 0) / length]
}

import { strToU8, zipSync } from 'fflate'
import type { LengthUnit, Mesh } from '../core/model/mesh.ts'

/** One body of a 3MF file and where its build item puts it, in the file's unit. */
export interface PlacedMesh {
  readonly name: string
  readonly mesh: Mesh
  readonly at: readonly [x: number, y: number, z: number]
}

/** Binary STL: an 80-byte header, a count, then 50 bytes a triangle, little-endian. */
export function writeStl(mesh: Mesh, header: string): Uint8Array {
  const count = mesh.indices.length / 3
  const bytes = new Uint8Array(84 + 50 * count)
  const view = new DataView(bytes.buffer)
  bytes.set(strToU8(header).subarray(0, 80))
  view.setUint32(80, count, true)
  for (const [i, facet] of facets(mesh).entries()) {
    for (const [k, value] of facet.flat().entries()) {
      view.setFloat32(84 + 50 * i + 4 * k, value, true)
    }
  }
  return bytes
}

/** ASCII STL, one named solid. */
export function writeTextStl(mesh: Mesh, name: string): Uint8Array {
  const lines = [`solid ${name}`]
  for (const [normal, ...corners] of facets(mesh)) {
    lines.push(`  facet normal ${normal.map(exponent).join(' ')}`, '    outer loop')
    for (const corner of corners) lines.push(`      vertex ${corner.map(exponent).join(' ')}`)
    lines.push('    endloop', '  endfacet')
  }
  return strToU8([...lines, `endsolid ${name}`, ''].join('\n'))
}

/** OBJ, one group; vertex numbers begin at 1. */
export function writeObj(mesh: Mesh, name: string): Uint8Array {
  const lines = [`# Invented sample part, mm`, `g ${name}`]
  for (let i = 0; i < mesh.positions.length; i += 3) {
    lines.push(`v ${[...mesh.positions.subarray(i, i + 3)].map(plain).join(' ')}`)
  }
  for (let i = 0; i < mesh.indices.length; i += 3) {
    lines.push(`f ${[...mesh.indices.subarray(i, i + 3)].map((v) => v + 1).join(' ')}`)
  }
  return strToU8([...lines, ''].join('\n'))
}

/**
 * 3MF with one object and one build item a body; `unit` is stated in the file, the meshes are in it
 * already.
 */
export function write3mf(bodies: readonly PlacedMesh[], unit: LengthUnit): Uint8Array {
  const objects = bodies.map(({ name, mesh }, i) => {
    const vertices: string[] = []
    for (let k = 0; k < mesh.positions.length; k += 3) {
      const [x = '', y = '', z = ''] = [...mesh.positions.subarray(k, k + 3)].map(plain)
      vertices.push(`<vertex x="${x}" y="${y}" z="${z}"/>`)
    }
    const triangles: string[] = []
    for (let k = 0; k < mesh.indices.length; k += 3) {
      const [a = 0, b = 0, c = 0] = mesh.indices.subarray(k, k + 3)
      triangles.push(`<triangle v1="${a}" v2="${b}" v3="${c}"/>`)
    }
    return (
      `<object id="${i + 1}" type="model" name="${name}"><mesh>` +
      `<vertices>${vertices.join('')}</vertices><triangles>${triangles.join('')}</triangles>` +
      `</mesh></object>`
    )
  })
  const items = bodies.map(
    ({ at }, i) => `<item objectid="${i + 1}" transform="1 0 0 0 1 0 0 0 1 ${at.join(' ')}"/>`,
  )
  const xml = '<?xml version="1.0" encoding="UTF-8"?>\n'
  const model =
    `${xml}<model unit="${threeMfUnit(unit)}" xml:lang="en-GB" ` +
    'xmlns="http://schemas.microsoft.com/3dmanufacturing/core/2015/02">' +
    `<resources>${objects.join('')}</resources><build>${items.join('')}</build></model>\n`
  const types =
    `${xml}<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">` +
    '<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>' +
    '<Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/>' +
    '</Types>\n'
  const relations =
    `${xml}<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">` +
    '<Relationship Id="rel0" Target="/3D/3dmodel.model" ' +
    'Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/></Relationships>\n'
  return zipSync(
    {
      '[Content_Types].xml': strToU8(types),
      '_rels/.rels': strToU8(relations),
      '3D/3dmodel.model': strToU8(model),
    },
    // A fixed date, or the same meshes would give other bytes tomorrow.
    { level: 9, mtime: new Date(1980, 0, 1), os: 3 },
  )
}

/** The same mesh in another unit: every coordinate times `factor`. */
export function rescale(mesh: Mesh, factor: number): Mesh {
  return {
    positions: Float32Array.from(mesh.positions, (value) => value * factor),
    indices: mesh.indices,
  }
}

type Triple = readonly [number, number, number]

/** Normal and three corners of every triangle. */
function facets(mesh: Mesh): (readonly [normal: Triple, a: Triple, b: Triple, c: Triple])[] {
  return Array.from({ length: mesh.indices.length / 3 }, (_, i) => {
    const [p, q, r] = [0, 1, 2].map((k): Triple => {
      const from = 3 * (mesh.indices[3 * i + k] ?? 0)
      const [x = 0, y = 0, z = 0] = mesh.positions.subarray(from, from + 3)
      return [x, y, z]
    }) as [Triple, Triple, Triple]
    const u = [q[0] - p[0], q[1] - p[1], q[2] - p[2]] as const
    const v = [r[0] - p[0], r[1] - p[1], r[2] - p[2]] as const
    const normal: Triple = [
      u[1] * v[2] - u[2] * v[1],
      u[2] * v[0] - u[0] * v[2],
      u[0] * v[1] - u[1] * v[0],
    ]
    const length = Math.hypot(...normal)
    const unit: Triple =
      length > 0 ? [normal[0] / length, normal[1] / length, normal[2] / length] : [0, 0, 0]
    return [unit, p, q, r]
  })
}

/** Nine significant digits bring every single-precision value back exactly. */
function exponent(value: number): string {
  return value.toExponential(8)
}

function plain(value: number): string {
  return String(Number(value.toPrecision(9)))
}

function threeMfUnit(unit: LengthUnit): string {
  return unit === 'millimetre'
    ? 'millimeter'
    : unit === 'centimetre'
      ? 'centimeter'
      : unit === 'metre'
        ? 'meter'
        : unit
}

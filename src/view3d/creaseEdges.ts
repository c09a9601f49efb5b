/**
 * The edges a draughtsman would ink: those where two faces meet at more than 28°, and open ones.
 *
 * three's EdgesGeometry does this with a text key an edge and in one go: 20 000 triangles already
 * are a long task. Here an open-addressing table of numbers is filled in slices.
 */
const CREASE_COS = Math.cos((28 * Math.PI) / 180)
const STEP = 4096

/**
 * @param positions x, y, z a vertex.
 * @param indices three vertex numbers a triangle; shared vertices are shared numbers.
 * @returns (through the generator) two vertex numbers an edge.
 */
export function* findCreaseEdges(
  positions: Float32Array,
  indices: Uint32Array,
): Generator<void, Uint32Array> {
  const triangles = Math.floor(indices.length / 3)
  const slots = 2 ** Math.ceil(Math.log2(Math.max(8, triangles * 4)))
  const mask = slots - 1
  /**
   * Per slot: lower and higher vertex number, and the first triangle there + 1; 0 is free, negative
   * is met twice.
   */
  const low = new Uint32Array(slots)
  const high = new Uint32Array(slots)
  const owner = new Int32Array(slots)
  const normals = new Float32Array(triangles * 3)
  const found: number[] = []
  for (let t = 0; t < triangles; t++) {
    writeNormal(positions, indices, t, normals)
    for (let side = 0; side < 3; side++) {
      const a = indices[t * 3 + side] ?? 0
      const b = indices[t * 3 + ((side + 1) % 3)] ?? 0
      if (a === b) continue
      const lo = Math.min(a, b)
      const hi = Math.max(a, b)
      let slot = (Math.imul(lo, 0x9e3779b1) ^ Math.imul(hi, 0x85ebca6b)) >>> 0
      slot = (slot ^ (slot >>> 15)) & mask
      while (owner[slot] !== 0 && (low[slot] !== lo || high[slot] !== hi)) slot = (slot + 1) & mask
      const first = owner[slot] ?? 0
      if (first === 0) {
        low[slot] = lo
        high[slot] = hi
        owner[slot] = t + 1
        continue
      }
      if (cosBetween(normals, Math.abs(first) - 1, t) < CREASE_COS) found.push(lo, hi)
      owner[slot] = -Math.abs(first)
    }
    if (t % STEP === 0) yield
  }
  for (let slot = 0; slot < slots; slot++) {
    if ((owner[slot] ?? 0) > 0) found.push(low[slot] ?? 0, high[slot] ?? 0)
    if (slot % (STEP * 16) === 0) yield
  }
  return Uint32Array.from(found)
}

function writeNormal(p: Float32Array, indices: Uint32Array, t: number, normals: Float32Array) {
  const a = (indices[t * 3] ?? 0) * 3
  const b = (indices[t * 3 + 1] ?? 0) * 3
  const c = (indices[t * 3 + 2] ?? 0) * 3
  const at = (i: number) => p[i] ?? 0
  const ux = at(b) - at(a)
  const uy = at(b + 1) - at(a + 1)
  const uz = at(b + 2) - at(a + 2)
  const vx = at(c) - at(a)
  const vy = at(c + 1) - at(a + 1)
  const vz = at(c + 2) - at(a + 2)
  const nx = uy * vz - uz * vy
  const ny = uz * vx - ux * vz
  const nz = ux * vy - uy * vx
  // A triangle without area keeps a zero normal, see cosBetween.
  const length = Math.hypot(nx, ny, nz) || 1
  normals[t * 3] = nx / length
  normals[t * 3 + 1] = ny / length
  normals[t * 3 + 2] = nz / length
}

/**
 * Cosine between two face normals; 1 where a face has no area, since such a sliver is no crease of
 * the part.
 */
function cosBetween(n: Float32Array, s: number, t: number): number {
  const [sx = 0, sy = 0, sz = 0] = n.subarray(s * 3, s * 3 + 3)
  const [tx = 0, ty = 0, tz = 0] = n.subarray(t * 3, t * 3 + 3)
  if ((sx === 0 && sy === 0 && sz === 0) || (tx === 0 && ty === 0 && tz === 0)) return 1
  return sx * tx + sy * ty + sz * tz
}

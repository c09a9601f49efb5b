/**
 * One to four changes: a byte, a bit, a cut, a run taken out or doubled, a telling byte put in, a
 * digit changed.
 */
export function mutate(sample: Uint8Array, random: () => number): Uint8Array {
  let bytes = sample.slice()
  const below = (limit: number) => Math.floor(random() * limit)
  const telling = [0, 0x0a, 0x20, 0x22, 0x2c, 0x2d, 0x2e, 0x30, 0x39, 0x3c, 0x3e, 0x65, 0x7f, 0xff]
  for (let n = 1 + below(4); n > 0 && bytes.length > 0; n--) {
    const at = below(bytes.length)
    const end = Math.min(bytes.length, at + 1 + below(40))
    const kind = below(15)
    const isDigit = bytes[at]! >= 0x30 && bytes[at]! <= 0x39
    if (kind < 4) bytes[at] = below(256)
    else if (kind < 6) bytes[at]! ^= 1 << below(8)
    else if (kind < 9) bytes[at] = telling[below(telling.length)]!
    else if (kind < 10) bytes = bytes.slice(0, at)
    else if (kind < 11) bytes = join(bytes.subarray(0, at), bytes.subarray(end))
    // Most other changes of a text end in its reader; this one goes on as another mesh.
    else if (kind < 14) bytes[at] = isDigit ? 0x30 + below(10) : bytes[at]!
    else bytes = join(bytes.subarray(0, end), bytes.subarray(at))
  }
  return bytes
}

function join(a: Uint8Array, b: Uint8Array): Uint8Array<ArrayBuffer> {
  const joined = new Uint8Array(a.length + b.length)
  joined.set(a)
  joined.set(b, a.length)
  return joined
}

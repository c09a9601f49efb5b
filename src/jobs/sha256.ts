/** SHA-256 (NIST FIPS 180-4, section 6.2) in plain script, for pages without `crypto.subtle`. */
export function sha256(bytes: Uint8Array): Uint8Array {
  const state = Uint32Array.from(firstPrimes(8), (prime) => fraction(Math.sqrt(prime)))
  const constants = Uint32Array.from(firstPrimes(64), (prime) => fraction(Math.cbrt(prime)))
  const whole = bytes.length - (bytes.length % 64)
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  for (let at = 0; at < whole; at += 64) mix(state, constants, view, at)

  // What is left, a one bit, zeros, and the length in bits as 64 bits, big-endian.
  const rest = bytes.subarray(whole)
  const tail = new Uint8Array(rest.length < 56 ? 64 : 128)
  tail.set(rest)
  tail[rest.length] = 0x80
  const tailView = new DataView(tail.buffer)
  tailView.setBigUint64(tail.length - 8, BigInt(bytes.length) * 8n)
  for (let at = 0; at < tail.length; at += 64) mix(state, constants, tailView, at)

  const digest = new DataView(new ArrayBuffer(32))
  state.forEach((word, i) => digest.setUint32(4 * i, word))
  return new Uint8Array(digest.buffer)
}

function mix(state: Uint32Array, constants: Uint32Array, view: DataView, at: number): void {
  const w = new Uint32Array(64)
  for (let t = 0; t < 16; t++) w[t] = view.getUint32(at + 4 * t)
  const word = (t: number): number => w[t] ?? 0
  for (let t = 16; t < 64; t++) {
    const x = word(t - 15)
    const y = word(t - 2)
    const small0 = turn(x, 7) ^ turn(x, 18) ^ (x >>> 3)
    const small1 = turn(y, 17) ^ turn(y, 19) ^ (y >>> 10)
    w[t] = word(t - 16) + small0 + word(t - 7) + small1
  }
  let [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0] = state
  for (let t = 0; t < 64; t++) {
    const big1 = turn(e, 6) ^ turn(e, 11) ^ turn(e, 25)
    const choice = (e & f) ^ (~e & g)
    const first = (h + big1 + choice + (constants[t] ?? 0) + word(t)) | 0
    const big0 = turn(a, 2) ^ turn(a, 13) ^ turn(a, 22)
    const majority = (a & b) ^ (a & c) ^ (b & c)
    h = g
    g = f
    f = e
    e = (d + first) | 0
    d = c
    c = b
    b = a
    a = (first + big0 + majority) | 0
  }
  ;[a, b, c, d, e, f, g, h].forEach((value, i) => {
    state[i] = (state[i] ?? 0) + value
  })
}

function turn(x: number, by: number): number {
  return (x >>> by) | (x << (32 - by))
}

/** First 32 bits of the fractional part; a double holds enough digits of these roots. */
function fraction(root: number): number {
  return Math.floor((root - Math.floor(root)) * 2 ** 32)
}

function firstPrimes(count: number): number[] {
  const primes: number[] = []
  for (let n = 2; primes.length < count; n++) {
    if (primes.every((prime) => n % prime !== 0)) primes.push(n)
  }
  return primes
}

import { createHash } from 'node:crypto'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { hashBytes } from '../../src/jobs/hash.ts'
import { sha256 } from '../../src/jobs/sha256.ts'

const hex = (bytes: Uint8Array) => Buffer.from(bytes).toString('hex')
const ascii = (text: string) => new TextEncoder().encode(text)

// NIST, Cryptographic Standards and Guidelines, example values for SHA-256 (FIPS 180-4).
test.each([
  ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
  [
    'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq',
    '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
  ],
])('the example “%s” of FIPS 180-4 has its published digest', async (text, digest) => {
  expect(hex(sha256(ascii(text)))).toBe(digest)
  expect(await hashBytes(ascii(text))).toBe(digest)
})

test('our digest agrees with OpenSSL’s at every length around the block border', () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 200 }), (bytes) => {
      expect(hex(sha256(bytes))).toBe(createHash('sha256').update(bytes).digest('hex'))
    }),
    { seed: 11, numRuns: 300 },
  )
})

test('bytes in the middle of a larger buffer are hashed alone', () => {
  const whole = ascii('xxabcyy')
  expect(hex(sha256(whole.subarray(2, 5)))).toBe(hex(sha256(ascii('abc'))))
})

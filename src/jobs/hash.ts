/**
 * SHA-256 in lower-case hex. The browser's own is used where it is offered, which is in secure
 * contexts only (https and localhost); a page served over plain http in a workshop's network gets
 * ours, some ten times slower.
 */
export async function hashBytes(bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  const { subtle } = globalThis.crypto as { readonly subtle?: SubtleCrypto }
  const digest =
    subtle === undefined
      ? (await import('./sha256.ts')).sha256(bytes)
      : new Uint8Array(await subtle.digest('SHA-256', bytes))
  return [...digest].map((byte) => byte.toString(16).padStart(2, '0')).join('')
}

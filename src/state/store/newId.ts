/**
 * An id no other has: 24 hex digits. `crypto.randomUUID` is missing on pages served over plain
 * http; this is not.
 */
export function newId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(12))
  return [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('')
}

/**
 * Buffers in a message that may be handed over instead of copied: 200 MB take 7 ms so, and 2 s
 * copied. Empty ones are left to be copied; they are often shared, and can be handed over only
 * once.
 */
export function buffersIn(message: unknown): ArrayBuffer[] {
  const found = new Set<ArrayBuffer>()
  collect(message, found)
  return [...found]
}

function collect(value: unknown, found: Set<ArrayBuffer>): void {
  if (typeof value !== 'object' || value === null || value instanceof Blob) return
  if (ArrayBuffer.isView(value)) {
    if (value.buffer instanceof ArrayBuffer && value.byteLength > 0) found.add(value.buffer)
    return
  }
  for (const each of Object.values(value)) collect(each, found)
}

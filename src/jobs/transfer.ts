import type { Answer } from './protocol.ts'

/** Buffers of an answer that are handed over instead of copied: 200 MB take 7 ms so, and 2 s copied. */
export function buffersIn(answer: Answer): ArrayBuffer[] {
  if ('positions' in answer) {
    return [answer.positions.buffer, answer.indices.buffer].filter(isArrayBuffer)
  }
  if ('census' in answer) {
    const { layers } = answer.census
    const buffers = Object.values(layers).flatMap((each: unknown) =>
      ArrayBuffer.isView(each) ? [each.buffer] : [],
    )
    return [...new Set(buffers.filter(isArrayBuffer))]
  }
  return []
}

function isArrayBuffer(buffer: ArrayBufferLike): buffer is ArrayBuffer {
  return buffer instanceof ArrayBuffer
}

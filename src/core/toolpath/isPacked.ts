/** Whether a file is packed with gzip, by its first two bytes (RFC 1952, 2.3.1). */
export function isPacked(start: Uint8Array): boolean {
  return start[0] === 0x1f && start[1] === 0x8b
}

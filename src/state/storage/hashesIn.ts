/**
 * Every text in a frame that could name a mesh, however damaged or new the frame is: none of its
 * meshes may go.
 */
export function hashesIn(frame: unknown): readonly string[] {
  return JSON.stringify(frame).match(/\b[0-9a-f]{64}\b/g) ?? []
}

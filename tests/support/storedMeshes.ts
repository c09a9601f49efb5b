import type { Page } from 'playwright'

/**
 * Looks into the app's database, past the app: every part of every frame must have its mesh, with
 * the bytes its hash promises, and every frame its line in the list. Gives what is not so, in
 * words.
 */
export function brokenMeshes(page: Page): Promise<string[]> {
  return page.evaluate(async () => {
    interface StoredFrame {
      readonly id: string
      readonly parts: readonly { readonly name: string; readonly meshHash: string }[]
    }
    const answer = <T>(request: IDBRequest<T>) =>
      new Promise<T>((resolve, reject) => {
        request.addEventListener('success', () => resolve(request.result))
        request.addEventListener('error', () => reject(new Error(String(request.error))))
      })
    const db = await answer(indexedDB.open('preweigh'))
    const found: string[] = []
    try {
      const tx = db.transaction(['frames', 'projects', 'meshes', 'settings'])
      const frames = (await answer(tx.objectStore('frames').getAll())) as StoredFrame[]
      const listed = await answer(tx.objectStore('projects').getAllKeys())
      const current: unknown = await answer(tx.objectStore('settings').get('current'))
      const meshes = new Map<string, Blob>()
      const keys = (await answer(tx.objectStore('meshes').getAllKeys())) as string[]
      const values = (await answer(tx.objectStore('meshes').getAll())) as { blob: Blob }[]
      keys.forEach((key, i) => meshes.set(key, values[i]?.blob ?? new Blob()))
      if (frames.length !== listed.length)
        found.push(`${frames.length} frames, ${listed.length} listed`)
      if (frames.length > 0 && !frames.some((frame) => frame.id === current)) {
        found.push(`the one to open, ${String(current)}, is not there`)
      }
      for (const [hash, blob] of meshes) {
        const digest = await crypto.subtle.digest('SHA-256', await blob.arrayBuffer())
        const hex = [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, '0'))
        if (hex.join('') !== hash) found.push(`the bytes of mesh ${hash} are not its own`)
      }
      for (const frame of frames) {
        for (const part of frame.parts) {
          if (!meshes.has(part.meshHash)) found.push(`${frame.id}: ${part.name} has no mesh`)
        }
      }
    } finally {
      db.close()
    }
    return found
  })
}

import type { WebGLRenderer } from 'three'

/**
 * Tells whether the graphics card has caught up. Never waits itself: waiting would stop the page.
 */
export interface Pace {
  /** Call after handing over work. */
  mark(): void
  /** True when all marked work is done. */
  free(): boolean
  /** Call when the context is lost: its marks will never be reached. */
  forget(): void
}

export function createPace(renderer: WebGLRenderer): Pace {
  const gl = renderer.getContext() as WebGL2RenderingContext
  let fence: WebGLSync | null = null
  return {
    mark() {
      if (fence !== null) gl.deleteSync(fence)
      fence = gl.fenceSync(gl.SYNC_GPU_COMMANDS_COMPLETE, 0)
      gl.flush()
    },
    free() {
      if (fence === null) return true
      if (gl.getSyncParameter(fence, gl.SYNC_STATUS) !== gl.SIGNALED) return false
      gl.deleteSync(fence)
      fence = null
      return true
    },
    forget() {
      fence = null
    },
  }
}

import { userEvent } from 'vitest/browser'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { placeMesh } from '../../src/core/mesh/pose.ts'
import type { Mesh } from '../../src/core/model/mesh.ts'
import { mountView } from '../../src/view3d/mountView.ts'
import type { ViewHandle, ViewOptions } from '../../src/view3d/types.ts'

const OPTIONS: ViewOptions = { theme: 'light', partName: 'front arm', locale: 'en-GB' }

let container: HTMLElement
let view: ViewHandle

beforeEach(() => {
  container = document.createElement('div')
  container.style.cssText = 'width: 480px; height: 320px'
  document.body.append(container)
})

afterEach(() => {
  view.dispose()
  container.remove()
  vi.restoreAllMocks()
})

/** A box with one corner at the origin. */
function box(x: number, y: number, z: number): Mesh {
  // prettier-ignore
  const positions = new Float64Array([
    0, 0, 0,  x, 0, 0,  x, y, 0,  0, y, 0,  0, 0, z,  x, 0, z,  x, y, z,  0, y, z,
  ])
  // prettier-ignore
  const indices = new Uint32Array([
    0, 2, 1,  0, 3, 2,  4, 5, 6,  4, 6, 7,  0, 1, 5,  0, 5, 4,
    1, 2, 6,  1, 6, 5,  2, 3, 7,  2, 7, 6,  3, 0, 4,  3, 4, 7,
  ])
  return { positions, indices }
}

/** A ball of about 2 · rings² · 2 triangles. */
function ball(radius: number, rings: number): Mesh {
  const around = rings * 2
  const positions = new Float64Array((rings + 1) * around * 3)
  const indices = new Uint32Array(rings * around * 6)
  let p = 0
  for (let r = 0; r <= rings; r++) {
    const polar = (Math.PI * r) / rings
    for (let a = 0; a < around; a++) {
      const turn = (2 * Math.PI * a) / around
      positions[p++] = radius * Math.sin(polar) * Math.cos(turn)
      positions[p++] = radius * Math.sin(polar) * Math.sin(turn)
      positions[p++] = radius + radius * Math.cos(polar)
    }
  }
  let i = 0
  for (let r = 0; r < rings; r++) {
    for (let a = 0; a < around; a++) {
      const here = r * around + a
      const next = r * around + ((a + 1) % around)
      indices.set([here, here + around, next, next, here + around, next + around], i)
      i += 6
    }
  }
  return { positions, indices }
}

function canvasOf(): HTMLCanvasElement {
  const canvas = container.querySelector('canvas')
  if (canvas === null) throw new Error('the view has no canvas')
  return canvas
}

/** The pixels of the next drawn frame: they can be read only until the browser shows it. */
async function pixels(): Promise<Uint8ClampedArray> {
  const canvas = canvasOf()
  const copy = new OffscreenCanvas(canvas.width, canvas.height)
  const pen = copy.getContext('2d')
  if (pen === null) throw new Error('no 2D context')
  view.setTheme(container.querySelector('figure')?.dataset['theme'] === 'dark' ? 'dark' : 'light')
  for (let frame = 0; frame < 600; frame++) {
    await new Promise((resolve) => requestAnimationFrame(resolve))
    pen.drawImage(canvas, 0, 0)
    // A buffer nothing was drawn on in this frame reads as black.
    if (Math.max(...pen.getImageData(0, 0, 1, 1).data.slice(0, 3)) > 0) break
  }
  return pen.getImageData(0, 0, copy.width, copy.height).data
}

/** Waits until the browser has shown so many pictures. */
async function frames(count: number): Promise<void> {
  for (let i = 0; i < count; i++) await new Promise((resolve) => requestAnimationFrame(resolve))
}

/** Share of pixels that are blue-grey, as only the part is. */
function partShare(rgba: Uint8ClampedArray): number {
  let count = 0
  for (let at = 0; at < rgba.length; at += 4) {
    if ((rgba[at + 2] ?? 0) - (rgba[at] ?? 0) > 12) count++
  }
  return count / (rgba.length / 4)
}

function countDifferent(a: Uint8ClampedArray, b: Uint8ClampedArray): number {
  expect(a).toHaveLength(b.length)
  let count = 0
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) count++
  return count
}

function caption(): string {
  return container.querySelector('figcaption')?.textContent ?? ''
}

function dimensions(): string[] {
  return [...container.querySelectorAll<HTMLElement>('.view3d-dimension')]
    .filter((label) => !label.hidden)
    .map((label) => label.textContent)
}

describe('the 3D view', { timeout: 30_000 }, () => {
  it('shows an empty bed, then the part with its size in words', async () => {
    view = mountView(container, OPTIONS)
    expect(view.supported).toBe(true)
    expect(partShare(await pixels())).toBe(0)
    expect(caption()).toBe('')

    expect(await view.setMesh(box(118.44, 30, 6))).toBe(true)
    expect(partShare(await pixels())).toBeGreaterThan(0.1)
    expect(caption()).toBe('118.4 × 30 × 6 mm, grid 10 mm')
    expect(dimensions()).toEqual(['118.4', '30'])
    expect(canvasOf().getAttribute('aria-label')).toContain('front arm, 118.4 × 30 × 6 mm')

    expect(await view.setMesh(null)).toBe(true)
    expect(partShare(await pixels())).toBe(0)
    expect(caption()).toBe('')
  })

  it('writes figures the way of the locale', async () => {
    view = mountView(container, { ...OPTIONS, locale: 'de-DE' })
    await view.setMesh(box(1118.44, 30.5, 0.62))
    expect(caption()).toBe('1.118,4 × 30,5 × 0,62 mm, grid 100 mm')
  })

  it('changes the ground with the theme, and keeps the part', async () => {
    view = mountView(container, OPTIONS)
    await view.setMesh(box(40, 30, 20))
    const light = await pixels()
    view.setTheme('dark')
    const dark = await pixels()
    expect(Array.from(light.subarray(0, 3))).toEqual([250, 251, 249])
    expect(Array.from(dark.subarray(0, 3))).toEqual([22, 27, 24])
    expect(partShare(dark)).toBeCloseTo(partShare(light), 1)
  })

  it('draws a scale bar of the true length', async () => {
    view = mountView(container, OPTIONS)
    await view.setMesh(box(100, 100, 10))
    view.show('top')
    // In the top view the part is as wide as its own dimension says; compare the bar with the
    // picture.
    await vi.waitFor(() => expect(dimensions()).toEqual(['100', '100']))
    const barPx = () => container.querySelector('.view3d-bar')?.getBoundingClientRect().width ?? 0
    // The view glides there; where it has arrived, both agree.
    await vi.waitFor(
      async () => {
        const rgba = await pixels()
        const { width, height } = canvasOf()
        const row = Math.round(height * 0.4)
        let part = 0
        for (let x = 0; x < width; x++) {
          const at = (row * width + x) * 4
          if ((rgba[at + 2] ?? 0) - (rgba[at] ?? 0) > 12) part++
        }
        const text = container.querySelector('.view3d-bar-text')?.textContent ?? ''
        const cssPerPixel = 480 / width
        expect((part * cssPerPixel) / 100).toBeCloseTo(barPx() / Number.parseFloat(text), 1)
      },
      { timeout: 20_000 },
    )
    expect(barPx()).toBeGreaterThan(30)
    expect(barPx()).toBeLessThanOrEqual(110)
  })

  it.each([[[90, 0, 0]], [[0, 90, 0]], [[20, -35, 70]]] as const)(
    'previews the pose %j as the geometry core places it',
    async (rotateDeg) => {
      const drawn = box(60, 25, 8)
      view = mountView(container, OPTIONS)
      await view.setMesh(placeMesh(drawn, 1, { rotateDeg: [0, 0, 0] }))
      view.setPose({ rotateDeg })
      const previewed = caption()
      await view.setMesh(placeMesh(drawn, 1, { rotateDeg }), { rotateDeg })
      expect(caption()).toBe(previewed)
      expect(previewed).not.toBe('60 × 25 × 8 mm, grid 5 mm')
      // And back again, from a mesh that came turned.
      view.setPose({ rotateDeg: [0, 0, 0] })
      expect(caption()).toBe('60 × 25 × 8 mm, grid 5 mm')
    },
  )

  it('keeps a pose chosen while the mesh is still being read', async () => {
    view = mountView(container, OPTIONS)
    const { positions, indices } = ball(20, 300)
    const egg = {
      positions: positions.map((value, i) => (i % 3 === 2 ? 2 * value : value)),
      indices,
    }
    const reading = view.setMesh(egg, { rotateDeg: [0, 0, 0] })
    view.setPose({ rotateDeg: [90, 0, 0] })
    expect(await reading).toBe(true)
    expect(caption()).toContain('40 × 80 × 40 mm')
  })

  it('shows another side from above and from the front', async () => {
    view = mountView(container, OPTIONS)
    await view.setMesh(box(60, 25, 12))
    view.show('top')
    await vi.waitFor(() => expect(dimensions()).toEqual(['60', '25']), { timeout: 5000 })
    view.show('front')
    await vi.waitFor(() => expect(dimensions()).toEqual(['60', '12']), { timeout: 5000 })
    view.show('side')
    await vi.waitFor(() => expect(dimensions()).toEqual(['25', '12']), { timeout: 5000 })
  })

  it('jumps rather than glides for people who prefer reduced motion', async () => {
    view = mountView(container, OPTIONS)
    await view.setMesh(box(60, 25, 12))
    const real = window.matchMedia.bind(window)
    vi.spyOn(window, 'matchMedia').mockImplementation((query) =>
      query.includes('prefers-reduced-motion')
        ? Object.defineProperty(real(query), 'matches', { value: true })
        : real(query),
    )
    await pixels()
    view.show('front')
    await vi.waitFor(() => expect(dimensions()).toEqual(['60', '12']), { interval: 1 })
    const drawn = vi.spyOn(WebGL2RenderingContext.prototype, 'drawElements')
    await frames(12)
    expect(drawn).not.toHaveBeenCalled()
  })

  it('turns by arrow keys, zooms by plus and minus, and goes back by 0', async () => {
    view = mountView(container, OPTIONS)
    await view.setMesh(box(60, 25, 12))
    await pixels()
    const canvas = canvasOf()
    const press = (key: string) =>
      canvas.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }))
    const barBefore = container.querySelector('.view3d-bar')?.getBoundingClientRect().width ?? 0
    const mmBefore = container.querySelector('.view3d-bar-text')?.textContent
    const scale = () =>
      (container.querySelector('.view3d-bar')?.getBoundingClientRect().width ?? 0) /
      Number.parseFloat(container.querySelector('.view3d-bar-text')?.textContent ?? '')
    const before = scale()
    press('+')
    await vi.waitFor(() => expect(scale() / before).toBeCloseTo(1.2, 1))
    press('-')
    await vi.waitFor(() => expect(scale() / before).toBeCloseTo(1, 1))

    const first = await pixels()
    press('ArrowLeft')
    expect(countDifferent(await pixels(), first)).toBeGreaterThan(1000)
    expect(press('x')).toBe(true)
    expect(press('ArrowUp')).toBe(false)
    press('0')
    const isBack = async () => expect(countDifferent(await pixels(), first)).toBe(0)
    await vi.waitFor(isBack, { timeout: 20_000 })
    expect(container.querySelector('.view3d-bar')?.getBoundingClientRect().width).toBeCloseTo(
      barBefore,
      0,
    )
    expect(container.querySelector('.view3d-bar-text')?.textContent).toBe(mmBefore)
  })

  it('leaves the wheel to the page until it has been clicked', async () => {
    view = mountView(container, OPTIONS)
    await view.setMesh(box(60, 25, 12))
    const roll = (ctrlKey = false) =>
      canvasOf().dispatchEvent(
        new WheelEvent('wheel', { deltaY: 100, ctrlKey, bubbles: true, cancelable: true }),
      )
    expect(roll()).toBe(true)
    // A pinch on a trackpad arrives as ctrl and wheel.
    expect(roll(true)).toBe(false)
    await userEvent.click(canvasOf())
    expect(document.activeElement).toBe(canvasOf())
    expect(roll()).toBe(false)
  })

  it('draws nothing while nothing changes', async () => {
    view = mountView(container, OPTIONS)
    await view.setMesh(box(60, 25, 12))
    await pixels()
    const drawn = vi.spyOn(WebGL2RenderingContext.prototype, 'drawElements')
    await frames(20)
    expect(drawn).not.toHaveBeenCalled()
    view.setTheme('dark')
    await vi.waitFor(() => expect(drawn).toHaveBeenCalled())
  })

  it('takes the newer of two meshes, whichever is read sooner', async () => {
    view = mountView(container, OPTIONS)
    const large = view.setMesh(ball(50, 500))
    const small = view.setMesh(box(60, 25, 12))
    expect(await Promise.all([large, small])).toEqual([false, true])
    expect(caption()).toBe('60 × 25 × 12 mm, grid 5 mm')
  })

  it('shows a mesh far from the origin as crisply as one at it', async () => {
    view = mountView(container, OPTIONS)
    const near = box(60, 25, 12)
    await view.setMesh(near)
    const expected = await pixels()
    const positions = near.positions.map((value) => value + 1e6)
    await view.setMesh({ positions, indices: near.indices })
    expect(countDifferent(await pixels(), expected)).toBe(0)
  })

  it('shows a mesh of more than one piece whole', async () => {
    view = mountView(container, OPTIONS)
    await view.setMesh(ball(20, 60))
    const coarse = partShare(await pixels())
    const dense = ball(20, 470)
    expect(dense.indices.length / 3).toBeGreaterThan(800_000)
    expect(await view.setMesh(dense)).toBe(true)
    expect(partShare(await pixels()) / coarse).toBeCloseTo(1, 1)
  })

  it('leaves no canvas and no graphics context behind', async () => {
    view = mountView(container, OPTIONS)
    await view.setMesh(box(60, 25, 12))
    const context = canvasOf().getContext('webgl2')
    expect(context?.isContextLost()).toBe(false)
    view.dispose()
    expect(container.childElementCount).toBe(0)
    expect(document.querySelector('canvas')).toBeNull()
    await vi.waitFor(() => expect(context?.isContextLost()).toBe(true))
    view.dispose()
    expect(await view.setMesh(box(1, 1, 1))).toBe(false)
    view.setPose({ rotateDeg: [0, 0, 0] })
    view.show('top')
    view.setTheme('dark')
  })

  it('can be mounted again and again, more often than a browser keeps contexts', async () => {
    const onError = vi.fn<NonNullable<ViewOptions['onError']>>()
    const shares: number[] = []
    for (let k = 0; k < 30; k++) {
      view = mountView(container, { ...OPTIONS, onError })
      expect(view.supported).toBe(true)
      if (k % 10 === 9) {
        await view.setMesh(box(60, 25, 12))
        shares.push(partShare(await pixels()))
      }
      view.dispose()
    }
    expect(shares).toHaveLength(3)
    expect(Math.min(...shares)).toBeGreaterThan(0.1)
    expect(onError).not.toHaveBeenCalled()
    expect(document.querySelectorAll('canvas')).toHaveLength(0)
  }, 60_000)

  it('ends the former view when another is mounted', () => {
    view = mountView(container, OPTIONS)
    const other = document.createElement('div')
    container.append(other)
    view = mountView(other, OPTIONS)
    expect(document.querySelectorAll('canvas')).toHaveLength(1)
    expect(other.querySelectorAll('canvas')).toHaveLength(1)
  })

  it('tells the page when the graphics are lost and when they are back', async () => {
    const onError = vi.fn<NonNullable<ViewOptions['onError']>>()
    view = mountView(container, { ...OPTIONS, onError })
    await view.setMesh(box(60, 25, 12))
    const shown = partShare(await pixels())
    const loss = canvasOf().getContext('webgl2')?.getExtension('WEBGL_lose_context')
    loss?.loseContext()
    await vi.waitFor(() =>
      expect(onError).toHaveBeenCalledWith(expect.objectContaining({ code: 'graphics-lost' })),
    )
    loss?.restoreContext()
    await vi.waitFor(() => expect(onError).toHaveBeenLastCalledWith(null))
    expect(partShare(await pixels())).toBeCloseTo(shown, 3)
  })

  it('says so where the browser has no 3D graphics, and touches nothing', async () => {
    vi.spyOn(HTMLCanvasElement.prototype, 'getContext').mockReturnValue(null)
    const onError = vi.fn<NonNullable<ViewOptions['onError']>>()
    view = mountView(container, { ...OPTIONS, onError })
    expect(view.supported).toBe(false)
    expect(onError).toHaveBeenCalledWith(expect.objectContaining({ code: 'no-graphics' }))
    expect(container.childElementCount).toBe(0)
    expect(await view.setMesh(box(1, 1, 1))).toBe(false)
  })

  it('follows its container in size', async () => {
    view = mountView(container, OPTIONS)
    await view.setMesh(box(60, 25, 12))
    const share = partShare(await pixels())
    container.style.width = '960px'
    container.style.height = '640px'
    await vi.waitFor(() => expect(canvasOf().width).toBe(960 * Math.min(devicePixelRatio, 2)))
    expect(partShare(await pixels())).toBeCloseTo(share, 1)
  })
})

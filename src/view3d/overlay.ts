import type { OrthographicCamera, Vector3 } from 'three'
import { formatAll } from '../core/words/format.ts'
import { lengthUnit, shownAs, shownOf } from '../core/words/shownUnits.ts'
import { roundStep } from './bed.ts'
import type { Dimension } from './dimensions.ts'
import type { ViewTheme } from './types.ts'
// oxlint-disable-next-line import/no-unassigned-import -- a style sheet has nothing to assign
import './view3d.css'

/** The scale bar is the longest round length that stays below this. */
const SCALE_BAR_PX = 110

/**
 * The elements of a view. Everything in words and figures is text of the page, sharp at any size
 * and readable aloud.
 */
export interface Overlay {
  readonly root: HTMLElement
  readonly canvas: HTMLCanvasElement
  setTheme(theme: ViewTheme): void
  setPartName(name: string): void
  /** Bounding size in mm and the grid's cell; null for an empty bed. */
  setSize(size: Vector3 | null, cellMm: number): void
  placeDimensions(dimensions: readonly Dimension[], eye: OrthographicCamera): void
  placeScale(pxPerMm: number): void
  /** Rings a point; null for none. */
  placeRing(at: Vector3 | null, eye: OrthographicCamera): void
}

export function createOverlay(locale: string | undefined): Overlay {
  const root = make('figure', 'view3d')
  const canvas = make('canvas', 'view3d-canvas')
  const marks = make('div', 'view3d-marks')
  const caption = make('figcaption', 'view3d-caption')
  const scale = make('div', 'view3d-scale')
  const bar = make('span', 'view3d-bar')
  const barText = make('span', 'view3d-bar-text')
  scale.append(barText, bar)
  const ring = make('span', 'view3d-ring')
  ring.hidden = true
  marks.append(scale, ring)
  root.append(canvas, marks, caption)
  marks.setAttribute('aria-hidden', 'true')
  canvas.tabIndex = 0
  canvas.setAttribute('role', 'application')
  canvas.setAttribute('aria-roledescription', '3D view')
  const labels = new Map(
    (['x', 'y', 'z'] as const).map((axis) => {
      const label = make('span', 'view3d-dimension')
      label.hidden = true
      marks.append(label)
      return [axis, label]
    }),
  )

  let name = ''
  let size: Vector3 | null = null
  const describe = () => {
    const sizeText = size === null ? '' : `, ${sizeWords(size, locale)}`
    canvas.setAttribute(
      'aria-label',
      `3D view of ${name}${sizeText}. Arrow keys turn it, plus and minus zoom, 0 goes back.`,
    )
  }

  return {
    root,
    canvas,
    setTheme(theme) {
      root.dataset['theme'] = theme
    },
    setPartName(next) {
      name = next
      describe()
    },
    setSize(next, cellMm) {
      size = next
      caption.textContent =
        next === null
          ? ''
          : `${sizeWords(next, locale)}, grid ${lengthWords(cellMm, locale)} ${lengthUnit()}`
      scale.hidden = next === null
      describe()
    },
    placeDimensions(dimensions, eye) {
      for (const label of labels.values()) label.hidden = true
      for (const { axis, lengthMm, at } of dimensions) {
        const label = labels.get(axis)
        if (label === undefined) continue
        const seen = at.clone().project(eye)
        const x = ((seen.x + 1) / 2) * root.clientWidth
        const y = ((1 - seen.y) / 2) * root.clientHeight
        label.textContent = lengthWords(lengthMm, locale)
        label.style.transform = `translate(${x.toFixed(1)}px, ${y.toFixed(1)}px) translate(-50%, -50%)`
        label.hidden = false
      }
    },
    placeRing(at, eye) {
      ring.hidden = at === null
      if (at === null) return
      const seen = at.clone().project(eye)
      const x = ((seen.x + 1) / 2) * root.clientWidth
      const y = ((1 - seen.y) / 2) * root.clientHeight
      ring.style.transform = `translate(${x.toFixed(1)}px, ${y.toFixed(1)}px) translate(-50%, -50%)`
    },
    placeScale(pxPerMm) {
      const { per } = shownAs('mm')
      let length = roundStep(SCALE_BAR_PX / pxPerMm / per)
      if (length * per * pxPerMm > SCALE_BAR_PX) length = roundStep(length / 2.2)
      const lengthMm = length * per
      bar.style.width = `${(lengthMm * pxPerMm).toFixed(1)}px`
      barText.textContent = `${lengthWords(lengthMm, locale)} ${lengthUnit()}`
    },
  }
}

/** "118.4 × 32 × 6 mm". */
function sizeWords(size: Vector3, locale: string | undefined): string {
  return `${[size.x, size.y, size.z].map((mm) => lengthWords(mm, locale)).join(' × ')} ${lengthUnit()}`
}

/**
 * In the unit that is shown: tenths of a mm, as a builder reads them off a calliper; hundredths
 * below 1 mm.
 */
function lengthWords(mm: number, locale: string | undefined): string {
  const as = shownAs('mm')
  return formatAll(shownOf(mm, as), (mm < 1 ? 2 : 1) + as.finer, locale)
}

function make<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  className: string,
): HTMLElementTagNameMap[K] {
  const element = document.createElement(tag)
  element.className = className
  return element
}

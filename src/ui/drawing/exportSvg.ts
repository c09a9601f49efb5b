/** What the page's style sheets say of a drawing, which a file has to say itself. */
const STYLES = [
  'fill',
  'fill-rule',
  'stroke',
  'stroke-width',
  'stroke-dasharray',
  'stroke-linecap',
  'stroke-linejoin',
  'opacity',
  'font-size',
  'font-weight',
  'text-anchor',
  'dominant-baseline',
  'paint-order',
]

/** A picture is so many times as fine as the screen. */
const PNG_SCALE = 2

/** A drawing on the page as the text of an SVG file that looks the same without the page. */
export function svgOf(svg: SVGSVGElement): string {
  const copy = svg.cloneNode(true) as SVGSVGElement
  const [, , width = svg.clientWidth, height = svg.clientHeight] =
    svg.getAttribute('viewBox')?.split(' ').map(Number) ?? []
  for (const name of ['class', 'role', 'tabindex', 'style']) copy.removeAttribute(name)
  for (const name of copy.getAttributeNames())
    if (name.startsWith('aria-')) copy.removeAttribute(name)
  copy.setAttribute('xmlns', 'http://www.w3.org/2000/svg')
  copy.setAttribute('width', String(width))
  copy.setAttribute('height', String(height))
  copy.setAttribute('font-family', 'sans-serif')
  const shown = [...svg.querySelectorAll('*')]
  const copied = [...copy.querySelectorAll('*')]
  shown.forEach((element, i) => {
    const own = copied[i]
    if (own === undefined) return
    const style = getComputedStyle(element)
    if (style.display === 'none') {
      own.setAttribute('display', 'none')
      return
    }
    for (const name of STYLES) {
      const value = style.getPropertyValue(name)
      if (value !== '') own.setAttribute(name, value.replace(/px$/, ''))
    }
    own.removeAttribute('class')
  })
  const ground = document.createElementNS('http://www.w3.org/2000/svg', 'rect')
  ground.setAttribute('width', String(width))
  ground.setAttribute('height', String(height))
  ground.setAttribute('fill', sheetColour(svg))
  copy.prepend(ground)
  return `<?xml version="1.0" encoding="UTF-8"?>\n${new XMLSerializer().serializeToString(copy)}\n`
}

/**
 * The colour of the sheet in the present theme, worked out by the browser in the drawing itself: a
 * word beside it would be in the reader's own ink where colours are forced.
 */
function sheetColour(svg: SVGSVGElement): string {
  const probe = document.createElementNS('http://www.w3.org/2000/svg', 'rect')
  probe.style.fill = 'var(--paper-raised)'
  svg.append(probe)
  const { fill } = getComputedStyle(probe)
  probe.remove()
  return fill
}

/** The text of an SVG file as a picture. */
export async function pngOf(svg: string): Promise<Blob> {
  const image = new Image()
  const address = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }))
  try {
    image.src = address
    await image.decode()
    const canvas = document.createElement('canvas')
    canvas.width = image.naturalWidth * PNG_SCALE
    canvas.height = image.naturalHeight * PNG_SCALE
    canvas.getContext('2d')?.drawImage(image, 0, 0, canvas.width, canvas.height)
    return await new Promise<Blob>((resolve, reject) => {
      canvas.toBlob((blob) => {
        if (blob === null) reject(new Error('The picture could not be made.'))
        else resolve(blob)
      }, 'image/png')
    })
  } finally {
    URL.revokeObjectURL(address)
  }
}

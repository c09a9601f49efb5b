import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'

export interface PdfPage {
  /** Points, 1/72 inch. */
  readonly widthPt: number
  readonly heightPt: number
  /** Everything written on it, in the order it was drawn. */
  readonly text: string
  /** How many pictures of pixels it holds. */
  readonly images: number
  /** Height of the smallest letters, points. */
  readonly leastPt: number
}

/** The pages of a PDF, read by another program than the one that wrote it. */
export async function readPdf(bytes: Uint8Array): Promise<readonly PdfPage[]> {
  const { OPS } = await import('pdfjs-dist/legacy/build/pdf.mjs')
  const task = getDocument({ data: Uint8Array.from(bytes), verbosity: 0 })
  const file = await task.promise
  const pages: PdfPage[] = []
  for (let number = 1; number <= file.numPages; number++) {
    const page = await file.getPage(number)
    const [left = 0, bottom = 0, right = 0, top = 0] = page.view
    const { items } = await page.getTextContent()
    const pieces = items.filter((item) => 'str' in item && item.str.trim() !== '')
    const { fnArray } = await page.getOperatorList()
    pages.push({
      widthPt: right - left,
      heightPt: top - bottom,
      text: pieces.map((item) => ('str' in item ? item.str : '')).join(' '),
      images: fnArray.filter((op) => op === OPS.paintImageXObject).length,
      leastPt: Math.min(...pieces.map((item) => ('height' in item ? item.height : Infinity))),
    })
  }
  await task.destroy()
  return pages
}

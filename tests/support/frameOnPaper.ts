import type { Page } from 'playwright'

/** What a line of the list says, as written. */
export interface PaperRow {
  readonly name: string
  readonly below: string
  readonly quantity: string
  readonly grams: string
  readonly gramsRange: string
  readonly cost: string
  readonly hours: string
  /** Length of the line's bar, 0–1 of the heaviest. */
  readonly share: number
}

/**
 * Every place of the page that says something of the whole frame or of a part in it, as written.
 */
export interface FrameOnPaper {
  /** By what the figure is: `grams`, `all-up`, `pieces`, `cost`, `time`, `carbon`, `limit`. */
  readonly head: Readonly<Record<string, string>>
  /** What stands behind a sheet's name in the line of sheets, by address. */
  readonly links: Readonly<Record<string, string>>
  readonly spoken: string
  /** Where the needle stands on the ruler, g. */
  readonly needleG: number
  readonly frameWords: string
  readonly rows: readonly PaperRow[]
  readonly foot: PaperRow
  /** Names of the numbers in the drawing, which say its grams. */
  readonly numbers: readonly string[]
  /** Of each part's page: title block and facts. */
  readonly parts: readonly {
    readonly title: string
    readonly facts: Readonly<Record<string, string>>
    /** What one piece is laid as, without what is taken off again. */
    readonly laid: readonly string[]
  }[]
  readonly carbonMass: string
  readonly carbonCost: string
  /** First column of the table of sides, by line. */
  readonly sides: Readonly<Record<string, string>>
  readonly standing: string
  /** Every fact of the Aircraft sheet, by its words. */
  readonly facts: Readonly<Record<string, string>>
  /** Bars of the Mass section, by group. */
  readonly groups: Readonly<Record<string, string>>
  /** Standings to the mass lines, by name. */
  readonly massLines: Readonly<Record<string, string>>
  readonly bench: readonly string[]
  readonly spares: readonly string[]
  /** Sentences that say what is missing, of every sheet. */
  readonly cautions: readonly string[]
}

/** Draws the whole set, reads every place of it at once, and goes back to the Frame sheet. */
export async function readFrameOnPaper(page: Page): Promise<FrameOnPaper> {
  await goTo(page, '#/paper')
  // Each by its place: a look for words reads all of some twenty sheets, and again until it finds
  // them.
  await page.locator('.paper-bar [role=status]', { hasText: 'The whole set:' }).waitFor()
  const looking = page.locator('.paper-set .hint[role=status]', { hasText: 'Looking at' })
  await looking.first().waitFor({ state: 'detached' })
  await page.locator('.sides').first().waitFor()
  // The total is said once it stands for a moment.
  const head = (await page.locator('.total-grams .total-figure').innerText()).trim()
  const spoken = page.locator('.totals p[role=status]', { hasText: `${head}\u00a0g printed` })
  await spoken.waitFor({ state: 'attached' })
  const read = await page.evaluate(readPlaces)
  await goTo(page, '#/frame')
  await page.locator('.paper-set').waitFor({ state: 'detached' })
  await page.locator('tr.row').first().waitFor()
  return read
}

async function goTo(page: Page, hash: string): Promise<void> {
  await page.evaluate((to) => {
    location.hash = to
  }, hash)
}

/** Runs in the page. */
function readPlaces(): FrameOnPaper {
  const words = (within: ParentNode | null, selector: string): string =>
    (within?.querySelector<HTMLElement>(selector)?.innerText ?? '').replaceAll(/\s+/g, ' ').trim()
  const all = (within: ParentNode | null, selector: string): HTMLElement[] => [
    ...(within?.querySelectorAll<HTMLElement>(selector) ?? []),
  ]
  const facts = (within: ParentNode | null): Record<string, string> =>
    Object.fromEntries(
      all(within, 'dl > div').map((fact) => [words(fact, 'dt'), words(fact, 'dd')]),
    )
  const pairs = (places: HTMLElement[], name: string, figure: string): Record<string, string> =>
    Object.fromEntries(places.map((place) => [words(place, name), words(place, figure)]))
  const row = (line: HTMLElement): PaperRow => ({
    name: words(line, '.row-name, .row-name-total'),
    below: words(line, '.row-below'),
    quantity: words(line, '.cell-pieces .figure'),
    grams: words(line, '.cell-grams .figure'),
    gramsRange: words(line, '.cell-grams .range'),
    cost: words(line, '.cell-cost .figure'),
    hours: words(line, '.cell-hours .figure'),
    share: Number.parseFloat(line.querySelector<HTMLElement>('.row-weight')?.style.scale ?? '0'),
  })
  const ruler = document.querySelector('.ruler svg')
  // The first number and the last lean inwards; those between stand on their ticks.
  const marks = [...(ruler?.querySelectorAll('.ruler-number') ?? [])]
    .filter((mark) => mark.getAttribute('text-anchor') === 'middle')
    .map((mark) => [Number(mark.getAttribute('x')), Number(mark.textContent)] as const)
  const [x0, g0] = marks[0] ?? [0, 0]
  const [x1, g1] = marks.at(-1) ?? [1, 0]
  const needle = ruler?.querySelector('.ruler-needle')?.getAttribute('d') ?? ''
  const needleX = Number(/^M([\d.]+)/.exec(needle)?.[1])
  const set = document.querySelector('.paper-set')
  const aircraft = document.querySelector('.paper-set .aircraft-sheet')
  return {
    head: Object.fromEntries(
      all(document, '.totals .total').map((total) => [
        /total-(?!lead)([\w-]+)/.exec(total.className)?.[1] ?? '',
        `${words(total, 'dd')} ${total.title}`,
      ]),
    ),
    links: Object.fromEntries(
      all(document, '.sheet-links a').map((link) => [
        link.getAttribute('href') ?? '',
        words(link, 'small'),
      ]),
    ),
    spoken: words(document, '.totals p[role=status]'),
    needleG: g0 + ((needleX - x0) / (x1 - x0)) * (g1 - g0),
    frameWords: (set?.querySelector<HTMLElement>('.frame-sheet')?.innerText ?? '').slice(0, 300),
    rows: all(set, '.frame-sheet tr.row').map(row),
    foot: row(set?.querySelector<HTMLElement>('.row-total') ?? document.body),
    numbers: all(set, '.frame-sheet .item-number').map(
      (button) => button.getAttribute('aria-label') ?? '',
    ),
    parts: all(set, '.part-sheet').map((sheet) => ({
      title: words(sheet, '.title-block .block-below'),
      facts: facts(sheet),
      laid: all(sheet, '.breakdown li')
        .filter(({ innerText }) => !innerText.includes('removed'))
        .map((line) => words(line, 'b')),
    })),
    carbonMass: words(set, '.carbon-figures .bar-pair:first-child'),
    carbonCost: words(set, '.carbon-figures .bar-pair:nth-child(2)'),
    sides: pairs(all(set?.querySelector('.sides') ?? null, 'tbody tr'), 'th', 'td'),
    standing: words(aircraft, '.mass-standing'),
    facts: facts(aircraft),
    groups: pairs(all(aircraft, '.craft-bars li'), 'span', '.figures'),
    massLines: pairs(all(aircraft, '.mass-line'), '.mass-line-name', '.mass-line-stand'),
    bench: all(set, '.bench-sheet .weigh-list > li').map((line) => words(line, 'span')),
    spares: all(set, '.spares > li').map((line) => line.innerText.replaceAll(/\s+/g, ' ')),
    cautions: all(set, '.caution, .paper-notes li').map(({ innerText }) => innerText),
  }
}

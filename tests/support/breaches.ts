import axe from 'axe-core'
import type { Page } from 'playwright'

const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'best-practice']

interface Looked {
  /** A selector; left out, the whole document, with the rules that hold for a page as a whole. */
  readonly place?: string
  /** Only what colours decide: enough for what was looked at in other colours before. */
  readonly colorsOnly?: boolean
}

/** Breaches of WCAG 2.1 A and AA and of axe's own good practice, as one readable line each. */
export async function breaches(
  page: Page,
  { place, colorsOnly = false }: Looked = {},
): Promise<readonly string[]> {
  // A script tag would be refused by the content policy; this goes through the debugger, once a
  // page.
  if (!(await page.evaluate(() => 'axe' in globalThis))) await page.evaluate(axe.source)
  const found = await page.evaluate(
    async ([where, tags, colors]) => {
      const { axe: here } = globalThis as unknown as { axe: typeof axe }
      const { violations } = await here.run(where ?? document, {
        runOnly: here
          .getRules(tags)
          .filter((rule) => !colors || rule.tags.includes('cat.color'))
          .map(({ ruleId }) => ruleId),
        resultTypes: ['violations'],
      })
      return violations.map(({ id, help, nodes }) => ({ id, help, html: nodes.map((n) => n.html) }))
    },
    [place, TAGS, colorsOnly] as const,
  )
  return found.map(({ id, help, html }) => `${id}: ${help}: ${html.slice(0, 3).join(' | ')}`)
}

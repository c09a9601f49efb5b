// Reads public/_headers: the one place where the app's response headers, its content policy among
// them, are written. The file's shape (a path pattern, then indented `Name: value` lines) is what
// several static hosts read themselves.

/**
 * @typedef {object} HeaderRule
 * @property {string} pattern path from the root; a closing `*` stands for anything
 * @property {ReadonlyArray<readonly [name: string, value: string]>} headers
 */

/**
 * @param {string} text
 * @returns {HeaderRule[]}
 */
export function parseHeaders(text) {
  /** @type {{ pattern: string, headers: [string, string][] }[]} */
  const rules = []
  for (const line of text.split(/\r?\n/)) {
    if (line.trim() === '' || line.startsWith('#')) continue
    if (!/^\s/.test(line)) {
      rules.push({ pattern: line.trim(), headers: [] })
      continue
    }
    const colon = line.indexOf(':')
    const rule = rules.at(-1)
    if (colon === -1 || rule === undefined) throw new Error(`_headers: cannot read "${line}"`)
    rule.headers.push([line.slice(0, colon).trim(), line.slice(colon + 1).trim()])
  }
  return rules
}

/**
 * Headers of every rule that fits; a later rule wins over an earlier one.
 *
 * @param {readonly HeaderRule[]} rules
 * @param {string} pathname
 * @returns {Record<string, string>}
 */
export function headersFor(rules, pathname) {
  return Object.fromEntries(
    rules.filter((rule) => fits(rule.pattern, pathname)).flatMap((rule) => rule.headers),
  )
}

/**
 * The content policy as a page may state it about itself: without the directives that only a header
 * can set.
 *
 * @param {readonly HeaderRule[]} rules
 * @returns {string}
 */
export function policyForMeta(rules) {
  const policy = headersFor(rules, '/')['Content-Security-Policy']
  if (policy === undefined) throw new Error('_headers: no Content-Security-Policy for /')
  return policy
    .split(';')
    .map((directive) => directive.trim())
    .filter((directive) => directive !== '' && !directive.startsWith('frame-ancestors'))
    .join('; ')
}

/**
 * @param {string} pattern
 * @param {string} pathname
 */
function fits(pattern, pathname) {
  return pattern.endsWith('*') ? pathname.startsWith(pattern.slice(0, -1)) : pathname === pattern
}

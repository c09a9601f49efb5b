import { stripVTControlCharacters } from 'node:util'

/**
 * @typedef {object} FailureReport the part we read of what vitest's JSON reporter writes
 * @property {readonly {
 *   name: string
 *   message: string
 *   status: string
 *   assertionResults: readonly {
 *     status: string
 *     fullName: string
 *     failureMessages?: readonly string[] | null
 *   }[]
 * }[]} testResults
 */

/** Letters of a message that are told: what was expected and what came, not pages of markup. */
const LONGEST = 240

/**
 * Names each failure of a test run with what it said and where in our tests, in two lines each: who
 * is shown only the end of a long run finds what to mend.
 *
 * @param {FailureReport | null} report null when there is none
 * @param {string} root folder that file names are told from
 * @returns {string[]}
 */
export function listFailures(report, root) {
  return (report?.testResults ?? []).flatMap(({ name, message, status, assertionResults }) => {
    const file = name.startsWith(root) ? name.slice(root.length).replace(/^[\\/]/, '') : name
    const failed = assertionResults.filter((test) => test.status === 'failed')
    if (failed.length === 0 && status === 'failed') return [`${file}\n    ${short(message)}`]
    return failed.map(({ fullName, failureMessages }) => {
      const said = failureMessages?.[0] ?? ''
      const place = /tests[\\/][\w\\/.-]+:\d+:\d+/.exec(said)?.[0] ?? file
      return `${file}: ${fullName}\n    ${short(said)} (${place})`
    })
  })
}

/** @param {string} message */
function short(message) {
  const words = stripVTControlCharacters(message).split(/\n\s+at /)[0] ?? ''
  const line = words.replaceAll(/\s+/g, ' ').trim()
  return line.length > LONGEST ? `${line.slice(0, LONGEST)}…` : line
}

import { boltPatternOf } from '../../core/drill/fitChecks.ts'
import type { FitCheck, FitVerdict } from '../../core/drill/fitChecks.ts'
import { PATTERN_NAMES } from '../../core/mesh/holes/patterns.ts'
import { toldWords } from '../../core/words/toldWords.ts'
import { Section } from '../aircraft/Section.tsx'
import { useActions, useReadState } from '../appContext.ts'
import { Choice } from '../fields/Choice.tsx'
import { onOneLine } from '../show.ts'

const ORDER: readonly FitVerdict[] = ['does not fit', 'is short', 'not told', 'fits']
const NOT_TOLD = 'not told'

/** What was drawn against what is bought. */
export function FitList({ checks }: { readonly checks: readonly FitCheck[] }) {
  const odd = checks.filter(({ verdict }) => verdict !== 'fits').length
  const sorted = checks.toSorted((a, b) => ORDER.indexOf(a.verdict) - ORDER.indexOf(b.verdict))
  return (
    <Section
      title="Before you order"
      summary={
        odd === 0 ? `${checks.length} checks, all fit` : `${odd} of ${checks.length} to look at`
      }
    >
      <ul className="craft-full fit-list">
        {sorted.map((check) => (
          <li
            key={`${check.what} ${check.itemId ?? ''}`}
            className={`fit-${check.verdict.replaceAll(' ', '-')}`}
          >
            <b>{check.what}</b> <em>{check.verdict}</em>
            <span>{onOneLine(toldWords(check.words))}</span>
            {check.itemId === null ? null : (
              <PatternChoice itemId={check.itemId} what={check.what} />
            )}
          </li>
        ))}
      </ul>
    </Section>
  )
}

function PatternChoice({ itemId, what }: { readonly itemId: string; readonly what: string }) {
  const { putAircraft } = useActions()
  const readState = useReadState()
  const item = readState().frame.aircraft.items.find(({ id }) => id === itemId)
  // Its body says it.
  if (item === undefined || boltPatternOf(item) !== item.boltPattern) return null
  const names = [
    ...new Set([...PATTERN_NAMES, ...(item.boltPattern === undefined ? [] : [item.boltPattern])]),
  ]
  return (
    <Choice
      label={`Holes that ${what} is bolted by`}
      bare
      options={[
        ...names.map((name) => ({ id: name, name: `${name} mm` })),
        { id: NOT_TOLD, name: NOT_TOLD },
      ]}
      value={item.boltPattern ?? null}
      placeholder="choose its holes"
      onChange={(id) => {
        const items = readState().frame.aircraft.items.map((each) => {
          if (each.id !== itemId) return each
          const { boltPattern: _old, ...rest } = each
          return id === NOT_TOLD ? rest : { ...rest, boltPattern: id }
        })
        putAircraft({ items }, `tell how “${what}” is bolted`)
      }}
    />
  )
}

import { eveningsOf, type Evening } from '../../core/runs/eveningPlan.ts'
import type { RunTold } from '../../core/runs/tellRuns.ts'
import { toldWords } from '../../core/words/toldWords.ts'
import { formatHours } from '../../core/words/format.ts'

interface EveningListProps {
  readonly told: readonly RunTold[]
  readonly eveningH: number
}

/** Which runs go into which evening, and what prints overnight, printer by printer. */
export function EveningList({ told, eveningH }: EveningListProps) {
  const names = new Map(told.map(({ printer: { id, name } }) => [id, name]))
  const plans = [...names].map(([id, name]) => {
    const own = told.filter(({ printer }) => printer.id === id)
    const times = own.map(({ number, timeS }) => ({ number, timeS: timeS.mid }))
    return { name, evenings: eveningsOf(times, eveningH * 3600) }
  })
  const count = Math.max(0, ...plans.map(({ evenings }) => evenings.length))
  if (count === 0) return null
  return (
    <ol className="evening-list">
      {Array.from({ length: count }, (_, i) => (
        <li key={i}>
          Evening {i + 1}:{' '}
          {plans
            .flatMap(({ name, evenings }) => {
              const own = evenings[i]
              if (own === undefined) return []
              return [`${plans.length === 1 ? '' : `${toldWords(name)}: `}${eveningWords(own)}`]
            })
            .join('; ')}
        </li>
      ))}
    </ol>
  )
}

function eveningWords({ runs, timeS, night, isLate }: Evening): string {
  const sat =
    runs.length === 0
      ? 'nothing to sit by'
      : `${runs.length === 1 ? 'run' : 'runs'} ${runs.join(', ')} (${formatHours(timeS)})`
  const slept = night === null ? '' : `, then overnight run ${night}`
  return `${sat}${slept}${isLate ? ', not done by morning' : ''}`
}

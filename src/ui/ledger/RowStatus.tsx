import { Button } from 'react-aria-components'
import type { PartWork } from '../../state/store/types.ts'
import { useActions } from '../appContext.ts'
import { toldWords } from '../../core/words/toldWords.ts'

/** What is still under way for a part, or why it failed; nothing once its figures stand. */
export function RowStatus({ partId, work }: { readonly partId: string; readonly work: PartWork }) {
  const { retryPart } = useActions()
  switch (work.kind) {
    case 'queued':
      return <span className="status">waiting</span>
    case 'reading':
      return <Progress words="reading" fraction={work.fraction} />
    case 'rough':
      return <Progress words="rough, counting layers" fraction={work.fraction} />
    case 'done':
      return work.newerFraction === null ? null : (
        <Progress
          words={
            work.census.coarseMm3 > 0
              ? 'coarse, counting all layers'
              : 'older settings, counting again'
          }
          fraction={work.newerFraction}
        />
      )
    case 'failed':
      return (
        <span className="status status-wrong" role="alert">
          {toldWords(`${work.problem.message} ${work.problem.advice}`)}
          <Button
            className="quiet"
            onPress={() => {
              retryPart(partId)
            }}
          >
            Try again
          </Button>
        </span>
      )
  }
}

function Progress({ words, fraction }: { readonly words: string; readonly fraction: number }) {
  const percent = Math.round(fraction * 100)
  return (
    <span className="status">
      {words}
      <span className="status-number">{percent} %</span>
      <span className="status-bar" aria-hidden="true" style={{ scale: `${fraction} 1` }} />
    </span>
  )
}

import type { PartWork } from '../../state/store/types.ts'
import { isCounting } from '../ledger/partWork.ts'
import { showNumber } from '../show.ts'

/**
 * Says that the figures of the sheet are not the last word while layers are counted. Spoken once
 * when a count begins and once when it is over; the percentage is for the eye alone.
 */
export function CountingLine({ work }: { readonly work: PartWork }) {
  const isBusy = isCounting(work)
  return (
    <p className={isBusy ? 'counting counting-now' : 'counting'}>
      <span role="status">{isBusy ? wordsOf(work) : ''}</span>
      {isBusy ? (
        <span aria-hidden="true" className="counting-share">
          {' '}
          {showNumber(Math.floor(100 * shareOf(work)), 0)} %
        </span>
      ) : null}
    </p>
  )
}

function wordsOf(work: PartWork): string {
  switch (work.kind) {
    case 'rough':
      return 'Rough figures: its layers are being counted.'
    case 'done':
      return work.census.coarseMm3 > 0
        ? 'Coarse figures: all of its layers are being counted.'
        : 'Figures of the settings before: its layers are being counted again.'
    case 'queued':
    case 'reading':
    case 'failed':
      return 'Its mesh is being read.'
  }
}

function shareOf(work: PartWork): number {
  switch (work.kind) {
    case 'reading':
    case 'rough':
      return work.fraction
    case 'done':
      return work.newerFraction ?? 1
    case 'queued':
    case 'failed':
      return 0
  }
}

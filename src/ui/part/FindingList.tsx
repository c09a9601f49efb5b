import { Button } from 'react-aria-components'
import { placeWords } from '../../core/mesh/placeWords.ts'
import { findingId } from './goToRemedy.ts'
import { findingSign } from './partMarks.ts'
import type { Bounds, Finding, Grade } from '../../core/model/mesh.ts'
import { toldWords } from '../../core/words/toldWords.ts'

interface FindingListProps {
  /** Heaviest first. */
  readonly findings: readonly Finding[]
  /** Shows the place of one in the part's picture. */
  readonly onShow: (place: Bounds, finding: Finding) => void
}

/** What is odd about the mesh in whole sentences, in the order given. */
export function FindingList({ findings, onShow }: FindingListProps) {
  if (findings.length === 0)
    return <p className="hint">Nothing odd found: the mesh is closed and faces outward.</p>
  return (
    <ul className="findings">
      {findings.map((finding) => (
        <li
          key={finding.code + finding.message}
          {...lineOf(findings, finding)}
          className={`finding finding-${finding.grade.replaceAll(' ', '-')}`}
        >
          <Sign findings={findings} finding={finding} />
          <strong>{WORDS[finding.grade]}</strong> {toldWords(finding.message)}
          {placeWords(finding)}
          <ShowButton
            place={finding.place}
            onShow={(place) => {
              onShow(place, finding)
            }}
          />
        </li>
      ))}
    </ul>
  )
}

/** What leads from its letter on the drawing to its line. */
function lineOf(findings: readonly Finding[], finding: Finding) {
  const sign = findingSign(findings, finding)
  return sign === null ? {} : { id: findingId(sign), tabIndex: -1 }
}

/** Its letter on the drawing. */
function Sign({ findings, finding }: { findings: readonly Finding[]; finding: Finding }) {
  const sign = findingSign(findings, finding)
  return sign === null ? null : (
    <>
      <b>{sign}</b>{' '}
    </>
  )
}

function ShowButton({
  place,
  onShow,
}: {
  readonly place: Bounds | undefined
  readonly onShow: (place: Bounds) => void
}) {
  if (place === undefined) return null
  return (
    <Button
      className="quiet"
      onPress={() => {
        onShow(place)
      }}
    >
      Show it
    </Button>
  )
}

const WORDS: Readonly<Record<Grade, string>> = {
  'changes the grams': 'Changes the grams',
  'cannot print': 'Cannot print',
  'worth knowing': 'Worth knowing',
  note: 'Note',
}

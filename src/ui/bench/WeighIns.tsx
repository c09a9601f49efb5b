import { memo, useState } from 'react'
import { Button } from 'react-aria-components'
import { formatPercent, withSign } from '../../core/words/format.ts'
import { learnedWords, strayMassWords } from '../../core/words/learned.ts'
import type { FrameSum, StrayReading } from '../../core/frame/types.ts'
import type { Range } from '../../core/model/figures.ts'
import type { WeighIn } from '../../core/model/frame.ts'
import type { Lesson } from '../../core/doubt/lessons.ts'
import { ledgerRows, type LedgerRow } from '../../state/store/derived.ts'
import { useActions, useAppState } from '../appContext.ts'
import { narrowed, PIECES_LIMITS, READING_LIMITS } from '../../core/data/limits.ts'
import { LESSONS_ENDING, lessonFile } from '../../state/storage/lessonSchema.ts'
import { NumberBox } from '../fields/NumberBox.tsx'
import { download } from '../head/download.ts'
import { trueMinus } from '../show.ts'
import { pieceSpan, pieceMass } from '../aircraft/words.ts'
import { LessonList } from '../workshop/LessonList.tsx'
import { ScaleFields, SCALE_AT_FIRST, type Scale } from './ScaleFields.tsx'
import { leastOnScale } from './leastOnScale.ts'
import { ScaleSheet } from './ScaleSheet.tsx'
import { WeighedPicture } from './WeighedPicture.tsx'
import { WholeWeighIns } from './WholeWeighIns.tsx'

/** What the scale said, piece by piece and of the whole, and what that taught. */
export function WeighIns({ sum }: { readonly sum: FrameSum }) {
  const [scale, setScale] = useState<Scale>(SCALE_AT_FIRST)
  const [isAtScale, setIsAtScale] = useState(false)
  const rows = useAppState(ledgerRows)
  const strays = new Map(sum.strays.map((stray) => [stray.id, stray]))
  return (
    <>
      <p className="hint">
        Supports and brim off; one piece, or several of a kind together. A weighed mass takes the
        place of the estimate, and what was off tells on all that is printed from the same spool and
        printer. Empty the field to go back to the estimate.
      </p>
      <Button
        className="outlined"
        onPress={() => {
          setIsAtScale(true)
        }}
      >
        Piece by piece at the scale
      </Button>
      {isAtScale ? (
        <ScaleSheet
          scale={scale}
          onScale={setScale}
          onClose={() => {
            setIsAtScale(false)
          }}
        />
      ) : null}
      <ScaleFields scale={scale} onChange={setScale} />
      <ul className="weigh-list">
        {rows.map((row) => (
          <WeighLine key={row.part.id} row={row} scale={scale} stray={strays.get(row.part.id)} />
        ))}
      </ul>
      <WholeWeighIns sum={sum} scale={scale} />
      <LearnedList sum={sum} />
      <WeighedPicture rows={sum.rows} />
      <LessonList />
    </>
  )
}

/** One sentence for each spool that something was weighed of. */
function LearnedList({ sum }: { readonly sum: FrameSum }) {
  const lessons = useAppState((state) => state.workshop.lessons)
  const frameId = useAppState((state) => state.frame.id)
  const { forgetLessons } = useActions()
  const isCarried = ({ id, materialIds }: Lesson, spool: string) =>
    !id.startsWith(`${frameId}/`) && materialIds.includes(spool)
  if (sum.learned.length === 0) return null
  const names = new Map(sum.rows.map(({ material }) => [material.id, material.name]))
  return (
    <ul className="learned-list">
      {sum.learned.map(({ spool, printer, factor, from }) => (
        <li key={spool}>
          {learnedWords(names.get(spool) ?? spool, factor, from)}{' '}
          {lessons.some((one) => isCarried(one, spool)) ? (
            <Button
              className="quiet"
              onPress={() => {
                forgetLessons(spool, printer)
              }}
            >
              Forget earlier frames
            </Button>
          ) : null}
        </li>
      ))}
      <li>
        <Button
          className="quiet"
          onPress={() => {
            download(lessonFile(lessons), 'workshop', LESSONS_ENDING)
          }}
        >
          Save all that was learned as a file
        </Button>
      </li>
    </ul>
  )
}

interface WeighLineProps {
  readonly row: LedgerRow
  readonly scale: Scale
  readonly stray: StrayReading | undefined
}

const WeighLine = memo(function WeighLine({ row, scale, stray }: WeighLineProps) {
  const { weighPart } = useActions()
  const { part, figures, sum } = row
  const { id, name, weighIn } = part
  const scaleRatio = sum?.scaleRatio ?? null
  const [pieces, setPieces] = useState(weighIn?.pieces ?? 1)
  const share = scaleRatio === null ? null : scaleRatio - 1
  const scaleG = weighIn === undefined ? null : shownG(weighIn)
  const leastG = leastOnScale(scale)
  const weigh = (grams: number | null, trusted = false) => {
    weighPart(id, grams === null ? null : { ...scale, scaleG: grams, pieces, trusted })
  }
  return (
    <li>
      <span>
        {name}
        <span className="range">
          {figures === null ? 'no figures' : `reckoned ${reckonedWords(figures.massG)}`}
          {share === null ? null : (
            <>
              {', scale '}
              <b>{trueMinus(withSign(share, formatPercent(share)))}</b>
            </>
          )}
          {sum?.massFrom === 'weighed before'
            ? `, weighed before its ${sum.changes.join(' and ')} changed`
            : null}
          {figures === null && sum !== null ? ', counts by the scale' : null}
        </span>
      </span>
      <span className="weigh-fields">
        <NumberBox
          label={`${name}, pieces on the scale`}
          bare
          limits={PIECES_LIMITS.quantity}
          value={pieces}
          unit="×"
          onChange={(count) => {
            setPieces(count)
            if (weighIn !== undefined) {
              weighPart(id, { ...scale, scaleG: scaleG ?? 0, pieces: count, trusted: false })
            }
          }}
        />
        <NumberBox
          label={`${name} on the scale`}
          bare
          limits={narrowed(READING_LIMITS.scaleG, { min: leastG })}
          value={scaleG}
          step={scale.stepG}
          unit="g"
          onChange={weigh}
          onEmpty={() => {
            weigh(null)
          }}
        />
      </span>
      {stray === undefined ? null : (
        <p className="caution weigh-stray">
          {strayMassWords(name, stray.value, stray.foretold, stray.taken)}{' '}
          <Button
            className="quiet"
            onPress={() => {
              weigh(scaleG, true)
            }}
          >
            I stand by it
          </Button>
        </p>
      )}
    </li>
  )
})

/** What the scale showed then. */
function shownG({ massG, pieces = 1, tareG = 0 }: WeighIn): number {
  return massG * pieces + tareG
}

function reckonedWords(massG: Range): string {
  const mid = pieceMass(massG.mid)
  const span = pieceSpan(massG)
  return span === mid ? mid : `${mid} (${span})`
}

import '../styles/scale.css'
import { useEffect, useId, useMemo, useRef, useState } from 'react'
import { Button, Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components'
import { foretellPieces } from '../../core/frame/foretellPieces.ts'
import { carriedLessons } from '../../core/frame/lessonsOf.ts'
import { limitWords } from '../../core/frame/sayings.ts'
import { narrowed, PIECES_LIMITS, READING_LIMITS } from '../../core/data/limits.ts'
import { formatRange } from '../../core/words/format.ts'
import { learnedWords } from '../../core/words/learned.ts'
import { readingWords } from '../../core/words/readingWords.ts'
import { keptOf, massUnit, shownAs } from '../../core/words/shownUnits.ts'
import { frameSum, ledgerRows, type LedgerRow } from '../../state/store/derived.ts'
import { useActions, useAppState } from '../appContext.ts'
import { pieceMass, tenthG } from '../aircraft/words.ts'
import { NumberBox } from '../fields/NumberBox.tsx'
import { readNumber } from '../fields/readNumber.ts'
import { shownLimits } from '../fields/shownLimits.ts'
import { showGhost } from '../head/ghost.ts'
import { GramRuler } from '../head/GramRuler.tsx'
import { showMass } from '../show.ts'
import { leastOnScale } from './leastOnScale.ts'
import { PieceOnScale } from './PieceOnScale.tsx'
import { ScaleBand } from './ScaleBand.tsx'
import { ScaleFields, type Scale } from './ScaleFields.tsx'
import { ScaleKeys } from './ScaleKeys.tsx'
import { WeighedPicture } from './WeighedPicture.tsx'

interface ScaleSheetProps {
  readonly scale: Scale
  readonly onScale: (scale: Scale) => void
  readonly onClose: () => void
}

/**
 * At the scale, the phone in one hand: piece after piece, a big number, what was expected, and one
 * key to take it.
 */
export function ScaleSheet({ scale, onScale, onClose }: ScaleSheetProps) {
  const rows = useAppState(ledgerRows)
  const sum = useAppState(frameSum)
  const carbonG = useAppState((state) => state.frame.carbon?.massG ?? null)
  const kept = useAppState((state) => state.workshop.lessons)
  const frameId = useAppState((state) => state.frame.id)
  const { weighPart, undo } = useActions()
  const [at, setAt] = useState(() => Math.max(0, rows.findIndex(isDue)))
  const [text, setText] = useState('')
  const [pieces, setPieces] = useState(1)
  const [isAsked, setIsAsked] = useState(false)
  const [said, setSaid] = useState<{ words: string; canUndo: boolean } | null>(null)
  const pieceId = useId()
  const field = useRef<HTMLInputElement>(null)
  const row = rows[at]
  const foretold = useMemo(() => {
    if (row === undefined) return null
    const lessons = carriedLessons(kept, frameId)
    return foretellPieces(sum.doubt, { partId: row.part.id, pieces, ...scale }, lessons)
  }, [row, sum, pieces, scale, kept, frameId])
  const as = shownAs('g')
  const takes = narrowed(READING_LIMITS.scaleG, { min: leastOnScale(scale) })
  const typed = readNumber(text, { ...shownLimits(takes, as), unit: massUnit() })
  const scaleG = 'refused' in typed ? null : keptOf(typed.value, as)
  const netG = scaleG === null ? null : scaleG - scale.tareG
  const look = netG !== null && foretold !== null ? foretold.lookAt(netG) : null
  const ghostG = look?.frameG ?? null
  useEffect(() => {
    showGhost(ghostG === null ? null : { massG: ghostG, words: 'with this reading' })
    return () => {
      showGhost(null)
    }
  }, [ghostG])
  useEffect(() => {
    field.current?.focus()
  }, [at])
  if (row === undefined) return null
  const { part } = row
  const weighed = rows.filter((one) => !isDue(one)).length
  const next = nextDue(rows, at)
  const goTo = (to: number) => {
    setAt(Math.min(rows.length - 1, Math.max(0, to)))
    setText('')
    setPieces(1)
    setIsAsked(false)
  }
  const take = () => {
    if (scaleG === null) {
      const why = 'refused' in typed ? typed.refused : ''
      setSaid({ words: `Type what the scale shows. ${why}`, canUndo: false })
      return
    }
    if (look?.isFar === true && !isAsked) {
      setIsAsked(true)
      return
    }
    weighPart(part.id, { ...scale, scaleG, pieces, trusted: isAsked })
    setSaid({ words: `${part.name}: ${pieceMass(scaleG)} taken.`, canUndo: true })
    goTo(next ?? at)
  }
  const learned = sum.learned.find(({ spool }) => spool === row.material.id)
  return (
    <ModalOverlay
      className="scale-ground"
      isOpen
      onOpenChange={(open) => (open ? null : onClose())}
    >
      <Modal className="scale-modal">
        <Dialog className="scale-sheet">
          <div className="scale-head">
            <span className="scale-frame">
              {tenthG(sum.printed.massG.mid)} <small>{massUnit()}</small>
            </span>
            <span className="unseen">
              {sum.limits.strictest === null ? '' : `${limitWords(sum.limits.strictest)}. `}
              {carbonG === null ? '' : `Carbon ${showMass(carbonG)}.`}
            </span>
            <GramRuler massG={sum.printed.massG} carbonG={carbonG} limit={sum.limits.strictest} />
          </div>
          <div className="scale-title">
            <Heading slot="title">Weigh-in</Heading>
            <span className="quiet-text">
              {weighed} of {rows.length} on the scale
            </span>
            <Button className="quiet" onPress={onClose}>
              Done
            </Button>
          </div>
          <PieceNumbers rows={rows} at={at} onGo={goTo} />
          <div className="scale-body">
            <PieceOnScale
              twinId={pieceId}
              part={part}
              onSwipe={(by) => {
                goTo(at + by)
              }}
            />
            <p id={pieceId} className="scale-name">
              <b>{at + 1}</b> {part.name}
              <span className="quiet-text">
                {pieces === 1 ? 'one piece' : `${pieces} pieces together`}, supports and brim off
                <EarlierWeighing row={row} />
              </span>
            </p>
            <label className="scale-reading">
              <span className="unseen">{part.name} on the scale</span>
              <input
                ref={field}
                inputMode="none"
                autoComplete="off"
                value={text}
                placeholder="0"
                onChange={(event) => {
                  setText(event.target.value)
                  setIsAsked(false)
                }}
                onKeyDown={(event) => {
                  if (event.key !== 'Enter') return
                  event.preventDefault()
                  take()
                }}
              />
              <span>{massUnit()}</span>
            </label>
            {foretold === null ? (
              <p className="quiet-text">
                Nothing was calculated: the scale alone will say its mass.
              </p>
            ) : (
              <ScaleBand foretoldG={foretold.netG} netG={netG} />
            )}
            {look === null || foretold === null || netG === null ? null : (
              <p className="scale-odds">
                {readingWords(
                  netG,
                  foretold.netG,
                  formatRange(foretold.netG, pieceMass),
                  look.chance,
                )}
                <span>
                  frame <b>{tenthG(look.frameG)}</b> for {tenthG(sum.printed.massG.mid)}
                </span>
              </p>
            )}
            {isAsked ? (
              <p className="caution" role="alert">
                Far outside what is expected: two pieces on the scale? Supports or a brim still on?
                Tap again to take it all the same.
              </p>
            ) : null}
            <p role="status" className="scale-said">
              {said === null ? null : (
                <>
                  {said.words}{' '}
                  {said.canUndo ? (
                    <Button
                      className="quiet"
                      onPress={() => {
                        undo()
                        setSaid({ words: 'Taken back.', canUndo: false })
                      }}
                    >
                      Undo
                    </Button>
                  ) : null}
                </>
              )}
            </p>
            {learned === undefined ? null : (
              <p>{learnedWords(row.material.name, learned.factor, learned.from)}</p>
            )}
            <WeighedPicture rows={sum.rows} />
            <details>
              <summary>Set, tare and step of the scale</summary>
              <NumberBox
                label="Weighed together"
                limits={PIECES_LIMITS.quantity}
                value={pieces}
                unit="×"
                onChange={setPieces}
              />
              <ScaleFields scale={scale} onChange={onScale} />
            </details>
          </div>
          <div className="scale-foot">
            <ScaleKeys
              onKey={(change) => {
                setText(change)
                setIsAsked(false)
              }}
            />
            <button type="button" className="scale-take" onClick={take}>
              {isAsked ? 'Take all the same' : 'Take'}
              {scaleG === null ? '' : ` ${pieceMass(scaleG)}`}
              {next === null ? null : (
                <small>
                  next {next + 1} {rows[next]?.part.name}
                </small>
              )}
            </button>
          </div>
        </Dialog>
      </Modal>
    </ModalOverlay>
  )
}

/** Not weighed as it is now. */
function isDue({ sum }: LedgerRow): boolean {
  return sum?.massFrom !== 'weighed'
}

/** The next that is due, round from here; null where none else is. */
function nextDue(rows: readonly LedgerRow[], at: number): number | null {
  for (let step = 1; step < rows.length; step++) {
    const place = (at + step) % rows.length
    const row = rows[place]
    if (row !== undefined && isDue(row)) return place
  }
  return null
}

function EarlierWeighing({ row: { part, sum } }: { readonly row: LedgerRow }) {
  const { weighIn } = part
  if (weighIn === undefined) return null
  const mass = pieceMass(weighIn.massG)
  if (sum?.massFrom === 'weighed') return <>; weighed {mass} before</>
  return (
    <>
      ; <s>weighed {mass}</s>, not used: its {sum?.changes.join(' and ') ?? 'settings'} changed
    </>
  )
}

interface PieceNumbersProps {
  readonly rows: readonly LedgerRow[]
  readonly at: number
  readonly onGo: (to: number) => void
}

/**
 * The item numbers in a row: those on the scale already, the one that lies there, those that wait
 * for figures.
 */
function PieceNumbers({ rows, at, onGo }: PieceNumbersProps) {
  return (
    <ol className="scale-numbers">
      {rows.map((row, i) => {
        const state =
          i === at ? 'now' : isDue(row) ? (row.figures === null ? 'waits' : 'due') : 'weighed'
        const told = {
          now: 'now',
          due: 'not weighed',
          waits: 'without figures',
          weighed: 'weighed',
        }
        return (
          <li key={row.part.id}>
            <button
              type="button"
              className={`scale-number scale-${state}`}
              aria-current={i === at ? 'step' : undefined}
              aria-label={`${i + 1} ${row.part.name}, ${told[state]}`}
              onClick={() => {
                onGo(i)
              }}
            >
              {i + 1}
            </button>
          </li>
        )
      })}
    </ol>
  )
}

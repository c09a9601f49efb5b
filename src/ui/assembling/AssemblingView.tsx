import '../styles/assembling.css'
import { useEffect, useMemo, useRef, useState, type KeyboardEvent } from 'react'
import type { LineDrawing } from '../../core/drawing/types.ts'
import type { RigidMap } from '../../core/mesh/rigidMaps.ts'
import type { JoinablePart } from '../../core/joints/equalPatterns.ts'
import { Assembly } from '../drawing/Assembly.tsx'
import { PlainButton } from '../fields/PlainButton.tsx'
import { ActionLine } from './ActionLine.tsx'
import { CardChoice } from './CardChoice.tsx'
import { HandPanel } from './HandPanel.tsx'
import { JointMarks, MouthMarks } from './JointMarks.tsx'
import { JointTable } from './JointTable.tsx'
import { LooseStrip } from './LooseStrip.tsx'
import { looseCount, missWords, offersHead, repeatWords, wayWords } from './offerWords.ts'
import { RepeatPicture } from './OfferPicture.tsx'
import { useJoinable } from '../useJoinable.ts'
import { pieceName } from './pieces.ts'
import { SignList } from '../drawing/SignList.tsx'
import { useFrameSigns } from '../drawing/useFrameSigns.ts'
import { useHand } from './useHand.ts'
import { motionBy, useAssembling } from './useAssembling.ts'
import { wayCard } from './wayCard.tsx'

/**
 * The frame while it is put together: drawing and strip on one side, offers and joints on the
 * other.
 */
export function AssemblingView() {
  const parts = useJoinable()
  const model = useAssembling()
  const signs = useFrameSigns()
  const { kinds, kind, standing, laid, way, ghosts, ways, at, repeats, again } = model
  const strip = useRef<HTMLDivElement>(null)
  const cards = useRef<HTMLDivElement>(null)
  const [said, setSaid] = useState('')
  const [isByHand, setByHand] = useState(false)
  const [on, setOn] = useState(0)
  const wantsStrip = useRef(false)
  const wantsCards = useRef(false)
  const shapes = model.offers.kind === 'found' ? model.offers.shapes : NO_SHAPES
  const onPlace = Math.min(on, standing.length - 1)
  // What was picked for another piece, or before the last join, is let go.
  const handFor = `${kind?.key ?? ''} ${standing.length} ${onPlace}`
  const hand = useHand(handFor, standing[onPlace], kind?.pieces[0], shapes)
  useEffect(() => {
    // Focus goes on to the next loose piece once what was joined stands.
    if (!wantsStrip.current) return
    wantsStrip.current = false
    focusFirst(strip.current, 'button[tabindex="0"]')
  }, [standing])
  useEffect(() => {
    // Who asked for the ways before they were told goes on to them now.
    if (!wantsCards.current || ways.length === 0) return
    wantsCards.current = false
    focusFirst(cards.current, '[role=radio][tabindex="0"]')
  }, [ways])
  useEffect(() => {
    const onKey = (event: globalThis.KeyboardEvent) => {
      if (event.key !== 'F6' || event.ctrlKey || event.altKey) return
      event.preventDefault()
      focusFirst(strip.current, 'button[tabindex="0"]')
    }
    window.addEventListener('keydown', onKey)
    return () => {
      window.removeEventListener('keydown', onKey)
    }
  }, [])

  const sentence =
    way === null || kind === null ? '' : wayWords(parts, way, at, model, repeats[again])
  const miss = missWords(model, parts)
  const byHand = isByHand ? hand.joint : null
  const shown = byHand ?? way?.joint ?? null
  const handAt = byHand === null ? null : motionBy(byHand, standing)
  const handPart = byHand?.b.partId ?? ''
  // Told apart by what it says, so that nothing is drawn twice.
  const handKey = handAt === null ? '' : JSON.stringify(handAt)
  const shownGhosts = useMemo(
    () =>
      handKey === '' ? ghosts : [{ partId: handPart, motion: JSON.parse(handKey) as RigidMap }],
    [handKey, handPart, ghosts],
  )
  const onShape =
    isByHand && hand.by === 'holes' ? shapes[standing[onPlace]?.partId ?? ''] : undefined
  const overlay = (drawing: LineDrawing) => {
    const a = standing.findIndex(
      ({ partId, piece }) => partId === shown?.a.partId && piece === shown.a.piece,
    )
    return (
      <>
        {onShape !== undefined && laid[onPlace] !== undefined ? (
          <MouthMarks
            drawing={drawing}
            mouths={onShape.mouths}
            motion={laid[onPlace].motion}
            picked={hand.first}
            onPick={(first) => {
              hand.change({ first, typed: {} })
            }}
          />
        ) : null}
        {shown !== null && laid[a] !== undefined ? (
          <JointMarks drawing={drawing} joint={shown} motion={laid[a].motion} />
        ) : null}
      </>
    )
  }
  const join = () => {
    const words = sentence
    wantsStrip.current = true
    if (model.join()) setSaid(`Joined: ${words}.`)
  }
  const press = (event: KeyboardEvent) => {
    const target = event.target as HTMLElement
    if (event.ctrlKey || event.metaKey || event.altKey) return
    if (target.closest('input, select, textarea, table, .hand-panel, [role=slider]') !== null)
      return
    const isCard = target.closest('[role=radio]') !== null
    if (event.key === 'Enter' && !isCard) return
    const act = {
      Enter: join,
      t: () => {
        setSaid(model.turn() ? '' : 'Its holes do not let it be turned over.')
      },
      a: () => {
        model.repeat((again + 1) % Math.max(1, repeats.length))
      },
      Escape: model.drop,
    }[event.key.length === 1 ? event.key.toLowerCase() : event.key]
    if (act === undefined || way === null) return
    event.preventDefault()
    act()
  }
  return (
    <div
      className={kinds.length === 0 ? 'assembling assembling-done' : 'assembling'}
      role="presentation"
      onKeyDown={press}
    >
      <div className="frame-drawing">
        <Assembly
          twinId="joint-list"
          chosenId={null}
          onLight={nothing}
          onChoose={(partId) => {
            const place = standing.findIndex((each) => each.partId === partId)
            if (place >= 0) setOn(place)
          }}
          laid={laid}
          ghosts={shownGhosts}
          overlay={overlay}
          signs={signs}
        />
        <ActionLine model={model} onJoin={join} onSaid={setSaid} sentence={sentence} />
        <p className="unseen" role="status" aria-live="polite">
          {said === '' ? sentence : said}
        </p>
        <h3 className="assembling-head">
          {kinds.length === 0 ? 'Every piece stands' : `Loose: ${looseCount(model)}`}
        </h3>
        <LooseStrip
          kinds={kinds}
          chosen={kind}
          strip={strip}
          onChoose={({ key }) => {
            wantsCards.current = false
            setSaid('')
            model.choose(key)
          }}
          onAsk={() => {
            wantsCards.current = ways.length === 0
            focusFirst(cards.current, '[role=radio][tabindex="0"]')
          }}
        />
        {model.isBare && kind !== null && standing[0] !== undefined ? (
          <p className="hint button-line">
            Nothing stands yet: all is built upon {pieceName(parts, standing[0])}.
            <PlainButton
              className="quiet"
              onPress={() => {
                model.buildOn(kind.key)
              }}
            >
              Build on {kind.part.name} instead
            </PlainButton>
          </p>
        ) : null}
      </div>
      <div className="frame-list assembling-side">
        <section aria-label="Offers">
          <h3 className="assembling-head">{offersHead(model, parts)}</h3>
          {miss === null ? null : <p className="hint">{miss}</p>}
          <CardChoice
            name="Ways to join it"
            group={cards}
            at={at}
            onChange={(next) => {
              setSaid('')
              hand.letGo()
              model.pick(next)
            }}
            cards={ways.map((each, i) => wayCard(parts, each, i, model))}
          />
          {repeats.length > 1 ? (
            <>
              <h3 className="assembling-head">And again</h3>
              <CardChoice
                name="And again"
                at={again}
                onChange={model.repeat}
                cards={repeats.map((repeat, i) => ({
                  key: `${i} ${repeat.kind}`,
                  label: repeatWords(repeat),
                  picture: <RepeatPicture repeat={repeat} model={model} />,
                  words: repeatWords(repeat),
                }))}
              />
            </>
          ) : null}
          <div className="button-line">
            {!model.showsAll && model.total > ways.length ? (
              <PlainButton className="quiet" onPress={model.showAll}>
                {`All ${model.total} ways`}
              </PlainButton>
            ) : null}
            {kind === null ? null : (
              <PlainButton
                className="quiet"
                aria-expanded={isByHand}
                onPress={() => {
                  hand.letGo()
                  setByHand(!isByHand)
                }}
              >
                Join it by hand
              </PlainButton>
            )}
          </div>
          {isByHand && kind?.pieces[0] !== undefined && model.offers.kind === 'found' ? (
            <HandPanel
              loose={kind.pieces[0]}
              standing={standing}
              shapes={shapes}
              on={onPlace}
              onOn={setOn}
              hand={hand}
              onJoin={() => {
                const { joint } = hand
                if (joint === null) return
                setSaid(`Joined: ${pieceName(parts, joint.b)} on ${pieceName(parts, joint.a)}.`)
                model.joinByHand(joint)
              }}
            />
          ) : null}
        </section>
      </div>
      <section id="joint-list" className="assembling-joints" aria-label="Joints">
        <h3 className="assembling-head">Joints</h3>
        <div className="joint-columns">
          <JointTable placed={model.placed} />
        </div>
        <SignList signs={signs} />
      </section>
    </div>
  )
}

const NO_SHAPES: Readonly<Record<string, JoinablePart>> = {}

function nothing(): void {
  // What is pointed at tells nothing here.
}

function focusFirst(within: HTMLElement | null, selector: string): void {
  within?.querySelector<HTMLElement>(selector)?.focus()
}

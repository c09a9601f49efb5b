import { useEffect, useRef, useState } from 'react'
import { Button } from 'react-aria-components'
import type { Material, Range } from '../../../core/model/figures.ts'
import {
  firstTone,
  LEAST_HZ,
  REACH,
  type HeardTone,
} from '../../../core/stiffness/knock/firstTone.ts'
import { knockedModulus, knockTeaches } from '../../../core/stiffness/knock/knockTeaches.ts'
import { useActions } from '../../appContext.ts'
import { showMass, showNumber } from '../../show.ts'
import { toneWords } from './BeamLine.tsx'
import { listenForKnock } from './listenForKnock.ts'
import { ToneSpectrum } from './ToneSpectrum.tsx'

interface KnockTestProps {
  readonly partName: string
  readonly material: Material
  /** By the solid model, with `tipG` at its end. */
  readonly reckonedHz: Range
  readonly tipG: number
}

type Stage = 'idle' | 'asking' | 'listening'

/** Taps the printed piece by the microphone and holds what it rings at against the solid model. */
export function KnockTest({ partName, material, reckonedHz, tipG }: KnockTestProps) {
  const { putMaterial } = useActions()
  const [stage, setStage] = useState<Stage>('idle')
  const [trouble, setTrouble] = useState<string | null>(null)
  const [heard, setHeard] = useState<{ readonly tone: HeardTone; readonly of: number } | null>(null)
  const running = useRef<AbortController | null>(null)
  useEffect(() => () => running.current?.abort(), [])
  const expected = reckonedHz.mid
  const listen = () => {
    const abort = new AbortController()
    running.current = abort
    setTrouble(null)
    setHeard(null)
    setStage('asking')
    listenForKnock(abort.signal, () => {
      setStage('listening')
    }).then(
      ({ samples, rateHz }) => {
        setStage('idle')
        const tone = firstTone(samples, rateHz, expected)
        if (tone === null) {
          setTrouble(
            `Nothing rang clearly between ${showNumber(Math.max(LEAST_HZ, expected / REACH), 0)} and ` +
              `${toneWords(expected * REACH)}. Tap once, with something hard, nearer to the microphone.`,
          )
        } else setHeard({ tone, of: expected })
      },
      (error: unknown) => {
        if (abort.signal.aborted) return
        setStage('idle')
        setTrouble(error instanceof Error ? error.message : String(error))
      },
    )
  }
  const stop = () => {
    running.current?.abort()
    setStage('idle')
  }
  return (
    <div className="knock">
      <h4>Knock test</h4>
      <p className="hint">
        Clamp the printed piece where it is held here
        {tipG > 0
          ? `, with its ${showMass(tipG)} of motor and propeller at the end, powered off`
          : ''}
        . Hold the microphone to it, press, and tap its free end once. The sound stays in this
        browser: nothing is recorded or sent. Tones below some 40 Hz most microphones do not hear.
      </p>
      <div className="stiffness-run">
        {stage === 'idle' ? (
          <Button className="outlined" onPress={listen}>
            {heard === null ? 'Listen to a knock' : 'Listen again'}
          </Button>
        ) : (
          <Button className="quiet" onPress={stop}>
            Stop listening
          </Button>
        )}
        <span role="status" className="quiet-text">
          {stage === 'asking' ? 'Allow the microphone for this page.' : ''}
          {stage === 'listening' ? 'Listening: tap now.' : ''}
        </span>
      </div>
      {trouble === null ? null : (
        <p className="caution" role="alert">
          {trouble}
        </p>
      )}
      {heard === null ? null : (
        <Lesson
          {...{ partName, material, reckonedHz }}
          tone={heard.tone}
          onTake={(youngsGPa) => {
            putMaterial({ ...material, youngsGPa })
          }}
        />
      )}
    </div>
  )
}

interface LessonProps extends Omit<KnockTestProps, 'tipG'> {
  readonly tone: HeardTone
  readonly onTake: (youngsGPa: Material['youngsGPa']) => void
}

function Lesson({ partName, material, reckonedHz, tone, onTake }: LessonProps) {
  const lesson = knockTeaches(tone, reckonedHz.mid, material)
  const { ratio, youngsGPa, share, isOdd } = lesson
  const gpa = (value: number): string => `${showNumber(value, 2)} GPa`
  const doubt = Math.max(0.1, 2 * tone.doubtHz)
  return (
    <div className="knock-lesson" role="status">
      <ToneSpectrum tone={tone} expected={reckonedHz} />
      <p>
        It rings at <b>{toneWords(tone.hz)}</b>, give or take {showNumber(doubt, 1)} Hz;{' '}
        {toneWords(reckonedHz.mid)} was reckoned. So it is{' '}
        {showNumber(Math.abs(100 * (ratio ** 2 - 1)), 0)} % {ratio >= 1 ? 'stiffer' : 'softer'}.
      </p>
      {isOdd ? (
        <p className="caution">
          That is too far off for the plastic: likelier it is held otherwise, carries something else
          at its end, or another tone was louder. Nothing is taken from it.
        </p>
      ) : (
        <>
          <p className="hint">
            Of that {showNumber(100 * share, 0)} % goes to {material.name}, the rest to how it is
            held: {gpa(material.youngsGPa.value)} becomes {gpa(youngsGPa.mid)} (
            {showNumber(youngsGPa.low, 2)}–{showNumber(youngsGPa.high, 2)}). Every part of that
            plastic follows; undo takes it back. Take one knock of a piece, not several.
          </p>
          <Button
            className="quiet"
            onPress={() => {
              onTake(knockedModulus(lesson, partName))
            }}
          >
            Take {gpa(youngsGPa.mid)} for {material.name}
          </Button>
        </>
      )}
    </div>
  )
}

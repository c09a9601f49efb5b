import { useState } from 'react'
import { Button } from 'react-aria-components'
import type { Setting } from '../../../core/choose/variety.ts'
import { bindingWords } from '../../../core/choose/sayings.ts'
import { useAppState } from '../../appContext.ts'
import { Section } from '../../aircraft/Section.tsx'
import { usePartShapes } from '../../aircraft/usePartShapes.ts'
import { frameSum } from '../../../state/store/derived.ts'
import { askOf, NOTHING_ASKED, type Asked } from './asked.ts'
import { FindFields } from './FindFields.tsx'
import { GivesFields } from './GivesFields.tsx'
import { PartTicks } from './PartTicks.tsx'
import { FrontList } from './FrontList.tsx'
import { useSearch } from './useSearch.ts'

const SETTINGS_ASKED: ReadonlySet<Setting> = new Set(['walls', 'infill', 'skins'])

/** Searches the recipes of all parts for what is asked, and shows what none beats. */
export function FindSection() {
  const [asked, setAsked] = useState<Asked>({ ...NOTHING_ASKED, settings: SETTINGS_ASKED })
  const parts = useAppState((state) => state.frame.parts)
  const currency = useAppState((state) => state.frame.prices.currency)
  const sum = useAppState(frameSum)
  const { shapes } = usePartShapes(parts)
  const { state, start, stop } = useSearch()
  const { kind, news, found, from } = state
  const isRunning = kind === 'running'
  const nameOf = (id: string): string => parts.find((one) => one.id === id)?.name ?? id
  const isCounted = sum.leftOut.every(({ why }) => why === 'failed')
  return (
    <Section
      title="Find"
      summary="recipes that none beats in all of grams, hours, money and stiffness"
      onPaper={found !== null}
    >
      <div className="craft-full find">
        <FindFields asked={asked} onChange={setAsked} />
        <PartTicks asked={asked} onChange={setAsked} />
        <GivesFields asked={asked} onChange={setAsked} />
        <div className="find-run">
          <Button
            className="firm"
            isDisabled={!isCounted}
            onPress={() => {
              if (isRunning) stop()
              else
                start(
                  askOf(
                    asked,
                    parts.map(({ id }) => id),
                    sum.printed.massG.mid,
                  ),
                  shapes,
                )
            }}
          >
            {isRunning ? 'Stop' : kind === 'stopped' ? 'Go on' : 'Find recipes'}
          </Button>
          <p role="status" className="hint">
            {isCounted ? '' : 'The layers of the frame are being counted first.'}
            {isRunning && news !== null
              ? (news.solving ?? `Layers counted ${news.counted} of ${news.toCount} times.`)
              : ''}
            {kind === 'stopped' ? 'Stopped; what was counted is kept.' : ''}
            {kind === 'done' && found !== null
              ? found.count === 0
                ? 'Nothing found.'
                : `${found.count} ${found.count === 1 ? 'solution' : 'solutions'}.`
              : ''}
          </p>
        </div>
        {kind === 'done' && found?.count === 0 ? (
          <ul className="find-why">
            {bindingWords(found.bindings, currency, nameOf).map((words) => (
              <li key={words}>{words}</li>
            ))}
          </ul>
        ) : null}
        {found === null || found.count === 0 || from === null ? null : (
          <FrontList found={found} then={from} isWhole={kind === 'done'} />
        )}
        <p className="hint">
          Stiffness kept is reckoned from sections of the layers, ratios good to 15 %: it knows no
          joints, holes or loads. Parts that are asked how far they give have their solid model,
          their beam or both behind them. Hours and money are those of the print runs as they lie;
          laid anew they may come out up to 14 % off. Printed plastic scatters, creeps and ages, and
          no figure here is a licence to fly over people. A frame that breaks in the air falls: try
          it low, with people away from it, and ask someone qualified before you fly near any.
        </p>
      </div>
    </Section>
  )
}

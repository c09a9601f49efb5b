import { useMemo } from 'react'
import { Button } from 'react-aria-components'
import { PRINTER_LIMITS, PRINTERS_MOST } from '../../core/data/limits.ts'
import { PRINTERS } from '../../core/data/printers.ts'
import type { Printer } from '../../core/model/figures.ts'
import { allPrinters, withPrinters } from '../../core/runs/runPrinters.ts'
import { toldWords } from '../../core/words/toldWords.ts'
import { useActions, useAppState } from '../appContext.ts'
import { Choice } from '../fields/Choice.tsx'
import { NumberBox } from '../fields/NumberBox.tsx'
import { showLength } from '../show.ts'
import { MineLine } from '../workshop/MineLine.tsx'

const NONE: readonly Printer[] = []
const AXES = ['width', 'depth', 'height'] as const

/** What prints the frame: its own printer, and others beside it, whose beds the runs share. */
export function PrinterList() {
  const { putPrinters, swapPrinter } = useActions()
  const own = useAppState((state) => state.frame.printer)
  const beside = useAppState((state) => state.frame.printers) ?? NONE
  const printers = useMemo(
    () => allPrinters({ printer: own, printers: beside }).slice(1),
    [own, beside],
  )
  const add = (classId: string) => {
    const found = PRINTERS.find(({ id }) => id === classId)
    if (found === undefined) return
    putPrinters(withPrinters({ printer: own, printers }, [found]), 'print on another printer too')
  }
  return (
    <div className="printer-list">
      <h4>Printers</h4>
      <ol className="kept-list">
        <li>
          <strong>{toldWords(own.name)}</strong>
          <span className="quiet-text">
            the frame’s own; bed {own.bedMm.map((side) => showLength(side, 0)).join(' × ')}
          </span>
        </li>
        {printers.map((printer, i) => (
          <li key={printer.id} role="group" aria-label={printer.name}>
            <strong>{toldWords(printer.name)}</strong>
            {AXES.map((axis, k) => (
              <NumberBox
                key={axis}
                label={`Bed ${axis}`}
                limits={PRINTER_LIMITS.bedMm}
                value={printer.bedMm[k] ?? 0}
                digits={1}
                unit="mm"
                onChange={(side) => {
                  const [x, y, z] = printer.bedMm
                  const bedMm = [
                    k === 0 ? side : x,
                    k === 1 ? side : y,
                    k === 2 ? side : z,
                  ] as const
                  putPrinters(printers.with(i, { ...printer, bedMm }), 'measure a bed')
                }}
              />
            ))}
            <Button
              className="quiet screen-only"
              onPress={() => {
                swapPrinter(printer.id)
              }}
            >
              Make it the frame’s own
            </Button>
            <Button
              className="quiet screen-only"
              onPress={() => {
                putPrinters(printers.toSpliced(i, 1), 'print on one printer less')
              }}
            >
              Take off
            </Button>
          </li>
        ))}
      </ol>
      {printers.length >= PRINTERS_MOST ? null : (
        <div className="run-fields screen-only">
          <Choice
            label="Print on another one too"
            value={null}
            placeholder="choose its class"
            options={PRINTERS.map(({ id, name }) => ({ id, name: toldWords(name) }))}
            onChange={add}
          />
        </div>
      )}
      {printers.length === 0 ? null : (
        <div className="screen-only">
          <p className="hint">
            Each run is on one printer. All pieces are laid by the habits of the frame’s own; of the
            others speeds, draw, clock and bed count. To type their speeds, make one the frame’s own
            for a moment.
          </p>
          <MineLine kind="printers" />
        </div>
      )}
    </div>
  )
}

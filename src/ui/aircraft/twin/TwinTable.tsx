import { Button } from 'react-aria-components'
import { formatMoney, formatNumber, formatPercent } from '../../../core/figures/format.ts'
import type { TwinEntry } from '../../../core/report/types.ts'
import type { FlatTwin } from '../../../core/twin/flatTwin.ts'
import { outlineSvg } from '../../../core/twin/outlineSvg.ts'
import type { PartShape } from '../../../state/types.ts'
import { NumberBox } from '../../fields/NumberBox.tsx'
import { download } from '../../frame/download.ts'
import { pieceG, spanWords } from '../words.ts'

interface TwinTableProps {
  readonly parts: readonly TwinEntry[]
  readonly shapes: ReadonlyMap<string, PartShape>
  readonly currency: string
  /** Typed thicknesses by part id. */
  readonly thicknessMm: Readonly<Record<string, number>>
  readonly onChange: (thicknessMm: Readonly<Record<string, number>>) => void
}

/** Which parts are flat, and what each would be in plate. */
export function TwinTable({ parts, shapes, currency, thicknessMm, onChange }: TwinTableProps) {
  const staying = parts.filter(({ twin }) => twin === null)
  const near = parts.flatMap(({ name, kind, twin }) =>
    twin !== null && kind === 'bar' ? [name] : [],
  )
  return (
    <>
      <ul className="twins">
        {parts.map(({ partId, name, quantity, kind, twin }) =>
          twin === null ? null : (
            <li key={partId}>
              <div className="twin-head">
                <b>{name}</b>
                <span className="range">{kind === 'plate' ? 'flat' : 'nearly flat'}</span>
              </div>
              <div className="twin-figures">
                <span>
                  {pieceG(twin.chosen.massG.mid)} g
                  <span className="range">{quantity === 1 ? 'one piece' : `× ${quantity}`}</span>
                </span>
                <span>
                  {formatMoney(twin.cost, currency)}
                  <span className="range">{formatPercent(twin.offcutShare)} offcut</span>
                </span>
                <span>
                  {formatNumber(twin.chosen.stiffness.mid, undefined, 1)} × as stiff
                  <span className="range">{spanWords(twin.chosen.stiffness, '×', 1)}</span>
                </span>
              </div>
              <div className="twin-choice">
                <NumberBox
                  label={`Thickness of ${name}`}
                  bare
                  value={twin.chosen.thicknessMm}
                  min={0.05}
                  max={100}
                  step={0.05}
                  unit="mm"
                  onChange={(mm) => {
                    onChange({ ...thicknessMm, [partId]: mm })
                  }}
                />
                <span className="range">{thicknessWords(twin)}</span>
                <div className="button-line">
                  {stocked(twin).map((mm) => (
                    <Button
                      key={mm}
                      className="quiet"
                      aria-label={`Cut ${name} from ${mm} mm`}
                      onPress={() => {
                        onChange({ ...thicknessMm, [partId]: mm })
                      }}
                    >
                      {mm} mm
                    </Button>
                  ))}
                  {twin.typed ? (
                    <Button
                      className="quiet"
                      aria-label={`Take equal stiffness for ${name}`}
                      onPress={() => {
                        const { [partId]: _typed, ...others } = thicknessMm
                        onChange(others)
                      }}
                    >
                      equal stiffness
                    </Button>
                  ) : null}
                  <Button
                    className="quiet"
                    aria-label={`SVG outline of ${name}`}
                    onPress={() => {
                      const outline = shapes.get(partId)?.outline
                      if (!outline) return
                      const svg = outlineSvg(outline, name, twin.chosen.thicknessMm)
                      download(new Blob([svg], { type: 'image/svg+xml' }), name, '.svg')
                    }}
                  >
                    SVG outline
                  </Button>
                </div>
              </div>
            </li>
          ),
        )}
      </ul>
      {near.length === 0 ? null : (
        <p className="caution">
          A cut plate only stands in for {near.join(', ')}: the outline is not the same all the way
          up.
        </p>
      )}
      {staying.length === 0 ? null : (
        <p className="hint">
          Stay printed:{' '}
          {staying.map(({ name, words }) => `${name} (${lowerFirst(words)})`).join(', ')}.
        </p>
      )}
      <p className="hint">
        Outlines are cut half-way up the part, in true millimetres: the finished edge, nothing taken
        off for the cutter. Judged as the part lies on the bed.
      </p>
    </>
  )
}

function thicknessWords(twin: FlatTwin): string {
  const equal = `equal stiffness at ${spanWords(twin.equalMm, 'mm', 1)}`
  if (twin.typed) return `typed; ${equal}`
  return twin.above === null ? `thickest stocked; ${equal}` : `nearest stocked; ${equal}`
}

function stocked({ below, above, chosen }: FlatTwin): readonly number[] {
  return [below, above].flatMap((choice) =>
    choice === null || choice.thicknessMm === chosen.thicknessMm ? [] : [choice.thicknessMm],
  )
}

function lowerFirst(words: string): string {
  return words.charAt(0).toLowerCase() + words.slice(1).replace(/\.$/, '')
}

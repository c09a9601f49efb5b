import { Button } from 'react-aria-components'
import type { FlatTwin } from '../../../core/aircraft/twin/flatTwin.ts'
import { outlineSvg } from '../../../core/aircraft/twin/outlineSvg.ts'
import type { PartShape } from '../../../state/store/types.ts'
import { useAppState, useReadState } from '../../appContext.ts'
import { TWIN_LIMITS } from '../../../core/data/limits.ts'
import { NumberBox } from '../../fields/NumberBox.tsx'
import { download } from '../../head/download.ts'
import { usePutAircraft } from '../useAircraft.ts'
import { spanWords } from '../words.ts'
import { showLength } from '../../show.ts'
import { lengthUnit } from '../../../core/words/shownUnits.ts'
import { formatAll } from '../../../core/words/format.ts'

interface TwinChoiceProps {
  readonly partId: string
  readonly name: string
  readonly twin: FlatTwin
  readonly outline: PartShape['outline']
}

/** How thick the plate is, and its outline to take away. */
export function TwinChoice({ partId, name, twin, outline }: TwinChoiceProps) {
  const typedMm = useAppState((state) => state.frame.aircraft.twin.thicknessMm[partId])
  const read = useReadState()
  const putAircraft = usePutAircraft()
  const put = (mm: number | null) => {
    const setup = read().frame.aircraft.twin
    const { [partId]: _old, ...others } = setup.thicknessMm
    const thicknessMm = mm === null ? others : { ...others, [partId]: mm }
    putAircraft({ twin: { ...setup, thicknessMm } }, 'change the carbon twin')
  }
  return (
    <>
      <NumberBox
        label={`Thickness of ${name}`}
        bare
        limits={TWIN_LIMITS.thicknessMm}
        value={typedMm ?? twin.chosen.thicknessMm}
        step={0.05}
        unit="mm"
        onChange={put}
      />
      <span className="range">{thicknessWords(twin)}</span>
      <div className="button-line">
        {stocked(twin).map((mm) => (
          <Button
            key={mm}
            className="quiet"
            aria-label={`Cut ${name} from ${plateWords(mm)}`}
            onPress={() => {
              put(mm)
            }}
          >
            {plateWords(mm)}
          </Button>
        ))}
        {typedMm === undefined ? null : (
          <Button
            className="quiet"
            aria-label={`Take equal stiffness for ${name}`}
            onPress={() => {
              put(null)
            }}
          >
            equal stiffness
          </Button>
        )}
        {outline === null ? null : (
          <Button
            className="quiet"
            aria-label={`SVG outline of ${name}`}
            onPress={() => {
              const svg = outlineSvg(outline, name, twin.chosen.thicknessMm)
              download(new Blob([svg], { type: 'image/svg+xml' }), name, '.svg')
            }}
          >
            SVG outline
          </Button>
        )}
      </div>
    </>
  )
}

function thicknessWords(twin: FlatTwin): string {
  const equal = `equal stiffness at ${spanWords(twin.equalMm, 'mm', 1)}`
  if (twin.typed) return `typed; ${equal}`
  return twin.above === null ? `thickest stocked; ${equal}` : `nearest stocked; ${equal}`
}

/** Plates are sold by their millimetres: another unit stands behind the name. */
function plateWords(mm: number): string {
  return lengthUnit() === 'mm'
    ? `${formatAll(mm, 2)} mm`
    : `${formatAll(mm, 2)} mm (${showLength(mm, 2)})`
}

function stocked({ below, above, chosen }: FlatTwin): readonly number[] {
  return [below, above].flatMap((choice) =>
    choice === null || choice.thicknessMm === chosen.thicknessMm ? [] : [choice.thicknessMm],
  )
}

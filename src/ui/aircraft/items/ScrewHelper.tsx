import { useState } from 'react'
import { Button } from 'react-aria-components'
import { newId } from '../../../state/store/newId.ts'
import type { Item } from '../../../core/model/aircraft.ts'
import type { Part } from '../../../core/model/frame.ts'
import { catalogueItem, nutSizes, screwSizes } from '../../../core/aircraft/hardware/catalogue.ts'
import { INSERTS } from '../../../core/aircraft/hardware/data.ts'
import { insertPrint } from '../../../core/aircraft/hardware/insertPrint.ts'
import type { StackEnd, StackLayer } from '../../../core/aircraft/hardware/stack.ts'
import { stackUp } from '../../../core/aircraft/hardware/stackUp.ts'
import type { MetricSize, ScrewStandard } from '../../../core/aircraft/hardware/types.ts'
import { useAppState } from '../../appContext.ts'
import { Choice } from '../../fields/Choice.tsx'
import { HARDWARE_LIMITS, ITEM_LIMITS, narrowed } from '../../../core/data/limits.ts'
import { HelpMark } from '../../help/HelpMark.tsx'
import { NumberBox } from '../../fields/NumberBox.tsx'
import { showNumber, showLength, showMm } from '../../show.ts'
import { FigureList } from '../FigureList.tsx'
import { TextBox } from '../TextBox.tsx'
import { toldWords } from '../../../core/words/toldWords.ts'

type EndId = 'ISO 4032' | 'ISO 7040' | 'insert' | 'plastic' | 'motor'

const ENDS: readonly { readonly id: EndId; readonly name: string; readonly detail: string }[] = [
  { id: 'ISO 4032', name: 'a nut', detail: 'ISO 4032' },
  { id: 'ISO 7040', name: 'a locknut', detail: 'ISO 7040' },
  { id: 'insert', name: 'a heat-set insert', detail: 'brass' },
  { id: 'plastic', name: 'the plastic itself', detail: 'boss' },
  { id: 'motor', name: 'a motor', detail: 'tapped base' },
]
const HEADS: readonly { readonly id: ScrewStandard; readonly name: string }[] = [
  { id: 'ISO 4762', name: 'Socket head' },
  { id: 'ISO 7380-1', name: 'Button head' },
  { id: 'ISO 10642', name: 'Countersunk' },
]
const NO_PART = ''
/** With a number that stays, so that fields keep theirs. */
type NumberedLayer = StackLayer & { readonly id: number }

const LAYERS: readonly NumberedLayer[] = [
  { id: 1, name: 'Plate', thicknessMm: 3 },
  { id: 2, name: 'Arm', thicknessMm: 6 },
]

/** What the screw passes through, from the head on, to the length to buy. */
export function ScrewHelper({ onAdd }: { readonly onAdd: (item: Item) => void }) {
  const [standard, setStandard] = useState<ScrewStandard>('ISO 4762')
  const [wantedSize, setSize] = useState<MetricSize>('M3')
  const [layers, setLayers] = useState(LAYERS)
  const [washers, setWashers] = useState(0)
  const [endId, setEndId] = useState<EndId>('ISO 7040')
  const [bossMm, setBossMm] = useState(0)
  const [depthMm, setDepthMm] = useState(4)
  const [quantity, setQuantity] = useState(4)
  const sizes =
    endId === 'ISO 7040' || endId === 'ISO 4032'
      ? screwSizes(standard).filter((size) => nutSizes(endId).includes(size))
      : screwSizes(standard)
  const size = sizes.includes(wantedSize) ? wantedSize : (sizes[0] ?? 'M3')
  const parts = useAppState((state) => state.frame.parts)
  const [partId, setPartId] = useState(NO_PART)
  const part = parts.find(({ id }) => id === partId)
  const end = endOf(endId, size, bossMm, depthMm, part)
  const answer = stackUp({ standard, size, layers, washers, end, lengthMm: null })
  const { lengthMm } = answer
  const putLayer = (layer: NumberedLayer) => {
    setLayers(layers.map((each) => (each.id === layer.id ? layer : each)))
  }
  return (
    <div className="craft-inset craft-inset-wide" role="group" aria-label="Find a screw length">
      <div className="item-fields">
        <Choice label="Head" value={standard} options={HEADS} onChange={setStandard} />
        <Choice
          label="Size"
          value={size}
          options={sizes.map((id) => ({ id, name: id }))}
          onChange={setSize}
        />
        <Choice label="Bites into" value={endId} options={ENDS} onChange={setEndId} />
        <NumberBox
          label="Washers in all"
          limits={HARDWARE_LIMITS.washers}
          value={washers}
          step={1}
          onChange={setWashers}
        />
        {endId === 'insert' || endId === 'plastic' ? (
          <NumberBox
            label="Boss outside diameter"
            {...(endId === 'insert' ? { help: 'insert' as const } : {})}
            limits={HARDWARE_LIMITS.bossMm}
            value={bossMm}
            step={0.1}
            unit="mm"
            hint="0 where you have not measured it."
            onChange={setBossMm}
          />
        ) : null}
        {endId === 'insert' && parts.length > 0 ? (
          <Choice
            label="Set into"
            value={part?.id ?? NO_PART}
            options={[
              { id: NO_PART, name: 'no part named' },
              ...parts.map(({ id, name }) => ({ id, name })),
            ]}
            hint="Its walls and infill decide how the insert holds."
            onChange={setPartId}
          />
        ) : null}
        {endId === 'motor' || endId === 'plastic' || endId === 'insert' ? (
          <NumberBox
            label={endId === 'motor' ? 'Thread in the motor' : 'Depth of the hole'}
            limits={HARDWARE_LIMITS.depthMm}
            value={depthMm}
            step={0.1}
            unit="mm"
            hint={
              endId === 'motor'
                ? 'From the face to the windings: a longer screw cuts them.'
                : '0 for a hole right through.'
            }
            onChange={setDepthMm}
          />
        ) : null}
      </div>
      <div className="head-help">
        <h4>What it passes through, from the head on</h4>
        <HelpMark of="joint" />
      </div>
      <div className="stack-layers">
        {layers.map((layer) => (
          <div key={layer.id} className="stack-layer">
            <TextBox
              label={`Layer ${layer.id}`}
              value={layer.name}
              onChange={(name) => {
                putLayer({ ...layer, name })
              }}
            />
            <NumberBox
              label={`Thickness of ${layer.name}`}
              bare
              limits={HARDWARE_LIMITS.layerMm}
              value={layer.thicknessMm}
              step={0.1}
              unit="mm"
              onChange={(thicknessMm) => {
                putLayer({ ...layer, thicknessMm })
              }}
            />
          </div>
        ))}
      </div>
      <div className="button-line">
        <Button
          className="quiet"
          onPress={() => {
            const id = layers.length + 1
            setLayers([...layers, { id, name: `Layer ${id}`, thicknessMm: 2 }])
          }}
        >
          One layer more
        </Button>
        <Button
          className="quiet"
          isDisabled={layers.length < 2}
          onPress={() => {
            setLayers(layers.slice(0, -1))
          }}
        >
          One layer less
        </Button>
      </div>
      <div role="status">
        <FigureList
          of={[
            {
              words: 'Take',
              figure:
                lengthMm === null ? 'no stocked length' : `${size} × ${showNumber(lengthMm, 1)} mm`,
              strong: true,
            },
            { words: 'Layers and washers', figure: showLength(answer.gripMm, 2) },
            {
              words: 'It has to be',
              figure:
                answer.mostMm === null
                  ? `${showLength(answer.leastMm, 2)} or more`
                  : `${showMm(answer.leastMm, 2)} to ${showLength(answer.mostMm, 2)}`,
            },
            ...(answer.engagementMm === null
              ? []
              : [
                  {
                    words: 'Thread that bites',
                    figure: showLength(answer.engagementMm, 2),
                  },
                ]),
          ]}
        />
        {answer.warnings.map(({ code, text }) => (
          <p key={code} className="caution">
            {toldWords(text)}
          </p>
        ))}
      </div>
      {lengthMm === null ? null : (
        <div className="button-line">
          <NumberBox
            label="Pieces"
            limits={narrowed(ITEM_LIMITS.quantity, { min: 1 })}
            value={quantity}
            step={1}
            onChange={setQuantity}
          />
          <Button
            className="firm"
            onPress={() => {
              onAdd(
                catalogueItem(
                  { kind: 'screw', standard, size, lengthMm, material: 'steel' },
                  { id: newId(), quantity, costEach: 0 },
                ),
              )
            }}
          >
            Add in steel
          </Button>
        </div>
      )}
    </div>
  )
}

function endOf(
  id: EndId,
  size: MetricSize,
  bossMm: number,
  depthMm: number,
  part: Part | undefined,
): StackEnd {
  const boss = bossMm > 0 ? bossMm : null
  const depth = depthMm > 0 ? depthMm : null
  switch (id) {
    case 'ISO 4032':
    case 'ISO 7040':
      return { kind: 'nut', standard: id }
    case 'insert':
      return {
        kind: 'insert',
        insertMm: INSERTS[size].lengthMm,
        bossMm: boss,
        holeDepthMm: depth,
        ...(part === undefined ? {} : { print: insertPrint(part) }),
      }
    case 'plastic':
      return { kind: 'plastic', bossMm: boss, holeDepthMm: depth }
    case 'motor':
      return { kind: 'motor', depthMm }
  }
}

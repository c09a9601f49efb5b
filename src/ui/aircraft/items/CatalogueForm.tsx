import { useState } from 'react'
import { Button } from 'react-aria-components'
import { newId } from '../../../state/store/newId.ts'
import type { Item } from '../../../core/model/aircraft.ts'
import {
  catalogueEntry,
  catalogueItem,
  type CatalogueChoice,
} from '../../../core/aircraft/hardware/catalogue.ts'
import { PreweighError } from '../../../core/model/problem.ts'
import { Choice } from '../../fields/Choice.tsx'
import { HARDWARE_LIMITS, ITEM_LIMITS, narrowed } from '../../../core/data/limits.ts'
import { NumberBox } from '../../fields/NumberBox.tsx'
import { BASIS_WORDS, pieceMass } from '../words.ts'
import {
  choiceOf,
  KINDS,
  materialsOf,
  NAMED_MATERIALS,
  sizesOf,
  START,
  type Draft,
} from './catalogueDraft.ts'
import { toldWords } from '../../../core/words/toldWords.ts'

interface CatalogueFormProps {
  readonly currency: string
  readonly onAdd: (item: Item) => void
}

/** A standard part by its size: its mass is seen, with where it comes from, before it is added. */
export function CatalogueForm({ currency, onAdd }: CatalogueFormProps) {
  const [draft, setDraft] = useState<Draft>(START)
  const [quantity, setQuantity] = useState(4)
  const [costEach, setCostEach] = useState(0)
  const put = (patch: Partial<Draft>) => {
    setDraft({ ...draft, ...patch })
  }
  const kind = KINDS.find(({ id }) => id === draft.kind)
  const sizes = sizesOf(draft.kind)
  const materials = materialsOf(draft.kind)
  const size = sizes.includes(draft.size) ? draft.size : (sizes[0] ?? 'M3')
  const material = materials.includes(draft.material) ? draft.material : (materials[0] ?? 'steel')
  const choice = choiceOf({ ...draft, size, material })
  const made = tryEntry(choice)
  return (
    <div className="craft-inset craft-inset-wide" role="group" aria-label="From the catalogue">
      <div className="item-fields">
        <Choice
          label="Standard"
          value={draft.kind}
          options={KINDS.map(({ id, name, detail }) => ({ id, name, detail }))}
          onChange={(next) => {
            put({ kind: next })
          }}
        />
        {kind?.tube === true ? (
          <>
            <NumberBox
              label="Outside diameter"
              limits={HARDWARE_LIMITS.outerMm}
              value={draft.outerMm}
              step={0.1}
              unit="mm"
              onChange={(outerMm) => {
                put({ outerMm })
              }}
            />
            <NumberBox
              label="Inside diameter"
              limits={HARDWARE_LIMITS.innerMm}
              value={draft.innerMm}
              step={0.1}
              unit="mm"
              hint="0 for a rod."
              onChange={(innerMm) => {
                put({ innerMm })
              }}
            />
          </>
        ) : (
          <Choice
            label="Size"
            value={size}
            options={sizes.map((id) => ({ id, name: id }))}
            onChange={(next) => {
              put({ size: next })
            }}
          />
        )}
        {kind?.long === true ? (
          <NumberBox
            label="Length"
            limits={HARDWARE_LIMITS.lengthMm}
            value={draft.lengthMm}
            step={0.5}
            digits={1}
            unit="mm"
            isName={kind.tube !== true}
            onChange={(lengthMm) => {
              put({ lengthMm })
            }}
          />
        ) : null}
        {materials.length > 1 ? (
          <Choice
            label="Material"
            value={material}
            options={materials.map((id) => ({ id, name: NAMED_MATERIALS[id] }))}
            onChange={(next) => {
              put({ material: next })
            }}
          />
        ) : null}
        <NumberBox
          label="Pieces"
          limits={narrowed(ITEM_LIMITS.quantity, { min: 1 })}
          value={quantity}
          step={1}
          onChange={setQuantity}
        />
        <NumberBox
          label="Cost of one"
          limits={ITEM_LIMITS.costEach}
          value={costEach}
          step={0.01}
          unit={currency}
          onChange={setCostEach}
        />
      </div>
      {made.ok ? (
        <p className="catalogue-answer" role="status">
          <b>{made.entry.name}</b>
          <span>
            {pieceMass(made.entry.massG)} each, {pieceMass(made.entry.massG * quantity)} in all
          </span>
          <span className="range">
            {BASIS_WORDS[made.entry.basis]}, ±{Math.round(made.entry.spreadPct)} %:{' '}
            {made.entry.source}
          </span>
        </p>
      ) : (
        <p className="wrong-text" role="status">
          {made.words}
        </p>
      )}
      <div className="button-line">
        <Button
          className="firm"
          isDisabled={!made.ok}
          onPress={() => {
            onAdd(catalogueItem(choice, { id: newId(), quantity, costEach }))
          }}
        >
          Add to the aircraft
        </Button>
      </div>
    </div>
  )
}

function tryEntry(choice: CatalogueChoice) {
  try {
    return { ok: true, entry: catalogueEntry(choice) } as const
  } catch (error) {
    if (!(error instanceof PreweighError)) throw error
    return { ok: false, words: toldWords(`${error.message} ${error.problem.advice}`) } as const
  }
}

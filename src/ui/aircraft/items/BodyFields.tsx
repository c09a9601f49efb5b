import { BODY_LIMITS } from '../../../core/data/limits.ts'
import { holesFitBody, isRound } from '../../../core/joints/itemMesh.ts'
import { BODY_DEFAULTS, PATTERN_SHELF } from '../../../core/joints/patternShelf.ts'
import type { BodyHoles, BodyKind, ItemBody } from '../../../core/model/aircraft.ts'
import { JOINT_THREADS, type JointThread } from '../../../core/model/joints.ts'
import { Choice, type Option } from '../../fields/Choice.tsx'
import { NumberBox } from '../../fields/NumberBox.tsx'

const KINDS: readonly Option<BodyKind | 'none'>[] = [
  { id: 'none', name: 'no body, only a mass' },
  { id: 'motor', name: 'motor' },
  { id: 'board', name: 'board or stack' },
  { id: 'camera', name: 'camera' },
  { id: 'pack', name: 'pack' },
  { id: 'prop', name: 'propeller' },
  { id: 'other', name: 'another thing' },
]
const LAYOUTS: readonly Option<BodyHoles['layout'] | 'none'>[] = [
  { id: 'none', name: 'none: strap, pad or tape' },
  { id: 'rectangle', name: 'four at corners' },
  { id: 'cross', name: 'four in a cross' },
  { id: 'sides', name: 'one in each side' },
]
const THREADS = JOINT_THREADS.map((size): Option<JointThread> => ({ id: size, name: size }))
const FOUR: BodyHoles = { layout: 'rectangle', aMm: 16, bMm: 16, thread: 'M3', depthMm: 4 }

interface BodyFieldsProps {
  readonly body: ItemBody | undefined
  readonly onChange: (body: ItemBody | undefined) => void
}

/** The simple body of a bought thing: what it is, how large, and by which holes it is held. */
export function BodyFields({ body, onChange }: BodyFieldsProps) {
  return (
    <>
      <Choice
        label="Its body"
        value={body?.kind ?? 'none'}
        options={KINDS}
        onChange={(kind) => {
          onChange(kind === 'none' ? undefined : BODY_DEFAULTS[kind])
        }}
      />
      {body === undefined ? null : <Sizes body={body} onChange={onChange} />}
      {body === undefined ? null : (
        <p className="hint item-body-hint">
          {holesFitBody(body)
            ? 'To be joined under Frame, Put it together. What is filled in is usual: measure yours.'
            : 'Its holes lie outside of it: it is drawn without them.'}
        </p>
      )}
    </>
  )
}

interface OfBodyProps {
  readonly body: ItemBody
  readonly onChange: (body: ItemBody) => void
}

function Sizes({ body, onChange }: OfBodyProps) {
  const { sizeMm, kind, shaftMm, holes } = body
  const [along, across, high] = sizeMm
  const round = isRound(body)
  const size = (label: string, value: number, next: (mm: number) => ItemBody['sizeMm']) => (
    <NumberBox
      label={label}
      limits={BODY_LIMITS.sizeMm}
      value={value}
      step={1}
      digits={1}
      unit="mm"
      onChange={(mm) => {
        onChange({ ...body, sizeMm: next(mm) })
      }}
    />
  )
  return (
    <>
      {round ? (
        size('Diameter', along, (mm) => [mm, mm, high])
      ) : (
        <>
          {size('Long', along, (mm) => [mm, across, high])}
          {size('Wide', across, (mm) => [along, mm, high])}
        </>
      )}
      {size('High', high, (mm) => [along, across, mm])}
      {round ? (
        <NumberBox
          label={kind === 'prop' ? 'Bore' : 'Shaft'}
          limits={BODY_LIMITS.shaftMm}
          value={shaftMm}
          step={0.5}
          digits={2}
          unit="mm"
          onChange={(mm) => {
            onChange({ ...body, shaftMm: mm })
          }}
        />
      ) : null}
      {kind === 'prop' ? null : <Holes body={body} holes={holes} onChange={onChange} />}
    </>
  )
}

function Holes({ body, holes, onChange }: OfBodyProps & { readonly holes: BodyHoles | null }) {
  const put = (next: BodyHoles | null) => {
    onChange({ ...body, holes: next })
  }
  const shelf = PATTERN_SHELF.filter(({ kind }) => kind === body.kind)
  const onShelf = shelf.find((each) => isAlike(each.holes, holes))
  const bored = (label: string, key: 'aMm' | 'bMm', own: BodyHoles) => (
    <NumberBox
      label={label}
      limits={BODY_LIMITS.patternMm}
      value={own[key]}
      step={0.5}
      digits={2}
      unit="mm"
      onChange={(mm) => {
        put({ ...own, [key]: mm })
      }}
    />
  )
  return (
    <>
      {shelf.length > 1 ? (
        <Choice
          label="Usual holes"
          value={onShelf?.name ?? null}
          placeholder={holes === null ? 'none' : 'typed'}
          options={shelf.map(({ name, holes: { thread }, mark }) => ({
            id: name,
            name: `${name}, ${thread}`,
            detail: mark === 'memory' ? 'from memory' : '',
          }))}
          onChange={(name) => {
            put(shelf.find((each) => each.name === name)?.holes ?? null)
          }}
        />
      ) : null}
      <Choice
        label="Its holes"
        value={holes?.layout ?? 'none'}
        options={LAYOUTS}
        onChange={(layout) => {
          put(layout === 'none' ? null : { ...(holes ?? FOUR), layout })
        }}
      />
      {holes === null ? null : (
        <>
          {holes.layout === 'sides' ? null : (
            <>
              {bored(holes.layout === 'cross' ? 'Across the cross' : 'Holes apart', 'aMm', holes)}
              {bored('And the other way', 'bMm', holes)}
            </>
          )}
          <Choice
            label="Thread"
            value={holes.thread}
            options={THREADS}
            onChange={(thread) => {
              put({ ...holes, thread })
            }}
          />
          <Choice
            label="Its screws"
            value={holes.depthMm === null ? 'through' : 'blind'}
            options={[
              { id: 'through', name: 'go right through it' },
              { id: 'blind', name: 'end in it' },
            ]}
            onChange={(way) => {
              put({ ...holes, depthMm: way === 'through' ? null : FOUR.depthMm })
            }}
          />
          {holes.depthMm === null ? null : (
            <NumberBox
              label={body.kind === 'motor' ? 'Thread before the windings' : 'Thread deep'}
              limits={BODY_LIMITS.depthMm}
              value={holes.depthMm}
              step={0.5}
              digits={2}
              unit="mm"
              onChange={(depthMm) => {
                put({ ...holes, depthMm })
              }}
            />
          )}
        </>
      )}
    </>
  )
}

function isAlike(one: BodyHoles, other: BodyHoles | null): boolean {
  return (
    other !== null &&
    one.layout === other.layout &&
    one.aMm === other.aMm &&
    one.bMm === other.bMm &&
    one.thread === other.thread
  )
}

import { memo, useState } from 'react'
import { Button, Switch } from 'react-aria-components'
import type { Place } from '../../../core/model/aircraft.ts'
import { armPattern } from '../../../core/aircraft/balance/places.ts'
import { isOpenLoop, type PlacedPieces } from '../../../core/joints/placePieces.ts'
import type { Part } from '../../../core/model/frame.ts'
import { formatNumber } from '../../../core/words/format.ts'
import { Choice } from '../../fields/Choice.tsx'
import { useAppState } from '../../appContext.ts'
import { PIECES_LIMITS, PLACE_LIMITS, TURN_LIMITS, narrowed } from '../../../core/data/limits.ts'
import { NumberBox } from '../../fields/NumberBox.tsx'
import { showMm, trueMinus } from '../../show.ts'
import { lengthUnit } from '../../../core/words/shownUnits.ts'
import { useFramePlaces } from '../../useFramePlaces.ts'
import { FoldOut } from '../FoldOut.tsx'
import { usePutAircraft } from '../useAircraft.ts'
import { formatAddress } from '../../set/address.ts'
import { DrawnPlaces } from './DrawnPlaces.tsx'

/** Which piece sits where: one by one, or as arms round a circle. */
export const PlaceFields = memo(function PlaceFields() {
  const places = useAppState((state) => state.frame.aircraft.places)
  const parts = useAppState((state) => state.frame.parts)
  const putAircraft = usePutAircraft()
  const [openAt, setOpenAt] = useState<number | null>(null)
  const [wantedId, setPartId] = useState<string | null>(null)
  const part = parts.find(({ id }) => id === wantedId) ?? parts[0]
  const put = (next: readonly Place[], what: string) => {
    putAircraft({ places: next }, what)
  }
  const nameOf = (partId: string) => parts.find(({ id }) => id === partId)?.name ?? 'removed part'
  const placed = useFramePlaces()
  if (part === undefined) return null
  const own = places.filter(({ partId }) => partId === part.id).length
  return (
    <>
      <h4>Places</h4>
      <p className="hint">
        <a href={formatAddress('frame')}>Put the frame together</a> by its holes, and most places
        follow; or type them here.
      </p>
      <Choice
        label="Printed part"
        value={part.id}
        options={parts.map(({ id, name, quantity }) => ({ id, name, detail: `${quantity} ×` }))}
        onChange={setPartId}
      />
      <div className="button-line">
        <Button
          className="outlined"
          isDisabled={own >= part.quantity}
          onPress={() => {
            const place: Place = {
              partId: part.id,
              positionMm: [0, 0, 0],
              rotateDeg: [0, 0, 0],
              mirrored: own >= part.quantity - part.mirrored,
            }
            put([...places, place], `place “${part.name}”`)
            setOpenAt(places.length)
          }}
        >
          Place one piece
        </Button>
        {placed.places.some((place) => place.partId === part.id && !places.includes(place)) ? (
          <span className="hint">Joints say where it is; undo them to place it by hand.</span>
        ) : null}
        {own >= part.quantity ? <span className="hint">all {part.quantity} placed</span> : null}
      </div>
      <PatternFields
        key={part.id}
        part={part}
        onPlace={(made) => {
          put(
            [...places.filter(({ partId }) => partId !== part.id), ...made],
            `place “${part.name}” round a circle`,
          )
          setOpenAt(null)
        }}
      />
      <DrawnPlaces
        parts={parts}
        onPlace={(made) => {
          const anew = new Set(made.map(({ partId }) => partId))
          put(
            [...places.filter(({ partId }) => !anew.has(partId)), ...made],
            'place parts as in the 3MF',
          )
          setOpenAt(null)
        }}
      />
      <p className="hint">
        How far the part’s own origin lands from the middle of the aircraft, in the axes it was
        drawn in.
      </p>
      <ul className="places">
        {places.map((place, at) => {
          const count = places
            .slice(0, at + 1)
            .filter((each) => each.partId === place.partId).length
          const name = `${nameOf(place.partId)} ${count}`
          return (
            <li key={name}>
              <Button
                className="craft-opener"
                aria-expanded={openAt === at}
                onPress={() => {
                  setOpenAt(openAt === at ? null : at)
                }}
              >
                {name}
                <span aria-hidden="true" className="caret" />
              </Button>
              <span className="range">{placeWords(place)}</span>
              {openAt === at ? (
                <OnePlace
                  name={name}
                  place={place}
                  onChange={(next) => {
                    put(places.with(at, next), `move ${name}`)
                  }}
                  onRemove={() => {
                    put(places.toSpliced(at, 1), `take the place of ${name} away`)
                    setOpenAt(null)
                  }}
                />
              ) : null}
            </li>
          )
        })}
      </ul>
      <JointedPlaces placed={placed} typed={places} nameOf={nameOf} />
    </>
  )
})

interface JointedPlacesProps {
  readonly placed: PlacedPieces
  readonly typed: readonly Place[]
  readonly nameOf: (partId: string) => string
}

/** Pieces whose places follow from joints, and joints that cannot close. */
function JointedPlaces({ placed, typed, nameOf }: JointedPlacesProps) {
  const own = new Set(typed)
  const lines = placed.places.map((place, at) => {
    const count = placed.places
      .slice(0, at + 1)
      .filter((each) => each.partId === place.partId).length
    return { place, name: `${nameOf(place.partId)} ${count}` }
  })
  const jointed = lines.filter(({ place }) => !own.has(place))
  const open = placed.loops.filter(isOpenLoop)
  if (jointed.length === 0) return null
  return (
    <>
      <p className="hint">By joints, moving with the piece they hang on:</p>
      <ul className="joint-list" aria-label="Placed by joints">
        {jointed.map(({ place, name }) => (
          <li key={name}>
            <span>{name}</span>
            <span className="range">{placeWords(place)}</span>
          </li>
        ))}
      </ul>
      {open.map(({ jointId, misfitMm }) => (
        <p className="caution" key={jointId}>
          A ring of joints cannot close: its last one is {showMm(misfitMm, 2)} {lengthUnit()} off.
        </p>
      ))}
    </>
  )
}

interface PatternFieldsProps {
  readonly part: Part
  readonly onPlace: (places: readonly Place[]) => void
}

function PatternFields({ part, onPlace }: PatternFieldsProps) {
  const [count, setCount] = useState(part.quantity)
  const [radiusMm, setRadius] = useState(0)
  const [firstDeg, setFirst] = useState(45)
  const [heightMm, setHeight] = useState(0)
  return (
    <FoldOut opens="Place them round a circle" about={`${part.name} round a circle`}>
      {(fold) => (
        <>
          <NumberBox
            label="Pieces"
            limits={narrowed(PIECES_LIMITS.quantity, { max: part.quantity })}
            value={count}
            step={1}
            onChange={setCount}
          />
          <NumberBox
            label="Radius to its origin"
            limits={PLACE_LIMITS.radiusMm}
            value={radiusMm}
            step={1}
            digits={1}
            unit="mm"
            onChange={setRadius}
          />
          <NumberBox
            label="First one, from the nose to the left"
            limits={TURN_LIMITS}
            value={firstDeg}
            step={1}
            digits={1}
            unit="°"
            onChange={setFirst}
          />
          <NumberBox
            label="Height"
            limits={PLACE_LIMITS.positionMm}
            value={heightMm}
            step={1}
            digits={1}
            unit="mm"
            onChange={setHeight}
          />
          <div className="button-line">
            <Button
              className="outlined"
              onPress={() => {
                const positionMm = [0, 0, heightMm] as const
                onPlace(armPattern({ partId: part.id, count, radiusMm, firstDeg, positionMm }))
                fold()
              }}
            >
              Place {count} evenly
            </Button>
          </div>
        </>
      )}
    </FoldOut>
  )
}

interface OnePlaceProps {
  readonly name: string
  readonly place: Place
  readonly onChange: (place: Place) => void
  readonly onRemove: () => void
}

const MOVES = ['Forward', 'Left', 'Up'] as const
const TURNS = ['Turned about x', 'Turned about y', 'Turned about z'] as const

function OnePlace({ name, place, onChange, onRemove }: OnePlaceProps) {
  return (
    <div className="craft-inset" role="group" aria-label={`Place of ${name}`}>
      {MOVES.map((label, axis) => (
        <NumberBox
          key={label}
          label={label}
          limits={PLACE_LIMITS.positionMm}
          value={place.positionMm[axis] ?? 0}
          step={1}
          digits={1}
          unit="mm"
          onChange={(mm) => {
            const [x, y, z] = place.positionMm.with(axis, mm)
            onChange({ ...place, positionMm: [x ?? 0, y ?? 0, z ?? 0] })
          }}
        />
      ))}
      {TURNS.map((label, axis) => (
        <NumberBox
          key={label}
          label={label}
          limits={TURN_LIMITS}
          value={place.rotateDeg[axis] ?? 0}
          step={1}
          digits={1}
          unit="°"
          onChange={(degrees) => {
            const [x, y, z] = place.rotateDeg.with(axis, degrees)
            onChange({ ...place, rotateDeg: [x ?? 0, y ?? 0, z ?? 0] })
          }}
        />
      ))}
      <Switch
        className="switch"
        isSelected={place.mirrored}
        onChange={(mirrored) => {
          onChange({ ...place, mirrored })
        }}
      >
        <span className="switch-label">Mirrored first</span>
        <span className="switch-track" aria-hidden="true" />
      </Switch>
      <div className="button-line">
        <Button className="quiet" onPress={onRemove}>
          Take its place away
        </Button>
      </div>
    </div>
  )
}

function placeWords({ positionMm, rotateDeg, mirrored }: Place): string {
  const numbers = (values: readonly number[]) =>
    values.map((value) => trueMinus(formatNumber(value, undefined, 1))).join(', ')
  const turned = rotateDeg.some((degrees) => degrees !== 0) ? `, turned ${numbers(rotateDeg)}°` : ''
  const at = positionMm.map((mm) => trueMinus(showMm(mm, 1))).join(', ')
  return `${at} ${lengthUnit()}${turned}${mirrored ? ', mirrored' : ''}`
}

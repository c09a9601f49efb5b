import { useState } from 'react'
import { Button } from 'react-aria-components'
import type { Place } from '../../../core/model/aircraft.ts'
import { placesAsDrawn, type FileNose } from '../../../core/mesh/split/drawnPlace.ts'
import type { Part } from '../../../core/model/frame.ts'
import type { Vec3 } from '../../../core/model/mesh.ts'
import { Choice } from '../../fields/Choice.tsx'
import { PLACE_LIMITS } from '../../../core/data/limits.ts'
import { NumberBox } from '../../fields/NumberBox.tsx'

interface DrawnPlacesProps {
  readonly parts: readonly Part[]
  readonly onPlace: (places: readonly Place[]) => void
}

const NOSES: readonly { readonly id: FileNose; readonly name: string }[] = [
  { id: 'x', name: 'x of the file' },
  { id: 'y', name: 'y of the file' },
  { id: '-x', name: 'x, backwards' },
  { id: '-y', name: 'y, backwards' },
]
const AXES = ['x', 'y', 'z'] as const

/** Takes over where the build of a 3MF puts its pieces. Drawn only where a part came out of one. */
export function DrawnPlaces({ parts, onPlace }: DrawnPlacesProps) {
  const [nose, setNose] = useState<FileNose>('x')
  const [middleMm, setMiddle] = useState<Vec3>([0, 0, 0])
  const known = parts.filter(({ drawnPlaces = [] }) => drawnPlaces.length > 0)
  if (known.length === 0) return null
  const places = placesAsDrawn(known, nose, middleMm)
  return (
    <div className="craft-inset" role="group" aria-label="Places in the 3MF">
      <p className="hint">
        The 3MF says where {places.length} {places.length === 1 ? 'piece goes' : 'pieces go'}:{' '}
        {known.map(({ name }) => name).join(', ')}. Right only if it was drawn assembled; many files
        hold how parts lie on the bed.
      </p>
      <Choice label="The nose points along" value={nose} options={NOSES} onChange={setNose} />
      {AXES.map((name, axis) => (
        <NumberBox
          key={name}
          label={`Middle of the motors, ${name} of the file`}
          limits={PLACE_LIMITS.positionMm}
          value={middleMm[axis] ?? 0}
          step={1}
          digits={1}
          unit="mm"
          onChange={(mm) => {
            const [x, y, z] = middleMm.with(axis, mm)
            setMiddle([x ?? 0, y ?? 0, z ?? 0])
          }}
        />
      ))}
      <div className="button-line">
        <Button
          className="outlined"
          onPress={() => {
            onPlace(places)
          }}
        >
          Place {places.length === 1 ? 'it' : `${places.length} pieces`} as in the 3MF
        </Button>
      </div>
    </div>
  )
}

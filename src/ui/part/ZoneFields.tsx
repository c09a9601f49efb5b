import { Button } from 'react-aria-components'
import { ZONE_PCT_LIMITS, ZONES_MOST } from '../../core/data/limits.ts'
import type { Census } from '../../core/model/census.ts'
import type { Part, PartZone } from '../../core/model/frame.ts'
import { useActions } from '../appContext.ts'
import { NumberBox } from '../fields/NumberBox.tsx'
import { PickButton } from '../intake/PickButton.tsx'

interface ZoneFieldsProps {
  readonly part: Part
  /** Of the present settings; null until their layers are counted. */
  readonly census: Census | null
}

/** Meshes inside which the part has an infill of its own: an arm's root, the bays of a wing. */
export function ZoneFields({ part, census }: ZoneFieldsProps) {
  const { addZones } = useActions()
  const { id, zones } = part
  return (
    <div
      className="zone-field"
      role="group"
      aria-label="Zones with their own infill"
      data-zones-of={id}
    >
      <span>Zones with their own infill</span>
      {zones.length >= ZONES_MOST ? null : (
        <PickButton
          className="quiet"
          accept=".stl,.obj,.3mf"
          onPick={({ files }) => void addZones(id, files)}
        >
          Add a zone
        </PickButton>
      )}
      {zones.length === 0 ? null : (
        <ul className="zone-list">
          {zones.map((zone, i) => (
            <ZoneLine
              key={zone.meshHash}
              partId={id}
              zone={zone}
              isLast={i === zones.length - 1}
              isEmpty={census !== null && (census.zones[i] ?? null) === null}
            />
          ))}
        </ul>
      )}
      <p className="hint">{zones.length > 1 ? OVERLAP_WORDS : ZONE_WORDS}</p>
    </div>
  )
}

const ZONE_WORDS =
  'Choose or drop meshes here. A zone is a mesh drawn in the part’s own place and unit, ' +
  'such as a block around an arm’s root. Walls and skins stay as they are.'
const OVERLAP_WORDS =
  'Where two zones overlap, the lower one in the list holds. Walls and skins stay as they are.'

interface ZoneLineProps {
  readonly partId: string
  readonly zone: PartZone
  readonly isLast: boolean
  /** No infill room of the part is left to it. */
  readonly isEmpty: boolean
}

function ZoneLine({ partId, zone, isLast, isEmpty }: ZoneLineProps) {
  const { dropZone, lowerZone, setZonePct } = useActions()
  const { fileName, meshHash, infillPct } = zone
  return (
    <li>
      <span className="file-name">{fileName}</span>
      <NumberBox
        label={`Infill in ${fileName}`}
        bare
        limits={ZONE_PCT_LIMITS}
        value={infillPct}
        step={1}
        digits={1}
        unit="%"
        onChange={(pct) => {
          setZonePct(partId, meshHash, pct)
        }}
      />
      {isLast ? (
        <span />
      ) : (
        <Button
          className="quiet"
          aria-label={`Move ${fileName} down`}
          onPress={() => {
            lowerZone(partId, meshHash)
          }}
        >
          Down
        </Button>
      )}
      <Button
        className="quiet"
        aria-label={`Remove ${fileName}`}
        onPress={() => {
          dropZone(partId, meshHash)
        }}
      >
        Remove
      </Button>
      {isEmpty ? (
        <p className="caution">
          No infill room of the part is left to this zone, so it changes nothing. Draw it where the
          part is, in the same axes and unit, and not inside a later zone.
        </p>
      ) : null}
    </li>
  )
}

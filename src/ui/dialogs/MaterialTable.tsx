import { Button } from 'react-aria-components'
import { priceErrors } from '../../core/doubt/costFactors.ts'
import { rangeOfFigure } from '../../core/doubt/figureDoubt.ts'
import type { Material, Sourced } from '../../core/model/figures.ts'
import { showFixed, showNumber } from '../show.ts'
import { SourceTip } from './SourceTip.tsx'

interface MaterialTableProps {
  readonly materials: readonly Material[]
  readonly currency: string
  readonly editedId: string | null
  readonly onEdit: (id: string) => void
}

export function MaterialTable({ materials, currency, editedId, onEdit }: MaterialTableProps) {
  return (
    <div className="table-scroll" role="region" aria-label="List of materials" tabIndex={0}>
      <table className="list-table">
        <thead>
          <tr>
            <th scope="col">Material</th>
            <th scope="col" className="figures">
              Density <small>g/cm³</small>
            </th>
            <th scope="col" className="figures">
              Price <small>{currency}/kg</small>
            </th>
            <th scope="col" className="figures">
              Stiffness <small>GPa</small>
            </th>
            <th scope="col" className="figures">
              Strength <small>MPa in plane</small>
            </th>
            <th scope="col" className="figures">
              across <small>MPa</small>
            </th>
            <th scope="col" className="figures">
              Heat <small>°C</small>
            </th>
            <th scope="col" className="figures">
              Nozzle <small>°C</small>
            </th>
            <th scope="col" className="figures">
              Bed <small>°C</small>
            </th>
            <th scope="col" className="figures">
              Shrinks <small>%</small>
            </th>
            <th scope="col">
              <span className="unseen">Edit</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {materials.map((material) => (
            <tr key={material.id} aria-current={material.id === editedId ? 'true' : undefined}>
              <th scope="row">{material.name}</th>
              <td className="figures">
                {showFixed(material.densityGCm3.value)}
                <SourceTip of={material.densityGCm3} what={`the density of ${material.name}`} />
                <span className="range">{material.densityRangeGCm3.map(showFixed).join('–')}</span>
              </td>
              <td className="figures">
                {showNumber(material.pricePerKg.value, 2)}
                <SourceTip of={material.pricePerKg} what={`the price of ${material.name}`} />
                <span className="range">{priceSpan(material)}</span>
              </td>
              <Cell of={material.youngsGPa} digits={2} what={`the stiffness of ${material.name}`} />
              <Cell
                of={material.strengthInPlaneMPa}
                digits={1}
                what={`the strength in plane of ${material.name}`}
              />
              <Cell
                of={material.strengthAcrossMPa}
                digits={1}
                what={`the strength across layers of ${material.name}`}
              />
              <Cell
                of={material.heatLimitC}
                digits={1}
                what={`the heat limit of ${material.name}`}
              />
              <Cell of={material.nozzleC} digits={1} what={`the nozzle for ${material.name}`} />
              <Cell of={material.bedC} digits={1} what={`the bed for ${material.name}`} />
              <Cell
                of={material.shrinkagePct}
                digits={2}
                what={`the shrinkage of ${material.name}`}
              />
              <td>
                <Button
                  className="quiet"
                  aria-label={`Edit ${material.name}`}
                  onPress={() => {
                    onEdit(material.id)
                  }}
                >
                  Edit
                </Button>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}

/** From–to while the spool's own price is not typed. */
function priceSpan(material: Material): string | null {
  const shared = priceErrors(material)
  if (shared.length === 0) return null
  const { low, high } = rangeOfFigure(material.pricePerKg.value, { shared, own: 0 })
  return `${showNumber(low, 1)}–${showNumber(high, 1)}`
}

interface CellProps {
  readonly of: Sourced
  readonly digits: number
  readonly what: string
}

function Cell({ of, digits, what }: CellProps) {
  return (
    <td className="figures">
      {showNumber(of.value, digits)}
      <SourceTip of={of} what={what} />
    </td>
  )
}

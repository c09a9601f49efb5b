import { useState } from 'react'
import { RECIPE_LIMITS, times } from '../../core/data/limits.ts'
import type { Recipe } from '../../core/model/settings.ts'
import { NumberBox } from '../fields/NumberBox.tsx'
import { showLength } from '../show.ts'
import type { PartEdit } from './usePartEdit.ts'

interface WallFieldProps {
  readonly recipe: Recipe
  readonly write: PartEdit
}

/** Walls as a count, with the millimetres they make: one line, "4 lines = 1.6 mm". */
export function WallField({ recipe, write }: WallFieldProps) {
  return (
    <NumberBox
      label="Walls"
      help="wall"
      limits={RECIPE_LIMITS.walls}
      value={recipe.walls}
      step={1}
      unit={`${recipe.walls === 1 ? 'line' : 'lines'} = ${showLength(recipe.walls * recipe.lineMm, 2)}`}
      onChange={(walls) => {
        write.edit({ recipe: { walls } })
      }}
    />
  )
}

/** The same as millimetres; the count is what is kept, and what was typed in between is told. */
export function WallThicknessField({ recipe, write }: WallFieldProps) {
  const { walls, lineMm } = recipe
  const [askedMm, setAskedMm] = useState<number | null>(null)
  const isBetween =
    askedMm !== null &&
    wallsOf(askedMm, lineMm) === walls &&
    Math.abs(askedMm - walls * lineMm) > LEAST_MM
  return (
    <NumberBox
      label="Wall thickness"
      limits={times(RECIPE_LIMITS.walls, lineMm)}
      value={walls * lineMm}
      step={lineMm}
      unit="mm"
      {...(isBetween
        ? {
            hint: `Walls are whole lines: nearest to ${showLength(askedMm, 2)} ${lineWords(walls)}.`,
          }
        : {})}
      onChange={(mm) => {
        setAskedMm(mm)
        write.edit({ recipe: { walls: wallsOf(mm, lineMm) } })
      }}
    />
  )
}

/** What two decimals of a millimetre do not show. */
const LEAST_MM = 0.005

function wallsOf(mm: number, lineMm: number): number {
  return Math.round(mm / lineMm)
}

function lineWords(walls: number): string {
  return walls === 1 ? 'is 1 line' : `are ${walls} lines`
}

import '../styles/habits.css'
import type { ReactNode } from 'react'
import type { Habits } from '../../core/model/habits.ts'
import { HABIT_DRAWINGS } from '../dialogs/habits/habitDrawings.tsx'
import type { HelpWord } from './helpWords.ts'

/** Words that are habits of the printer too are drawn as there. */
const HABITS: Partial<Readonly<Record<HelpWord, keyof Habits>>> = {
  strand: 'strandShare',
  'gap line': 'gapLines',
  hold: 'holdMm',
  bead: 'bead',
}

/** A bar cut open: its outline, and in it what is meant. */
const BAR = <path className="body" d="M8 10H64V38H8Z" />
const WALLS = 'M8 10H14V38H8ZM58 10H64V38H58Z'
const SKINS = 'M14 10H58V14H14ZM14 34H58V38H14Z'
const GRID = 'M20 14V34M28 14V34M36 14V34M44 14V34M52 14V34'

const DRAWINGS: Partial<Readonly<Record<HelpWord, ReactNode>>> = {
  wall: (
    <>
      <path className="laid" d={SKINS} />
      <path className="told" d={WALLS} />
      {BAR}
    </>
  ),
  skin: (
    <>
      <path className="laid" d={WALLS} />
      <path className="told" d={SKINS} />
      {BAR}
    </>
  ),
  infill: (
    <>
      <path className="laid" d={`${WALLS}${SKINS}`} />
      <path className="told-way" d={GRID} />
      {BAR}
    </>
  ),
  'first layer': (
    <>
      <path className="laid" d="M14 10H58V17H14ZM14 17H58V24H14ZM14 24H58V31H14Z" />
      <path className="told" d="M12 31H60V41H12Z" />
      <path className="body" d="M4 41H68" />
    </>
  ),
  layer: (
    <>
      <path className="laid" d="M14 10H58V17H14ZM14 24H58V31H14ZM14 31H58V38H14Z" />
      <path className="told" d="M14 17H58V24H14Z" />
      <path className="body" d="M4 38H68" />
    </>
  ),
  support: (
    <>
      <path className="laid" d="M10 8H62V16H26V40H10Z" />
      <path className="told-way" d="M34 18V40M42 18V40M50 18V40M58 18V40" />
      <path className="body" d="M4 41H68" />
    </>
  ),
  brim: (
    <>
      <path className="laid" d="M22 8H50V40H22Z" />
      <path className="told" d="M6 36H22V40H6ZM50 36H66V40H50Z" />
      <path className="body" d="M2 41H70" />
    </>
  ),
  range: (
    <>
      <path className="told" d="M20 14H52V32H20Z" />
      <path className="body" d="M4 32H68M8 32V26M20 32V28M32 32V26M44 32V28M56 32V26M68 32V28" />
      <path className="told-way" d="M34 10V32" />
    </>
  ),
  odds: (
    <>
      <path className="told" d="M8 40C24 40 26 10 36 10C40 10 43 15 46 21V40Z" />
      <path className="body" d="M8 40C24 40 26 10 36 10S48 40 64 40M46 6V42M4 40H68" />
    </>
  ),
  joint: (
    <>
      <path className="laid" d="M8 16H64V25H8ZM8 25H64V34H8Z" />
      <path className="told" d="M28 9H44V16H40V38H32V16H28Z" />
    </>
  ),
  insert: (
    <>
      <path className="laid" d="M18 8H54V40H18Z" />
      <path className="told" d="M28 8H33V30H28ZM39 8H44V30H39Z" />
    </>
  ),
}

/** A picture where one says it sooner than words. */
export function HelpPicture({ of }: { readonly of: HelpWord }) {
  const habit = HABITS[of]
  const drawing = habit === undefined ? DRAWINGS[of] : HABIT_DRAWINGS[habit].drawing
  return drawing === undefined ? null : (
    <svg className="habit-picture" viewBox="0 0 72 48" aria-hidden="true">
      {drawing}
    </svg>
  )
}

import type { Recipe } from '../model/settings.ts'
import {
  formatHours,
  formatMass,
  formatMoney,
  formatNumber,
  formatWithUnit,
} from '../words/format.ts'
import type { Binding } from './whyNone.ts'

/** Settings that are told where they differ. */
type Told = Pick<Recipe, 'walls' | 'topSkins' | 'bottomSkins' | 'infillPct' | 'layerMm'>

/** What of a way is not as it stands, in a few words; nothing where all is. */
export function changeWords(
  now: Told & { readonly material: string },
  then: Told & { readonly material: string },
  locale?: string,
): readonly string[] {
  const words: string[] = []
  const count = (value: number, one: string): string =>
    `${formatNumber(value, locale, 0)} ${value === 1 ? one : `${one}s`}`
  if (then.walls !== now.walls) words.push(count(then.walls, 'wall'))
  if (then.topSkins !== now.topSkins || then.bottomSkins !== now.bottomSkins) {
    words.push(
      then.topSkins === then.bottomSkins
        ? count(then.topSkins, 'skin')
        : `${then.topSkins} and ${then.bottomSkins} skins`,
    )
  }
  if (then.infillPct !== now.infillPct) {
    words.push(`${formatNumber(then.infillPct, locale, 1)} % infill`)
  }
  if (then.layerMm !== now.layerMm) {
    words.push(`layers of ${formatWithUnit(then.layerMm, 'mm', locale)}`)
  }
  if (then.material !== now.material) words.push(then.material)
  return words
}

/**
 * Why nothing was found, a sentence a limit, those first that stand in the way alone.
 *
 * @param nameOf of a part by its id.
 */
export function bindingWords(
  bindings: readonly Binding[],
  currency: string,
  nameOf: (partId: string) => string,
  locale?: string,
): readonly string[] {
  const told = ({ limit }: Binding, value: number): string => {
    if (limit === 'massG') return formatMass(value, locale)
    if (limit === 'timeS') return formatHours(value, locale)
    if (limit === 'cost') return formatMoney(value, currency, locale)
    if (limit === 'deflectionMm') return formatWithUnit(value, 'mm', locale)
    if (limit === 'firstHz') return `${formatNumber(value, locale, 0)} Hz`
    return `${formatNumber(100 * value, locale, 0)} %`
  }
  const subject = ({ limit, partId }: Binding): string => {
    const name = partId === undefined ? '' : nameOf(partId)
    if (limit === 'deflectionMm') return `How far ${name} gives stands in the way`
    if (limit === 'firstHz') return `How ${name} rings stands in the way`
    return limit === 'stiffness' ? 'Stiffness stands in the way' : STAND_IN_THE_WAY[limit]
  }
  const alone = bindings.filter(
    ({ reachable }) => reachable !== null && reachable > 0 && Number.isFinite(reachable),
  )
  if (alone.length > 0) {
    return alone.map((one) => {
      const { limit, asked, reachable } = one
      const best = reachable ?? asked
      if (limit === 'stiffness') {
        return (
          `${subject(one)}: with all else as asked, ` +
          `${told(one, best)} of what is asked of it can be kept.`
        )
      }
      const [end, by] = limit === 'firstHz' ? ['most', 'less'] : ['least', 'more']
      return (
        `${subject(one)}: with all else as asked the ${end} is ${told(one, best)}, ` +
        `${told(one, Math.abs(best - asked))} ${by} than the ${told(one, asked)} asked for.`
      )
    })
  }
  const isLeast = (limit: Binding['limit']): boolean => limit === 'stiffness' || limit === 'firstHz'
  const beyond = bindings.filter(({ limit, asked, alone: best }) =>
    isLeast(limit) ? best < asked : !(best <= asked),
  )
  const words = beyond.map((one) => {
    const { limit, asked, alone: best, partId } = one
    if (limit === 'stiffness') {
      return `Stiffness is out of reach: the stiffest there is has ${told(one, best)} of what is asked.`
    }
    const whose = partId === undefined ? '' : ` for ${nameOf(partId)}`
    if (!Number.isFinite(best) || best === 0) {
      return `Nothing is known of how ${nameOf(partId ?? '')} gives: no limit of it can be met.`
    }
    return (
      `${told(one, asked)}${whose} is out of reach by itself: the ` +
      `${isLeast(limit) ? 'most' : 'least'} there is is ${told(one, best)}.`
    )
  })
  return beyond.length === 1
    ? words
    : [...words, 'Giving way in one limit alone does not help: more than one has to move.']
}

const STAND_IN_THE_WAY = {
  massG: 'Grams stand in the way',
  timeS: 'Hours stand in the way',
  cost: 'Money stands in the way',
} as const

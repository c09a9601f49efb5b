import { expect, it, describe } from 'vitest'
import { flatness } from '../../../../src/core/aircraft/twin/flatness.ts'
import { censusOf } from '../../../support/censusCase.ts'
import {
  box,
  cone,
  merge,
  prism,
  rectangle,
  circle,
  sphere,
  translate,
  tube,
} from '../../../support/meshes.ts'

describe('flatness', () => {
  it.each([
    ['a deck', box(80, 60, 3)],
    ['a deck with a hole', prism(rectangle(80, 60), 4, [circle(10, 48, 40, 30)])],
    ['a bar 120 × 20 × 12', box(120, 20, 12)],
    ['a block whose height alone could make it a bar', box(50, 50, 18)],
  ])('sees %s as a plate', (_, mesh) => {
    expect(flatness(censusOf(mesh)).kind).toBe('plate')
  })

  it('sees a bar that steps down as one a plate can stand in for', () => {
    const stepped = merge([box(120, 20, 8), translate(box(70, 20, 4), [0, 0, 7])])
    const { kind, words } = flatness(censusOf(stepped))
    expect(kind).toBe('bar')
    expect(words).toContain('%')
  })

  it.each([
    ['a cube', box(20, 20, 20)],
    ['a ball', sphere(10, 32)],
    ['a low cone', cone(40, 12, 48)],
    ['a tray', merge([box(80, 60, 2), translate(tube(25, 24, 18, 48), [40, 30, 1.5])])],
    ['a post', box(6, 6, 40)],
  ])('does not take %s for one', (_, mesh) => {
    expect(flatness(censusOf(mesh)).kind).toBe('no')
  })
  it('tells what a part is too tall for: a peg 1 mm high on a foot of 2 × 2 mm', () => {
    const { kind, words } = flatness(censusOf(box(2, 2, 1)))
    expect(kind).toBe('no')
    expect(words).not.toMatch(/too tall/i)
    expect(words).toContain('1 mm high')
    expect(words).toContain('square of 2 mm')
  })
})

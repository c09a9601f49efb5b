import { describe, expect, it } from 'vitest'
import {
  classifyHole,
  clearanceHoleMm,
  minorDiameterMm,
  tapDrillMm,
} from '../../../../src/core/aircraft/hardware/holes.ts'

describe('classifyHole', () => {
  // ISO 273: engineeringhardware.com/?p=50, in agreement with a drawing table quoting
  // draughtsman.co.uk.
  it.each([
    [3.4, 'M3 medium'],
    [3.2, 'M3 fine'],
    [3.6, 'M3 coarse'],
    [2.4, 'M2 medium'],
    [3.3, 'between fine and medium of M3'],
    [3.5, 'between medium and coarse of M3'],
    [3, 'too small for M3 clearance, too big for M3 tapping'],
    [2.5, 'M3 tapping drill'],
    [4.2, 'M5 tapping drill'],
    [3.8, 'wider than coarse of M3'],
    [1, 'too small for M1.6 clearance'],
  ])('reads %s mm as "%s"', (diameterMm, text) => {
    expect(classifyHole(diameterMm).text).toBe(text)
  })

  it('is not misled by the last bits of a measured circle', () => {
    expect(classifyHole(3.399_999_9).text).toBe('M3 medium')
  })

  it('tells what else the diameter could be', () => {
    expect(classifyHole(3.3).also).toEqual(['M4 tapping drill'])
    expect(classifyHole(3).also).toEqual(['between medium and coarse of M2.5'])
  })

  it('names the largest screw that passes', () => {
    expect(classifyHole(3.19).passes).toBe('M2.5')
    expect(classifyHole(3.2).passes).toBe('M3')
    expect(classifyHole(9).passes).toBe('M5')
    expect(classifyHole(1).passes).toBeNull()
  })
})

describe('hole tables', () => {
  it.each([
    ['M1.6', 1.7, 1.8, 2],
    ['M2', 2.2, 2.4, 2.6],
    ['M2.5', 2.7, 2.9, 3.1],
    ['M3', 3.2, 3.4, 3.6],
    ['M4', 4.3, 4.5, 4.8],
    ['M5', 5.3, 5.5, 5.8],
  ] as const)('clears %s as ISO 273 does', (size, fine, medium, coarse) => {
    expect(clearanceHoleMm(size, 'fine')).toBe(fine)
    expect(clearanceHoleMm(size, 'medium')).toBe(medium)
    expect(clearanceHoleMm(size, 'coarse')).toBe(coarse)
  })

  // nightshade.net/design-tools/hole-chart-metric and utilitiesbunker.com, 75 % thread; minor
  // diameters there.
  it.each([
    ['M1.6', 1.6, 0.35, 1.25, 1.221],
    ['M2', 2, 0.4, 1.6, 1.567],
    ['M2.5', 2.5, 0.45, 2.05, 2.013],
    ['M3', 3, 0.5, 2.5, 2.459],
    ['M4', 4, 0.7, 3.3, 3.242],
    ['M5', 5, 0.8, 4.2, 4.134],
  ] as const)('taps %s as the charts do', (size, diameter, pitch, drill, minor) => {
    expect(tapDrillMm(size)).toBe(drill)
    expect(diameter - pitch).toBeCloseTo(drill, 9)
    expect(Math.abs(minorDiameterMm(size) - minor)).toBeLessThanOrEqual(0.003)
  })
})

import { expect, test } from 'vitest'
import { tallLayerFinding } from '../../../src/core/figures/tallLayerFinding.ts'

// 0.8 of the line's width: common practice, no source. 0.8 × 0.45 = 0.36.
test.each([
  [0.36, 0.2, false],
  [0.2, 0.36, false],
  [0.37, 0.2, true],
  [0.2, 0.37, true],
])('layers of %d after a first of %d mm with a line of 0.45 mm', (layerMm, firstLayerMm, told) => {
  const finding = tallLayerFinding({ layerMm, firstLayerMm, lineMm: 0.45 }, 'en-GB')
  expect(finding !== null).toBe(told)
  if (finding !== null) expect(finding.message).toContain('Up to 0.36\u00a0mm')
})

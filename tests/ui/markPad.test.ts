import { expect, test } from 'vitest'
import { markPad } from '../../src/ui/fields/markPad.ts'

test('what a figure lacks of two decimals, in any locale', () => {
  expect(['44.1', '0.81', '<0.01', '~7,0', '185', '1.204', '−2.9'].map(markPad)).toEqual([
    '0',
    '',
    '',
    '0',
    '.00',
    '.00',
    '0',
  ])
})

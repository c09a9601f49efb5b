import { describe, expect, test } from 'vitest'
import { nextOrder, type Order } from '../../src/ui/ledger/columns.ts'

function presses(column: 'name' | 'grams', times: number): Order {
  let order: Order = null
  for (let i = 0; i < times; i++) order = nextOrder(order, column)
  return order
}

describe('pressing a column head', () => {
  test('starts figures with the heaviest and words with A', () => {
    expect(presses('grams', 1)).toEqual({ column: 'grams', descending: true })
    expect(presses('name', 1)).toEqual({ column: 'name', descending: false })
  })

  test('turns round on the second press, and goes back to the order of arrival on the third', () => {
    expect(presses('grams', 2)).toEqual({ column: 'grams', descending: false })
    expect(presses('grams', 3)).toBeNull()
    expect(presses('name', 2)).toEqual({ column: 'name', descending: true })
    expect(presses('name', 3)).toBeNull()
  })

  test('starts anew on another column', () => {
    expect(nextOrder(presses('grams', 2), 'name')).toEqual({ column: 'name', descending: false })
  })
})

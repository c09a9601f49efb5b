import { describe, expect, it } from 'vitest'
import { moneyByHour } from '../../../src/state/storage/moneyByHour.ts'

describe('a frame of version 2, its money', () => {
  it('keeps what failed of a print of two and a half hours, now by the hour', () => {
    const { prices } = moneyByHour({ version: 2, prices: { currency: 'EUR', failurePct: 5 } }) as {
      prices: { failurePctPerHour: number }
    }
    expect(prices).toEqual({ currency: 'EUR', failurePctPerHour: 2.03 })
    expect(1 - (1 - prices.failurePctPerHour / 100) ** 2.5).toBeCloseTo(0.05, 3)
  })

  it('heats a plastic of its own as PLA, a known one as it is printed, a typed one as typed', () => {
    const heat = { value: 265, mark: 'user', source: 'mine' }
    const { materials } = moneyByHour({
      version: 2,
      materials: [{ id: 'abs' }, { id: 'own-1' }, { id: 'petg', nozzleC: heat }, 7],
    }) as { materials: { nozzleC?: { value: number }; bedC?: { value: number } }[] }
    expect(materials.map((each) => [each.nozzleC?.value, each.bedC?.value])).toEqual([
      [240, 100],
      [210, 60],
      [265, 80],
      [undefined, undefined],
    ])
  })

  it('leaves what is damaged to be told', () => {
    expect(moneyByHour({ version: 2, prices: 4, materials: 'none' })).toMatchObject({ version: 3 })
    expect(moneyByHour({ prices: { failurePct: 'much' } })).toMatchObject({ prices: {} })
  })
})

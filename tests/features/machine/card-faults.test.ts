import { describe, expect, test } from 'vitest'
import { faultsOnCard } from '@/features/machine/card-faults.ts'
import { type Fault, makeFault } from '@/mechanism/fault.ts'
import { faultOf } from '@/mechanism/read-fault.ts'

const torn = (row: number): Fault => makeFault('card.torn', [row, 5], null)
const blocked = (row: number): Fault => makeFault('card.blocked', [row, 5], null)
const strip: Fault = faultOf('strip.8.seized')

describe('faults when a card is put in', () => {
  test('stay as they are where the card has their rows', () => {
    const faults = [torn(3), blocked(8), strip]
    expect(faultsOnCard(faults, 8)).toEqual({ faults, said: '' })
    expect(faultsOnCard(faults, 8).faults).toBe(faults)
  })

  test('in rows that the card lacks are dropped, and that is said', () => {
    expect(faultsOnCard([torn(3), blocked(8), strip], 7)).toEqual({
      faults: [torn(3), strip],
      said: 'This card has only 7 rows, so a fault in a later row of the last card is gone.',
    })
    expect(faultsOnCard([torn(3), blocked(8), strip], 1)).toEqual({
      faults: [strip],
      said: 'This card has only 1 row, so 2 faults in later rows of the last card are gone.',
    })
  })
})

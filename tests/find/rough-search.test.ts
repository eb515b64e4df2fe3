import { describe, expect, test } from 'vitest'
import { wideChances } from '@/find/chances.ts'
import { chanceLog, roughBeds, roughLags, roughly } from '@/find/rough-search.ts'
import { wideCauses } from '@/find/wide-causes.ts'
import { alone, rightBed, withCause } from '@/find/wide-states.ts'
import type { FaultId } from '@/mechanism/fault.ts'
import { notedQuery } from './noted.ts'
import { askedOf, card, noted, passes } from './two-passes.ts'

const wide = (id: string) => wideCauses().find(({ causes }) => causes[0] === id)!

describe('states of the whole bed, roughly weighed', () => {
  test.each<[FaultId]>([
    ['carriage.plain'],
    ['card.reversed'],
    ['belt.timing=8'],
    ['presser.right.worn=0.9'],
  ])('have that first of a machine with %s', (id) => {
    const place = wideCauses().find(({ causes }) => causes[0]!.split('=')[0] === id.split('=')[0])!.place
    const { right, all } = roughBeds(noted(id))
    expect(all[0]!.state.causes[0]!.place).toBe(place)
    expect(all.map(({ best }) => best.log)).toEqual(all.map(({ best }) => best.log).sort((a, b) => b - a))
    expect(right.state).toBe(rightBed)
    expect(all.filter(({ state }) => state === rightBed)).toHaveLength(1)
  })

  test('are a right bed by itself, with a second thing only where that makes the notes likelier', () => {
    const { all } = roughBeds(noted())
    expect(all[0]!.state).toBe(rightBed)
    for (const { state } of all) expect(state.causes.length).toBeLessThan(2)
    const both = roughBeds(noted('presser.left.worn=0.8', 'card.reversed')).all[0]!
    expect(both.state.causes.map(({ place }) => place).sort()).toEqual(['card', 'presser'])
  })

  test('have the bars that are not far behind the best, and say how far a worn machine is', () => {
    const asked = noted('retainer.worn=9')
    const rough = roughly(asked, rightBed, -Infinity)!
    const most = Math.max(...rough.bars.map(({ log }) => log))
    expect(rough.best.log).toBe(most)
    expect(rough.best.retainer).toBeGreaterThan(-1)
    for (const { log } of rough.bars) expect(log).toBeGreaterThanOrEqual(most - roughLags.bar)
    expect(rough.bars.length).toBeGreaterThan(1)
    expect(rough.bars.some(({ retainer }) => retainer < 0)).toBe(false)
    expect(rough.wornLag).toBeGreaterThan(0)
    expect(roughly(asked, rightBed, most + 0.1)).toBeNull()
    expect(roughly(asked, rightBed, most - 0.1)!.best).toEqual(rough.best)
    expect(roughly(asked, rightBed, -Infinity, [-1])!.bars.map(({ retainer }) => retainer)).toEqual([-1])
    const loose = roughly(asked, rightBed, -Infinity, [rough.best.retainer], 0.9)!
    expect(loose.best.log).toBeLessThan(most)
  })

  test('have turns that went wrong, one after another', () => {
    const query = notedQuery(
      card,
      Array.from({ length: 4 }, (_, n) => ({
        row: n + 1,
        way: n % 2 === 0 ? 1 : -1,
        speed: 500,
        pass: n + 1,
      })),
      ['pawl.skips.2', 'pawl.jumps.4'],
    )
    const [first] = roughBeds(askedOf(query)).all
    expect(first!.state.causes.map(({ causes }) => causes[0]).sort()).toEqual([
      'pawl.jumps.4',
      'pawl.skips.2',
    ])
    expect(first!.state.chance).toBeCloseTo(wideChances.turn * wideChances.nextTurn, 12)
  })

  test('have the chance of the table, times what a hand found', () => {
    const belt = alone(wide('belt.off'))
    const { setting } = noted()
    expect(chanceLog(setting, rightBed)).toBeCloseTo(Math.log(wideChances.nothing), 12)
    expect(chanceLog(setting, belt)).toBeCloseTo(Math.log(wideChances.beltOff), 12)
    const both = withCause(belt, wide('card.reversed'))!
    expect(chanceLog(setting, both)).toBeCloseTo(Math.log(wideChances.beltOff * wideChances.cardReversed), 12)
    const found = askedOf({
      ...notedQuery(card, passes),
      checks: [{ check: 'settings', found: null }],
    }).setting
    // A look at the settings is wrong once in twenty times.
    expect(chanceLog(found, belt)).toBeCloseTo(Math.log(wideChances.beltOff * 0.05), 12)
    expect(chanceLog(found, rightBed)).toBeCloseTo(Math.log(wideChances.nothing * 0.95), 12)
  })
})

describe('two things at once that reach the whole bed', () => {
  test('are none that exclude one another, and no thing twice', () => {
    const belt = wide('belt.off')
    expect(withCause(alone(belt), belt)).toBeNull()
    expect(withCause(alone(wide('belt.timing=8')), wide('belt.timing=-8'))).toBeNull()
    expect(withCause(alone(wide('card.out')), wide('card.reversed'))).toBeNull()
    expect(withCause(alone(wide('card.reversed')), wide('card.out'))).toBeNull()
    expect(withCause(alone(wide('card.out')), belt)!.causes).toEqual([wide('card.out'), belt])
    expect(withCause(alone(belt), wide('card.out'))!.causes).toHaveLength(2)
    expect(withCause(rightBed, belt)).toEqual(alone(belt))
  })
})

import { describe, expect, test } from 'vitest'
import { lettersOf } from '@/find/bed-letters.ts'
import { chanceShown, isShown, singleFaults, sureEnough, showingsOf } from '@/find/showing.ts'
import { scenarioIn, type View } from '@/find/view.ts'
import { usualPlace } from '@/mechanism/bed.ts'
import { everyHole } from '@/mechanism/card.ts'
import { faultId, type FaultId } from '@/mechanism/fault.ts'
import { faultOf } from '@/mechanism/read-fault.ts'
import { faultKindNames } from '@/mechanism/fault-kinds.ts'
import { startRun } from '@/mechanism/pass.ts'
import { randomCard } from './make.ts'

const card = randomCard(5, 7)
const views: View[] = [
  { card, pass: 2, speed: 500, shift: 0, ...usualPlace },
  { card, pass: 5, speed: 900, shift: 0, ...usualPlace },
  { card: [everyHole], pass: 1, speed: 500, shift: null, ...usualPlace },
  { card: [0], pass: 2, speed: 900, shift: null, ...usualPlace },
]
const every = (): boolean => true
const tried = 400

/** By view: on what share of many machines with this fault a needle comes out otherwise than on a sound one. */
const sharesOf = (id: FaultId, isLookedAt: (pass: number, needle: number) => boolean): number[] =>
  views.map((view, pass) => {
    const sound = lettersOf(startRun(scenarioIn(view, [])).passOf(view.pass))
    const shown = Array.from({ length: tried }, (_, seed) => {
      const bed = lettersOf(startRun({ ...scenarioIn(view, [faultOf(id)]), seed }).passOf(view.pass))
      return [...bed].some((letter, needle) => letter !== sound[needle] && isLookedAt(pass, needle))
    })
    return shown.filter(Boolean).length / tried
  })

describe('what passes show of a fault that goes by chance', () => {
  test.each<FaultId>([
    'pin.3.sticky=0.5',
    'pin.20.sticky=0.25',
    'pivots.loose=0.4',
    'pivots.loose=0.25',
    'pivots.loose=0.2',
    'retainer.worn=3',
    'retainer.worn=5',
    'retainer.worn=8',
  ])('%s, is the share of machines that show it', (id) => {
    const [showing] = showingsOf([faultOf(id)], { views, isLookedAt: every })
    const shares = sharesOf(id, every)
    for (const [n, chance] of showing!.chances.entries()) {
      const error = Math.sqrt((chance * (1 - chance)) / tried)
      expect(Math.abs(chance - shares[n]!)).toBeLessThanOrEqual(4 * error + 0.005)
    }
    expect(shares.some((share) => share > 0)).toBe(true)
  })

  test('counts the needles that were looked at only', () => {
    const isLookedAt = (pass: number, needle: number): boolean => pass === 3 && needle < 12
    for (const id of ['retainer.worn=5', 'pivots.loose=0.4', 'pin.3.sticky=0.5'] as const) {
      const [showing] = showingsOf([faultOf(id)], { views, isLookedAt })
      const shares = sharesOf(id, isLookedAt)
      expect(showing!.chances.slice(0, 3)).toEqual([0, 0, 0])
      const chance = showing!.chances[3]!
      expect(Math.abs(chance - shares[3]!)).toBeLessThanOrEqual(
        4 * Math.sqrt((chance * (1 - chance)) / tried),
      )
    }
  })
})

describe('what passes show together', () => {
  const showing = (...chances: number[]) => ({ fault: faultOf('pivots.loose=0.4'), chances })

  test('is shown where one of them would have shown it surely enough', () => {
    expect(chanceShown(showing())).toBe(0)
    expect(chanceShown(showing(0.5, 0.5))).toBeCloseTo(0.75, 12)
    expect(chanceShown(showing(0, 1, 0.2))).toBe(1)
    expect(isShown(showing(0.5, 0.5, 0.5, 0.5))).toBe(false)
    expect(isShown(showing(0.5, 0.5, 0.5, 0.5, 0.5))).toBe(true)
    expect(sureEnough).toBe(0.95)
  })
})

describe('the single faults', () => {
  test('are of every kind of the catalogue, each once', () => {
    const ids = singleFaults(views).map(faultId)
    expect(new Set(ids).size).toBe(ids.length)
    expect(new Set(singleFaults(views).map(({ kind }) => kind))).toEqual(new Set(faultKindNames))
  })

  test('have the holes and the turns of the card in question only', () => {
    const holes = singleFaults(views).filter(({ kind }) => kind === 'card.torn' || kind === 'card.blocked')
    expect(new Set(holes.map(({ at }) => at[0]))).toEqual(new Set([2, 5]))
    const short = singleFaults(views).filter(({ kind }) => kind === 'turn.short')
    expect(short.map(({ at }) => at[0])).toEqual([2, 3, 4, 5])
    const machine = singleFaults(views.slice(2)).map(({ kind }) => kind)
    expect(machine).not.toContain('card.torn')
    expect(machine).not.toContain('turn.short')
  })
})

import { describe, expect, test } from 'vitest'
import { frameAt } from '@/mechanism/frame.ts'
import { scattered } from '../mechanism/cards.ts'
import { count, machine } from '../mechanism/make.ts'

/**
 * Source: D. J. Spencer, Knitting Technology, 3rd ed., "Element selection" and section 11.2: selection is a yes/no
 * decision and its transmission to a butt that meets a cam or misses it; a butt sunk in its trick passes the cam
 * untouched; there are just two paths.
 */
describe('element selection', () => {
  const run = machine(scattered)

  test('has just two paths', () => {
    for (const pass of count(1, 7))
      expect(new Set(run.passOf(pass).came)).toEqual(new Set(['selected', 'plain']))
  })

  test('lets a sunk butt pass the first cam untouched and moves one that stands up', () => {
    const { came, keptFor } = run.passOf(1)
    // Five needles behind the presser the first gate is past and the second has hardly begun.
    for (const needle of count(20, 60)) {
      const { buttHeights, needleTravels } = frameAt(run, 1, needle + 4.5)
      expect(needleTravels[needle] === 0).toBe(came[needle] === 'selected')
      expect(buttHeights[needle]! < -0.45).toBe(keptFor[needle] === Infinity)
    }
  })
})

/** Source: common practice, no source. */
describe('the card', () => {
  test('at each change of direction lets its pins down, goes on by one row, and is read again', () => {
    const run = machine(scattered)
    expect(count(1, 8).map((pass) => run.passOf(pass).row)).toEqual([1, 2, 3, 4, 5, 6, 7, 1])
    // A pin that can't spring back shows where pins are let down: at the mark, not at a turn short of it.
    const kept = machine([0xffffff], ['pin.5.over', 'turn.short.3'])
    const leanAtStart = (pass: number): number =>
      frameAt(kept, pass, kept.passOf(pass).drive.start).pinLeans[4]!
    expect([1, 2, 3, 4].map((pass) => leanAtStart(pass) > 0)).toEqual([false, false, true, false])
  })

  test('where there is none, leaves every needle selected', () => {
    for (const pass of [1, 2]) expect(new Set(machine(null).passOf(pass).came)).toEqual(new Set(['selected']))
  })
})

import { usualPlace } from '@/mechanism/bed.ts'
import { describe, expect, test } from 'vitest'
import { checksFor, faultChart } from '@/find/chart.ts'
import { contrastOf, plainestOf, tellingLooks } from '@/find/contrast.ts'
import { firstShown, likenesses, symptomOf } from '@/find/likeness.ts'
import { inferWhole } from '@/find/infer.ts'
import { nextLooks } from '@/find/next.ts'
import { slips } from '@/find/chances.ts'
import type { Query } from '@/find/query.ts'

describe('with a patterned card that has no hole', () => {
  const blank = [0]

  test('a fault of fast work on what was selected shows in no look, and is like none', () => {
    expect(firstShown('strip.slow', blank)).toBeNull()
    expect(likenesses('strip.slow', blank)).toEqual([])
    expect(contrastOf('strip.slow', blank)).toBeNull()
    expect(plainestOf('strip.slow', blank)).toBeNull()
    expect(tellingLooks('strip.slow', blank)).toEqual([])
  })

  test('what shows with a card of all holes, or with none, is seen as ever', () => {
    expect(symptomOf('strip.seized', blank)).toBe('eighth')
    expect(symptomOf('pin.high', blank)).toBe('twentyFourth')
    expect(symptomOf('catch.broken', blank)).toBe('one')
    expect(firstShown('strip.over', blank)).toEqual({ card: 'pattern', pass: 1, speed: 500 })
    expect(firstShown('strip.seized', blank)).toEqual({ card: 'holes', pass: 1, speed: 500 })
  })

  test('the chart has a row for each kind still, by its first look where none shows it', () => {
    const row = faultChart(blank).find(({ kinds }) => kinds.includes('strip.slow'))!
    expect(row.look).toEqual({ card: 'pattern', pass: 1, speed: 500 })
    expect(row.came).toBeNull()
  })
})

describe('checks by eye or hand', () => {
  test('come in the order of what each is likely to find for its minutes and its risk', () => {
    const ids = (...kinds: Parameters<typeof checksFor>[0]): string[] => checksFor(kinds).map(({ id }) => id)
    expect(ids('pin.low')).toEqual(['pins'])
    expect(ids('strip.seized', 'pin.low')).toEqual(['pins', 'strips'])
    expect(ids('strip.seized', 'strip.slow', 'pin.low')).toEqual(['strips', 'pins'])
    expect(ids('needle.bent', 'needle.gone', 'needle.stiff')).toEqual(['needle', 'swap-needle'])
    expect(ids('needle.bent', 'needle.gone')).toEqual(['swap-needle'])
  })

  test('are none where only a cover or the reader would show the fault', () => {
    expect(checksFor(['catch.broken'])).toEqual([])
    expect(checksFor(['rocker.dead', 'rocker.worn', 'sweep.worn'])).toEqual([])
    expect(checksFor([])).toEqual([])
  })
})

describe('where nothing was looked at', () => {
  test('a sound machine is as likely as before, and any look shows something', () => {
    const query: Query = { card: [0xffffff], passes: [], slip: slips.sure, checks: [], ...usualPlace }
    const inference = inferWhole(query)
    const { finding } = inference
    const next = nextLooks(query, inference)
    expect(finding.places.every(({ wrong }) => wrong < 0.2)).toBe(true)
    expect(next.map(({ check }) => check)).toContain('holes-right')
    expect(next.map(({ check }) => check)).not.toContain('next-row')
  })
})

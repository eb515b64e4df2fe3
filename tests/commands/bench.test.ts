import { expect, test } from 'vitest'
import { bench } from '@/commands/bench.ts'
import { npmRun, patience } from './npm-run.ts'
import { runHere } from './run-here.ts'

test(
  'the bench prints what a pass, a frame, a card and finding a fault take beside their limits',
  { timeout: patience },
  async () => {
    const { code, out, said } = await npmRun('bench', 'speed')
    expect({ code, said }).toEqual({ code: 0, said: '' })
    const lines = out.trimEnd().split('\n').slice(2)
    const rows = lines.map((row) => row.split(/ {2,}/))
    const cells = rows.slice(0, 3)
    expect(cells.map(([name, limit]) => [name, limit])).toEqual([
      ['a pass of 200 needles', '0.1'],
      ['a frame', '0.05'],
      ['a card of 60 rows', '6'],
    ])
    for (const [, , ...taken] of cells) {
      expect(taken).toHaveLength(4)
      for (const ms of taken) expect(ms).toMatch(/^\d+\.\d{4}$/)
      const [median = 0, most = 0, wornMedian = 0, wornMost = 0] = taken.map(Number)
      expect(median).toBeGreaterThan(0)
      expect(most).toBeGreaterThanOrEqual(median)
      expect(wornMost).toBeGreaterThanOrEqual(wornMedian)
    }
    expect(rows.slice(3).map(([name, limit]) => [name, limit])).toEqual([
      ['finding a fault', 'limit'],
      ['a dictionary of 8 rows', '150'],
      ['a test card', '3000'],
    ])
    for (const [, , median, most] of rows.slice(4)) {
      expect(Number(median)).toBeGreaterThan(0)
      expect(Number(most)).toBeGreaterThanOrEqual(Number(median))
    }
  },
)

test(
  'the bench tries the search for faults on so many machines and prints each measure beside its aim',
  { timeout: patience },
  async () => {
    const { code, out, said } = await npmRun('bench', 'find', '3')
    expect({ code, said }).toEqual({ code: 0, said: '' })
    const names = out.split('\n').map((line) => line.split(/ {2,}/)[0])
    expect(names.slice(0, 6)).toEqual([
      'the finder on 3 machines',
      'wrong and showing: given over 0.5',
      'the same, or in a set of few',
      'given over 0.5: truly wrong',
      'given over 0.9: truly wrong',
      'given over 0.99: truly wrong',
    ])
    for (const name of ['sets of strips found whole', 'the first', 'as one mark changes', 'calibration'])
      expect(names).toContain(name)
  },
)

test.each(['0', '1.5', 'many', '100001'])('the bench refuses to try %s machines', async (count) => {
  expect(await runHere(bench, ['find', count])).toEqual({
    code: 2,
    out: '',
    said: 'Give a number of machines from 1 to 100000, as in: npm run bench -- find 40\n',
  })
})

import { expect, it } from 'vitest'
import { npmRun, patience } from './npm-run.ts'

it(
  'the bench prints what a pass, a frame and a card take beside their limits',
  { timeout: patience },
  async () => {
    const { code, out, said } = await npmRun('bench')
    expect({ code, said }).toEqual({ code: 0, said: '' })
    const rows = out.trimEnd().split('\n').slice(2)
    const cells = rows.map((row) => row.split(/ {2,}/))
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
  },
)

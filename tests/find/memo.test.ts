import fc from 'fast-check'
import { describe, expect, test, vi } from 'vitest'
import { machinesOf } from '@/commands/bench/machine.ts'
import { queryOf as queryOfMachine } from '@/commands/bench/notes.ts'
import { bedsOf } from '@/commands/bench/truth.ts'
import { slips } from '@/find/chances.ts'
import { infer } from '@/find/infer.ts'
import type { Query } from '@/find/query.ts'
import { usualPlace } from '@/mechanism/bed.ts'

const card = [0xffffff, 0x0f0f0f]
const beds = ['s'.repeat(200), 'sp'.repeat(100)]
const queryOf = (...marks: readonly number[]): Query => ({
  ...usualPlace,
  card,
  passes: beds.map((bed, n) => ({
    card,
    row: n + 1,
    way: n === 0 ? 1 : -1,
    speed: 500,
    pass: n + 1,
    needles: [...bed].map((letter, needle) => (n === 0 && marks.includes(needle) ? 'p' : letter)).join(''),
  })),
  slip: slips.sure,
  checks: [],
})

/** A change of one note: the pass, the needle, and the letter that it then has. */
type Mark = readonly [pass: number, needle: number, letter: string]

const marks = fc.array(fc.tuple(fc.nat(5), fc.nat(199), fc.constantFrom('s', 'p', 'u', '?')), {
  minLength: 1,
  maxLength: 4,
})

const marked = (query: Query, [pass, needle, letter]: Mark): Query => ({
  ...query,
  passes: query.passes.map((one, n) =>
    n === pass % query.passes.length
      ? { ...one, needles: one.needles.slice(0, needle) + letter + one.needles.slice(needle + 1) }
      : one,
  ),
})

describe('what was computed before', { timeout: 180_000 }, () => {
  test('changes no answer: after any marks it is that of a search that knows nothing yet', async () => {
    const machines = machinesOf(5, 10).map((machine) => queryOfMachine(machine, bedsOf(machine)))
    await fc.assert(
      fc.asyncProperty(fc.nat(9), marks, async (n, changes) => {
        let query = machines[n]!
        infer(query)
        for (const mark of changes) {
          query = marked(query, mark)
          infer(query)
        }
        vi.resetModules()
        const fresh = await import('@/find/infer.ts')
        expect(fresh.infer).not.toBe(infer)
        expect(infer(query)).toEqual(fresh.infer(query))
      }),
      { numRuns: 6 },
    )
  })

  test('depends on what was found by hand, on the slip, and on where column 1 is', () => {
    const query = queryOf(3, 11)
    const others: Query[] = [
      { ...query, slip: slips.rough },
      { ...query, checks: [{ check: 'strips', found: null }] },
      { ...query, columnOne: (query.columnOne + 1) as Query['columnOne'] },
    ]
    const own = infer(query).places
    for (const other of others) expect(infer(other).places).not.toEqual(own)
  })
})

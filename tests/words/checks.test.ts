import { expect, test } from 'vitest'
import { checkWords, nextWords } from '@/words/checks.ts'
import type { FaultId } from '@/mechanism/fault.ts'
import { faultOf } from '@/mechanism/read-fault.ts'

const partLook = (check: 'swap-needle' | 'needle' | 'strips', ids: readonly FaultId[]): string =>
  nextWords({
    check,
    pass: null,
    minutes: 4,
    outcomes: [null, ...ids.map((id) => faultOf(id))].map((found) => ({ kind: 'part', found })),
  })

test('A check of needles names the one to begin with, where one is likely', () => {
  expect(partLook('swap-needle', ['needle.R40.bent', 'needle.R17.bent'])).toContain(
    'exchange needle R40 with its',
  )
  expect(partLook('swap-needle', ['catch.L3.broken'])).toContain('exchange needle L3 with')
  expect(partLook('needle', ['needle.R5.stiff'])).toContain('the butt of needle R5 down')
  expect(partLook('needle', [])).toBe(checkWords.needle)
  expect(partLook('strips', ['strip.3.seized'])).toBe(checkWords.strips)
})

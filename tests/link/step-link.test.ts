import { describe, expect, test } from 'vitest'
import { readStepName } from '@/link/step-link.ts'

describe('the name of a step in an address', () => {
  const ids = ['one', 'two']
  const former = new Map([['zwei', 'two']])

  test.each([
    ['one', 0],
    ['two', 1],
    ['zwei', 1],
    [null, 0],
    ['', 0],
  ])('%j is step %i, with nothing to say', (name, step) => {
    expect(readStepName(name, ids, former)).toEqual({ step, trouble: null })
  })

  test('that the chapter lacks is the first step, and that is said', () => {
    expect(readStepName('three', ids, former)).toEqual({
      step: 0,
      trouble: 'This chapter has no step “three”; its first step is shown.',
    })
    expect(readStepName('x'.repeat(999), ids, former).trouble?.length).toBeLessThan(120)
  })
})

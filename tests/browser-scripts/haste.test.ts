import { describe, expect, test } from 'vitest'
import { createHaste } from '@/browser/scene/haste.ts'

describe('haste while the machine turns', () => {
  let clock = 0
  const haste = createHaste(() => clock)
  const draw = (times: readonly number[]): void => {
    for (const time of times)
      haste.time(() => {
        clock += time
      })
  }

  test('begins once three pictures in a row took too long, and not after one that is late by chance', () => {
    draw([4, 30, 30, 4, 30, 30])
    expect(haste.isOn()).toBe(false)
    draw([30])
    expect(haste.isOn()).toBe(true)
  })

  test('stays until the machine is at rest, or it would come and go', () => {
    draw([4, 4, 4])
    expect(haste.isOn()).toBe(true)
    haste.rest()
    expect(haste.isOn()).toBe(false)
  })
})

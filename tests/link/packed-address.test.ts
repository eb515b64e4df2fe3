import { describe, expect, test } from 'vitest'
import { packedAddress } from '@/link/packed-address.ts'

describe('an address in the pack', () => {
  test.each([
    ['/', '/', './', './index.html'],
    ['/', '/', '../', '../index.html'],
    ['/#break=strip.3.seized', '/', '../', '../index.html#break=strip.3.seized'],
    ['/find/', '/', '../../', '../../find/index.html'],
    ['/chapters/the-hold/?step=dip#dip', '/', '../', '../chapters/the-hold/index.html?step=dip#dip'],
    ['/chapters/the-hold', '/', '../', '../chapters/the-hold/index.html'],
    ['/stills/hold-1.svg', '/', '../', '../stills/hold-1.svg'],
    ['/sub/', '/sub/', '../', '../index.html'],
    ['/sub', '/sub/', '../', '../index.html'],
    ['/sub/case/?make#wear=1', '/sub/', '../', '../case/index.html?make#wear=1'],
    ['../find/', '/', '../', '../find/index.html'],
  ])('%s under %s becomes a file’s', (address, base, root, packed) => {
    expect(packedAddress(address, base, root)).toBe(packed)
  })

  test.each([
    '#dip',
    '?make#wear=1',
    '',
    'https://example.org/',
    '//example.org/',
    'mailto:a@example.org',
    'file:///site/index.html#at=R1',
    '../find/index.html',
  ])('‘%s’ stays as it is', (address) => {
    expect(packedAddress(address, '/', '../')).toBe(address)
  })

  test('stays as it is when it is packed again', () => {
    const once = packedAddress('/case/?make', '/', '../')
    expect(packedAddress(once, '/', '../')).toBe(once)
  })
})

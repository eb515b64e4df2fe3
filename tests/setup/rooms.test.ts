import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { root } from '../../src/setup/paths.mjs'
import { complaint } from '../../src/setup/rooms.mjs'

const from = (file: string) => (source: string) => complaint(join(root, file), source)

describe('the import rule', () => {
  test('lets the model import nothing but itself', () => {
    const asks = from('src/mechanism/pass.ts')
    expect(asks('./bed.ts')).toBeUndefined()
    expect(asks('../words/lists.ts')).toBeTruthy()
    expect(asks('d3')).toBeTruthy()
    expect(asks('node:fs')).toBeTruthy()
  })
  test('lets drawings take the model, the words and d3, and no more', () => {
    const asks = from('src/drawings/chain/figure.ts')
    for (const source of ['../mechanism/bed.ts', '../words/lists.ts', 'd3'])
      expect(asks(source)).toBeUndefined()
    for (const source of ['../link/read.ts', '../components/dom.ts', 'gsap'])
      expect(asks(source)).toBeTruthy()
  })
  test('keeps the model from knowing of links, and links from knowing of words', () => {
    expect(from('src/mechanism/fault.ts')('../link/read.ts')).toBeTruthy()
    expect(from('src/link/read.ts')('../words/lists.ts')).toBeTruthy()
    expect(from('src/words/lists.ts')('../link/read.ts')).toBeTruthy()
  })
})

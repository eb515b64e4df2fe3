import { describe, expect, test } from 'vitest'
import { fileName } from '@/browser/save-file.ts'
import { titleOfFile } from '@/features/picture/file-title.ts'
import { momentOf } from '../../browser/model.ts'

const nameOf = (state: string): string =>
  fileName(titleOfFile('The whole chain', momentOf(state).state), 'figure', 'png')

describe('the name of a saved file', () => {
  test('says which figure, pass, place and fault it shows', () => {
    expect(nameOf('at=R12')).toBe('whole-chain-pass-1-r12.png')
    expect(nameOf('pass=3&at=L20.4&break=strip.3.seized')).toBe('whole-chain-pass-3-l20-strip-3-seized.png')
  })

  test('counts the faults where it has no room for their names', () => {
    expect(nameOf('at=R12&break=strip.3.seized&break=pin.7.low')).toBe('whole-chain-pass-1-r12-2-faults.png')
  })
})

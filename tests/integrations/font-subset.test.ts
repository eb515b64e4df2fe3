import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { charactersOf } from '@/integrations/font-subset.ts'

const styles = readFileSync(new URL('../../src/styles/fonts.css', import.meta.url), 'utf8')
const small = [...styles.matchAll(/@font-subsets[^}]*unicode-range:\s+([^;]+);/g)].map(([, range = '']) =>
  charactersOf(range),
)

describe('the letters that come with the styles', () => {
  test('are those of a range as styles write it', () => {
    expect(charactersOf('U+41-44, U+B7')).toBe('ABCD·')
    expect(charactersOf('U+2019')).toBe('’')
  })

  test('are the same for each font, and hold all that is typed in English, and quotation marks', () => {
    expect(new Set(small).size).toBe(1)
    expect(small).toHaveLength(4)
    for (const letter of 'AZaz09 ~!?,.;:()[]&%’‘“”–…×−°') expect(small[0]).toContain(letter)
  })
})

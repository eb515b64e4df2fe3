import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { lettersOf } from '../../src/integrations/font-subset.ts'

const styles = readFileSync(new URL('../../src/styles/fonts.css', import.meta.url), 'utf8')
const small = [...styles.matchAll(/@letters[^}]*unicode-range:\s+([^;]+);/g)].map(([, range = '']) =>
  lettersOf(range),
)

describe('the letters that come with the styles', () => {
  it('are those of a range as styles write it', () => {
    expect(lettersOf('U+41-44, U+B7')).toBe('ABCD·')
    expect(lettersOf('U+2019')).toBe('’')
  })

  it('are the same for each font, and hold all that is typed in English, and quotation marks', () => {
    expect(new Set(small).size).toBe(1)
    expect(small).toHaveLength(4)
    for (const letter of 'AZaz09 ~!?,.;:()[]&%’‘“”–…×−°') expect(small[0]).toContain(letter)
  })
})

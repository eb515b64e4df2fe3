import { globSync, readFileSync } from 'node:fs'
import { parseHTML } from 'linkedom'
import { describe, expect, test } from 'vitest'
import { roomRound, shortStyles } from '@/components/chapter/still-styles.ts'

/** The selectors of a style sheet as a reader of its text has them, one space where there is any. */
const selectors = (css: string): string[] =>
  [...css.replace(/\/\*[\s\S]*?\*\//g, '').matchAll(/([^{};]+)\{/g)].map(([, text = '']) =>
    text.trim().replace(/\s+/g, ' ').replaceAll(', ', ','),
  )

describe('styles in a picture on its own', () => {
  test.each(globSync('src/styles/{tokens,figure,figures/*}.css'))('%s keeps every selector', (file) => {
    const css = readFileSync(file, 'utf8')
    const short = shortStyles(css)
    expect(short.length).toBeLessThan(css.length)
    expect(selectors(short).map((each) => each.replace(/([({]) /g, '$1'))).toEqual(
      selectors(css).map((each) => each.replace(/([({]) /g, '$1').replaceAll(': ', ':')),
    )
  })

  test('a colon after a space means somewhere within', () => {
    const { document } = parseHTML('<div class="a"><i class="b"></i></div>')
    const [selector = ''] = selectors(shortStyles('.a :is(.b,  .c) { fill: red; }'))
    expect(document.querySelector(selector)?.className).toBe('b')
  })
})

test('the room for wider letters lies at both sides, and the height is the figure’s', () => {
  expect(roomRound(340, 200)).toEqual({ viewBox: '-17 0 391 200', width: 391 })
})

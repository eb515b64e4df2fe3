import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, test } from 'vitest'

/**
 * Source: WCAG 2.2, relative luminance and contrast ratio; success criteria 1.4.3 (text, at least 4.5) and 1.4.11
 * (graphics, at least 3).
 */
const luminance = (colour: string): number => {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) => {
    const share = parseInt(colour.slice(at, at + 2), 16) / 255
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4
  })
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue
}

const contrast = (one: string, other: string): number => {
  const [dark = 0, light = 0] = [luminance(one), luminance(other)].sort((a, b) => a - b)
  return (light + 0.05) / (dark + 0.05)
}

/** Six digits, from a colour of three or six. */
const full = (colour: string): string =>
  colour.length === 4 ? `#${[...colour.slice(1)].map((digit) => digit + digit).join('')}` : colour

const css = readFileSync(fileURLToPath(new URL('../../src/styles/tokens.css', import.meta.url)), 'utf8')
const schemes = css.split('@media').map((part) => {
  const colours = [...part.matchAll(/--(\w+): (#[0-9a-f]{3,6});/g)]
  return new Map(colours.map(([, name = '', colour = '']) => [name, full(colour)]))
})

test('the measure itself: #767676 on white is 4.54, #777777 4.48', () => {
  expect(contrast('#767676', '#ffffff')).toBeCloseTo(4.54, 2)
  expect(contrast('#777777', '#ffffff')).toBeCloseTo(4.48, 2)
})

describe.each([
  ['light', 0],
  ['dark', 1],
  ['print', 2],
] as const)('the colours, %s', (_, scheme) => {
  const colour = (name: string): string => {
    const found = schemes[scheme]?.get(name)
    if (found === undefined) throw new Error(`no colour ${name}`)
    return found
  }
  const grounds = ['paper', 'sheet']

  test.each(['ink', 'soft', 'blue', 'vermilion'])('%s can be read on paper and sheet', (name) => {
    for (const ground of grounds) expect(contrast(colour(name), colour(ground))).toBeGreaterThanOrEqual(4.5)
  })

  test('lines that matter stand out', () => {
    for (const ground of grounds) expect(contrast(colour('line'), colour(ground))).toBeGreaterThanOrEqual(3)
  })
})

import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'

const source = (name: string): string =>
  readFileSync(new URL(`../../content/sources/${name}.md`, import.meta.url), 'utf8')

/** What the hazard statements of the Globally Harmonised System say, in the words that the site says them in. */
const statements: Readonly<Record<string, RegExp>> = {
  H225: /highly flammable/,
  H226: /\bis flammable/,
  H304: /harmful if it gets into the airways/,
  H319: /irritates the eyes/,
  H336: /vapour makes one drowsy/,
}

/** What a room has, in °C. */
const room = 20

describe('what the sources say of solvents is what their sheets say', () => {
  // Source: GHS safety data sheets; NIOSH Pocket Guide: flash point 53 °F.
  test('isopropyl alcohol: H225, H319, H336; it can be lit at 11.7 °C', () => {
    const words = source('isopropyl-alcohol')
    for (const code of ['H225', 'H319', 'H336']) expect(words).toMatch(statements[code]!)
    const flashPoint = ((53 - 32) * 5) / 9
    expect(flashPoint).toBeCloseTo(11.7, 1)
    expect(/can be lit well below room temperature/.test(words)).toBe(flashPoint < room - 5)
  })

  // Source: OSHA chemical data; hazard statements partly from memory.
  test('white spirit: H226, H304, H336; its vapour can explode above about 21 °C; the label decides', () => {
    const words = source('white-spirit')
    for (const code of ['H226', 'H304', 'H336']) expect(words).toMatch(statements[code]!)
    expect(words).toMatch(/At room temperature its vapour can explode/)
    expect(words).not.toMatch(/highly flammable|below room temperature/)
    expect(words).toMatch(/the label on your own can decides/)
    expect(words).toMatch(/partly from memory/)
  })

  test('every page that warns of solvents sends to the label and the sheet', () => {
    const caution = readFileSync(new URL('../../content/cautions/solvents.md', import.meta.url), 'utf8')
    for (const words of [/windows open or outdoors/, /no flame/, /gloves/, /label and its safety data sheet/])
      expect(caution).toMatch(words)
  })
})

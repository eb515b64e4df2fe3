import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'

const texts = ['content', 'src/words', 'src/lesson', 'src/features', 'src/pages'].flatMap((folder) =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.(?:mdx?|ts|astro)$/.test(name))
    .map((name) => ({
      name: `${folder}/${name}`,
      text: readFileSync(`${folder}/${name}`, 'utf8').replaceAll(/\s+/g, ' '),
    })),
)

/** What the site used to say and what is not so, each with an example of it. */
const claims: readonly (readonly [claim: string, words: RegExp, example: string])[] = [
  [
    'a strip need not stay over until the gate',
    /mistake is to think that the strip must stay/i,
    'The mistake is to think that the strip must stay over until the gate.',
  ],
  [
    'a hold is settled in one moment',
    /hold is settled in|strong enough at one moment only|springy finger/i,
    'The hold is settled in the one moment when the presser lets go.',
  ],
  ['a push is short', /a push that does not last|the push is short/i, 'The push is short'],
  ['the sweep is a toothed bar', /toothed bar|tooth of the sweep/i, 'A toothed bar, driven by the belt'],
  [
    'a pin leans, and is set upright again',
    /\bpins? (?:\d+ )?(?:still )?(?:leans?|left leaning)\b|upright again|leans? with the sweep|small upright pin/i,
    'Pin 23 leans over.',
  ],
  [
    'pins are pushed along with the sweep, or just sideways',
    /(?:pushes the high ones|pin's) sideways/i,
    'It pushes the high ones sideways',
  ],
  [
    'a rocker is under its pin',
    /(?:small lever|rocker) under each pin|under each pin a rocker/i,
    'a small lever under each pin',
  ],
  ['strips are above the needles', /above lies the strip/i, 'Above lies the strip of the needle'],
  [
    'a catch is a hook',
    /\bhook (?:over|of) (?:R|L|the butt|this one needle)|meets the hook|small hook (?:on a strip|catches|can catch)/i,
    'a small hook catches that needle',
  ],
  [
    'slack lags on opposite sides',
    /opposite side each way|the other way in each direction/i,
    'on the opposite side each way',
  ],
  [
    'what fails one way only is a part that works one way only',
    /must be a part that works one way only|one way only means a part|is telling you where to look/i,
    'must be a part that works one way only',
  ],
  ['each row twice means a pawl', /each row twice means one pawl/i, 'Each row twice means one pawl.'],
  ['the old window and speed', /\b0\.59\b|\b417\b|timingWindow|sweepHalf/, 'up to 0.59 needles'],
]

describe('no text says any more that', () => {
  test.each(claims)('%s', (_, words, example) => {
    expect(example).toMatch(words)
    expect(texts.filter(({ text }) => words.test(text)).map(({ name }) => name)).toEqual([])
  })

  test('and many texts are read for it', () => {
    expect(texts.length).toBeGreaterThan(200)
  })
})

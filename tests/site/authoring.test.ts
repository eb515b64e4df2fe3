import { describe, expect, test } from 'vitest'
import { type Known, mistakesIn } from '@/site/authoring.ts'

const known: Known = {
  terms: new Set(['strip']),
  cautions: new Set(['springs']),
  sources: new Set(['trade']),
  truths: new Set(['wedge']),
  figures: new Set(['chain']),
  facts: new Set(['columns']),
  stateTrouble: (text) => (text.includes('strip.9') ? 'there is no strip 9.' : null),
}
const sound = `---
number: 5
title: A title with 24 in it
---
A <Term id="strip">strip</Term> works <N of="columns" /> columns; strip 3 works columns 3, 11 and 19, and R11.

<Step id="one" title="One" figure="chain" state="at=R3&break=strip.3.seized" to="R9">
See <Go state="at=R8" figure="chain">this</Go>. <Source id="trade" /> <Ours id="wedge" /> <Caution of="springs" />
<Predict of="needle" needle="R3" state="at=R3" ask="Will it?">Yes.</Predict>
</Step>
`

describe('the check of chapters', () => {
  test('finds nothing in a sound chapter', () => {
    expect(mistakesIn(sound, known)).toEqual([])
  })
  test.each([
    ['an unknown term', 'id="strip"', 'id="stripe"', 5, 'there is no term “stripe”'],
    ['an unknown fact', 'of="columns"', 'of="colums"', 5, 'there is no fact “colums”'],
    [
      'an unknown figure',
      'figure="chain" state="at=R3',
      'figure="chian" state="at=R3',
      7,
      'there is no figure “chian”',
    ],
    ['an unknown fault in a state', 'strip.3.seized', 'strip.9.seized', 7, 'there is no strip 9'],
    ['an unknown source', 'id="trade"', 'id="trades"', 8, 'there is no source “trades”'],
    ['an unknown truth', 'id="wedge"', 'id="edge"', 8, 'there is no truth “edge”'],
    ['an unknown caution', 'of="springs"', 'of="spring"', 8, 'there is no caution “spring”'],
    [
      'an unknown component',
      '<Go state="at=R8" figure="chain">this</Go>',
      '<Goto state="at=R8">this</Goto>',
      8,
      'there is no <Goto>',
    ],
    [
      'an unknown kind of prediction',
      'of="needle"',
      'of="noodle"',
      9,
      'there is no kind of prediction “noodle”',
    ],
    ['a step without a state', ' state="at=R3&break=strip.3.seized"', '', 7, '<Step> needs “state”'],
    ['a component that is not closed', 'this</Go>', 'this', 8, 'closing tag for `<Go>`'],
    ['a number typed by hand', 'and R11.', 'and 200 needles.', 5, 'the number 200 is typed by hand'],
  ])('names %s with its line', (_, from, to, line, message) => {
    expect(sound).toContain(from)
    const mistakes = mistakesIn(sound.replace(from, to), known)
    expect(mistakes).toHaveLength(1)
    expect(mistakes[0]?.line).toBe(line)
    expect(mistakes[0]?.message).toContain(message)
  })
})

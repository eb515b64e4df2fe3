import { describe, expect, test } from 'vitest'
import { card } from '../../src/drawings/card.ts'
import { chain } from '../../src/drawings/chain.ts'
import { fabric } from '../../src/drawings/fabric.ts'
import { type Figure, figureIds } from '../../src/drawings/figure.ts'
import { gates } from '../../src/drawings/gates.ts'
import { hold } from '../../src/drawings/hold.ts'
import { margins } from '../../src/drawings/margins.ts'
import { pins } from '../../src/drawings/pins.ts'
import { place } from '../../src/drawings/place.ts'
import { strip } from '../../src/drawings/strip.ts'
import { timing } from '../../src/drawings/timing.ts'
import { cardLibrary, cardsFolder } from '../../src/commands/cards.ts'
import { read } from '../../src/link/read.ts'
import { scenarioOf } from '../../src/link/state.ts'
import { frameAt } from '../../src/mechanism/frame.ts'
import { startRun } from '../../src/mechanism/pass.ts'
import { drawn } from './redraw.ts'

/** Every figure with states that show what it is for: sound, and broken where that matters. */
const pictures: readonly [Figure, Readonly<Record<string, string>>][] = [
  [place, { sound: 'at=R23', seized: 'at=R19&break=strip.3.seized' }],
  [chain, { sound: 'at=R4', seized: 'at=R19&break=strip.3.seized', left: 'pass=2&at=R20&break=pin.5.over' }],
  [card, { sound: 'at=R20', short: 'pass=2&at=R95&break=turn.short.2', askew: 'at=R20&break=card.skew=0.1' }],
  [pins, { sound: 'at=R3.5', worn: 'at=R3&break=sweep.worn=0.7' }],
  [
    timing,
    { sound: 'at=R12', slow: 'at=R12&speed=800&break=strip.3.slow', belt: 'at=R12&break=belt.timing=3' },
  ],
  [strip, { sound: 'at=R11', seized: 'at=R11&break=strip.3.seized' }],
  [hold, { caught: 'at=R3', free: 'at=R2', broken: 'at=R3&break=catch.R3.broken' }],
  [gates, { sound: 'at=R10', low: 'at=R10&break=gate.1.low=0.5' }],
  [fabric, { sound: 'pass=9&at=L20', seized: 'pass=9&at=L20&break=strip.3.seized' }],
  [margins, { new: '', worn: 'wear=0.8' }],
]

/** The drawing as a file that a browser opens with the site's own styles. */
const asFile = (figure: Figure, text: string): string => {
  const { state, troubles } = read(text, cardLibrary(cardsFolder))
  expect(troubles).toEqual([])
  const run = startRun(scenarioOf(state, cardLibrary(cardsFolder)))
  const svg = drawn(figure, { run, frame: frameAt(run, state.pass, state.at) }, 'narrow')
  const sheets = ['tokens.css', 'figure.css', 'figures/detail.css', `figures/${figure.id}.css`]
  const links = sheets.map(
    (sheet) => `<?xml-stylesheet type="text/css" href="../../../src/styles/${sheet}"?>`,
  )
  svg.setAttribute('xmlns', 'http://www.w3.org/2000/svg')
  return `${links.join('\n')}\n${svg.outerHTML.replaceAll('><', '>\n<')}\n`
}

describe('the figures’ pictures', () => {
  test('stand here for every figure', () => {
    expect(pictures.map(([{ id }]) => id)).toEqual([...figureIds])
    expect(pictures.map(([{ number }]) => number)).toEqual(pictures.map((_, n) => n))
  })
  for (const [figure, states] of pictures)
    test.each(Object.entries(states))(`${figure.id} is drawn as reviewed, %s`, async (name, text) => {
      await expect(asFile(figure, text)).toMatchFileSnapshot(`../golden/figures/${figure.id}-${name}.svg`)
    })
})

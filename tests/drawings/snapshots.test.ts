import { describe, expect, test } from 'vitest'
import { figure as card } from '@/drawings/card/figure.ts'
import { figure as chain } from '@/drawings/chain/figure.ts'
import { figure as fabric } from '@/drawings/fabric/figure.ts'
import { type Figure, figureIds } from '@/drawings/shared/figure-contract.ts'
import { figure as gates } from '@/drawings/gates/figure.ts'
import { figure as handBar } from '@/drawings/hand-bar/figure.ts'
import { figure as handPin } from '@/drawings/hand-pin/figure.ts'
import { figure as handStrip } from '@/drawings/hand-strip/figure.ts'
import { figure as hold } from '@/drawings/hold/figure.ts'
import { figure as margins } from '@/drawings/margins/figure.ts'
import { figure as pins } from '@/drawings/pins/figure.ts'
import { figure as place } from '@/drawings/place/figure.ts'
import { figure as scene } from '@/drawings/scene/figure.ts'
import { figure as strip } from '@/drawings/strip/figure.ts'
import { figure as timing } from '@/drawings/timing/figure.ts'
import { cardLibrary, cardsFolder } from '@/commands/cards.ts'
import { read } from '@/link/read.ts'
import { scenarioOf } from '@/link/state.ts'
import { frameAt } from '@/mechanism/frame.ts'
import { startRun } from '@/mechanism/pass.ts'
import { readSceneStep } from '@/words/figures/scene-step.ts'
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
  [handStrip, { sound: 'at=R27', odd: 'at=R27&break=strip.1.slow&break=strip.3.seized&break=strip.6.over' }],
  [handPin, { sound: 'at=R12', sticky: 'at=R12&break=pin.5.sticky=0.5', dead: 'at=R12&break=rocker.7.dead' }],
  [handBar, { sound: 'at=R12', tired: 'at=R12&break=retainer.worn=12' }],
  [scene, { sound: 'at=R12', broken: 'at=R12&break=catch.R11.broken' }],
]

/** How the machine in three dimensions is shown: in the view with the fewest pieces. */
const across = readSceneStep({
  view: 'across',
  layers: 'bed needles strips carriage presser gates',
  subject: 'needle.R11',
})

/** The style sheets of a figure beside the one that bears its name. */
const further: Readonly<Record<string, readonly string[]>> = {
  place: ['drawings/place/carriage.css', 'drawings/place/narrow.css'],
  card: ['drawings/card/turn.css', 'drawings/card/labels.css'],
}

/** The drawing as a file that a browser opens with the site's own styles. */
const asFile = (figure: Figure, text: string): string => {
  const { state, troubles } = read(text, cardLibrary(cardsFolder))
  expect(troubles).toEqual([])
  const run = startRun(scenarioOf(state, cardLibrary(cardsFolder)))
  const svg = drawn(figure, { run, frame: frameAt(run, state.pass, state.at) }, 'narrow', across)
  const sheets = [
    'styles/tokens.css',
    'drawings/shared/figure.css',
    'drawings/shared/detail/detail.css',
    ...(figure.id === 'scene' ? ['drawings/scene/scene.css'] : []),
    ...(further[figure.id] ?? []),
    ...(figure.id.startsWith('hand-') ? ['drawings/shared/detail/by-hand.css'] : []),
    ...(figure.id === 'chain' || figure.id.startsWith('hand-') ? [] : [`drawings/${figure.id}/figure.css`]),
  ]
  const links = sheets.map((sheet) => `<?xml-stylesheet type="text/css" href="../../../src/${sheet}"?>`)
  svg.setAttribute('xmlns', 'http://www.w3.org/2000/svg')
  return `${links.join('\n')}\n${svg.outerHTML.replaceAll('><', '>\n<')}\n`
}

describe('the figures’ pictures', () => {
  test('are here for every figure', () => {
    expect(pictures.map(([{ id }]) => id)).toEqual([...figureIds])
    expect(pictures.map(([{ number }]) => number)).toEqual(pictures.map((_, n) => n))
  })
  for (const [figure, states] of pictures)
    test.each(Object.entries(states))(`${figure.id} is drawn as reviewed, %s`, async (name, text) => {
      await expect(asFile(figure, text)).toMatchFileSnapshot(`../golden/figures/${figure.id}-${name}.svg`)
    })
})

import fc from 'fast-check'
import { expect, test } from 'vitest'
import { figure as card } from '@/drawings/card/figure.ts'
import { figure as chain } from '@/drawings/chain/figure.ts'
import { figure as fabric } from '@/drawings/fabric/figure.ts'
import type { Figure } from '@/drawings/shared/figure-contract.ts'
import { figure as gates } from '@/drawings/gates/figure.ts'
import { figure as hold } from '@/drawings/hold/figure.ts'
import { figure as margins } from '@/drawings/margins/figure.ts'
import { figure as pins } from '@/drawings/pins/figure.ts'
import { figure as place } from '@/drawings/place/figure.ts'
import { figure as strip } from '@/drawings/strip/figure.ts'
import { figure as timing } from '@/drawings/timing/figure.ts'
import { cardLibrary, cardsFolder } from '@/commands/cards.ts'
import { read } from '@/link/read.ts'
import { scenarioOf } from '@/link/state.ts'
import { frameAt } from '@/mechanism/frame.ts'
import { bestSettings } from '@/mechanism/best-setting.ts'
import { measuredMargins, measuredRun } from '@/mechanism/measured-machine.ts'
import { type Measured, measurementNames, measurements } from '@/mechanism/measurement.ts'
import { startRun } from '@/mechanism/pass.ts'
import { describeHandPin } from '@/words/figures/hand-pin.ts'
import { describeHandStrip } from '@/words/figures/hand-strip.ts'
import { describeMend } from '@/words/figures/mend.ts'
import { describeStep, readSceneStep, type SceneAttributes } from '@/words/figures/scene-step.ts'
import { describeFrame } from '@/words/frame-description.ts'
import { isAsked, marginsSentence, settingSentence } from '@/words/measure.ts'

const states: readonly [Figure, string][] = [
  [place, 'at=R8'],
  [chain, 'pass=9&at=R8&break=strip.3.seized'],
  [card, 'pass=2&at=R95&break=turn.short.2'],
  [pins, 'at=R3&break=sweep.worn=0.7'],
  [timing, 'at=R12&speed=800&break=strip.3.slow'],
  [strip, 'at=R23'],
  [hold, 'at=R3&break=catch.R3.broken'],
  [gates, 'at=R10&break=gate.1.low=0.5'],
  [fabric, 'pass=9&at=L20&break=pin.5.low'],
  [margins, 'wear=0.8'],
]

const library = cardLibrary(cardsFolder)

const spoken = ([figure, text]: readonly [Figure, string]): string => {
  const { state } = read(text, library)
  const run = startRun(scenarioOf(state, library))
  const frame = frameAt(run, state.pass, state.at)
  return `#${text}\nFigure ${figure.number}. ${figure.title}.\n${figure.describe(run, frame)}\n${describeFrame(frame)}\n`
}

test('what a screen reader says of ten states reads as reviewed', async () => {
  const all = states.map(spoken)
  for (const words of all) expect(words).not.toMatch(/NaN|undefined|null|\[object/)
  await expect(all.join('\n')).toMatchFileSnapshot('../golden/spoken.txt')
})

const stepOf = (attributes: SceneAttributes, text: string): string => {
  const { state } = read(text, library)
  const run = startRun(scenarioOf(state, library))
  return `#${text}\n${describeStep(run, frameAt(run, state.pass, state.at), readSceneStep(attributes))}\n`
}

const handOf = (describe: Figure['describe'], text: string): string => {
  const { state } = read(text, library)
  const run = startRun(scenarioOf(state, library))
  return `#${text}\n${describe(run, frameAt(run, state.pass, state.at))}\n`
}

const measuredOf = (measured: Measured): string => {
  const exact = Object.fromEntries(
    measurementNames
      .filter((name) => measured[name] !== undefined)
      .map((name) => [name, measurements[name].exact]),
  )
  const machine = { measured, exact, speed: 500 }
  const margins = marginsSentence(measuredMargins(machine, 1), measuredMargins(machine, -1))
  const settings = bestSettings(measuredRun(machine))
    .filter((setting) => isAsked(setting, measured))
    .map((setting) => settingSentence(setting))
  return [
    `measured ${JSON.stringify(measured)}`,
    margins,
    ...settings.map(({ name, said }) => `${name}: ${said}`),
    '',
  ].join('\n')
}

test('what a screen reader says of ten states of the machine to turn, to touch and to measure reads as reviewed', async () => {
  const all = [
    stepOf(
      {
        view: 'front',
        layers: 'reader card pins sweep rockers',
        subject: 'needle.R23',
        also: 'pin.22 pin.24',
      },
      'at=R22.5',
    ),
    stepOf({ view: 'bed', layers: 'bed needles strips', subject: 'strip.7' }, 'at=R23'),
    stepOf(
      {
        view: 'across',
        layers: 'bed needles spurs strips carriage presser gates',
        subject: 'needle.R11',
      },
      'at=R12&break=catch.R11.broken',
    ),
    stepOf({ view: 'carriage', layers: 'needles carriage presser gates', subject: 'needle.R8' }, 'at=R16'),
    stepOf({ view: 'apart' }, 'at=R8&break=strip.3.seized'),
    handOf((run, frame) => describeMend(run, frame, 18), 'pass=20&at=R20&break=strip.3.seized'),
    handOf(describeHandPin, 'card=none&at=R12&break=pin.12.sticky=0.5'),
    handOf(describeHandStrip, 'at=R27&break=strip.1.slow'),
    measuredOf({ presserLeft: 1.1 }),
    measuredOf({ presserLeft: 0.7, catchDepth: 0.95 }),
  ]
  for (const words of all) expect(words).not.toMatch(/NaN|undefined|null|\[object/)
  await expect(all.join('\n')).toMatchFileSnapshot('../golden/spoken-machine.txt')
})

/** The sentences of a text. */
const sentences = (text: string): string[] => text.split(/(?<=[.?!]) /)

test('a picture’s words and the sentence under it say nothing twice, whatever the state', () => {
  const randomState = fc.record({
    pass: fc.integer({ min: 1, max: 12 }),
    at: fc.constantFrom('L95', 'L40', 'L1', 'R3', 'R8', 'R60', 'R100'),
    fault: fc.constantFrom(
      '',
      '&break=strip.3.seized',
      '&break=pin.5.low',
      '&break=catch.R3.broken',
      '&break=gate.1.low=0.5',
    ),
  })
  fc.assert(
    fc.property(randomState, ({ pass, at, fault }) => {
      const { state } = read(`pass=${pass}&at=${at}${fault}`, library)
      const run = startRun(scenarioOf(state, library))
      const frame = frameAt(run, state.pass, state.at)
      const caption = sentences(describeFrame(frame))
      for (const [figure] of states) {
        const words = sentences(figure.describe(run, frame))
        expect(words.filter((one) => caption.includes(one))).toEqual([])
      }
    }),
    { numRuns: 60 },
  )
})

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
import { startRun } from '@/mechanism/pass.ts'
import { describeFrame } from '@/words/frame-description.ts'

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

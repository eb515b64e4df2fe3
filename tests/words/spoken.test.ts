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

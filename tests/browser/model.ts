import { cardLibrary, cardsFolder } from '@/commands/cards.ts'
import { read } from '@/link/read.ts'
import { scenarioOf, type State } from '@/link/state.ts'
import { needleName } from '@/mechanism/bed.ts'
import { dimensions } from '@/mechanism/dimensions.ts'
import { type Frame, frameAt, sinceLetGo } from '@/mechanism/frame.ts'
import { type Run, startRun } from '@/mechanism/pass.ts'
import { type Needle, toNeedle } from '@/mechanism/indices.ts'

/** The site's own cards. */
export const library = cardLibrary(cardsFolder)

/** What the model makes of a link's text. */
export interface Moment {
  readonly state: State
  readonly run: Run
  readonly frame: Frame
}

export const momentOf = (text: string): Moment => {
  const { state } = read(text, library)
  const run = startRun(scenarioOf(state, library))
  return { state, run, frame: frameAt(run, state.pass, state.at) }
}

/** How a needle should be marked where it has come out wrong by now; null where it has not. */
const wrongMark = ({ frame }: Moment, index: Needle): 'missed' | 'extra' | 'unmoved' | null => {
  const { pass } = frame
  if (sinceLetGo(frame.x, index, pass.way) < dimensions.gateLag) return null
  const came = pass.came[index]
  if (came === pass.asked[index]) return null
  if (came === 'unmoved') return 'unmoved'
  return came === 'selected' ? 'extra' : 'missed'
}

/** The names of all needles of the bed, from the left. */
const needleNames = Array.from({ length: dimensions.needles }, (_, index) => needleName(toNeedle(index)))

/** The bed's needles that have come out wrong by now, with their marks. */
export const wrongNeedles = (moment: Moment): [name: string, mark: string][] =>
  needleNames.flatMap((name, index): [string, string][] => {
    const mark = wrongMark(moment, toNeedle(index))
    return mark === null ? [] : [[name, mark]]
  })

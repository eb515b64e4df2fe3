import type { Frame } from '../../mechanism/frame.ts'
import { chanceOfSelection } from '../../mechanism/chance.ts'
import { leastMargin, type Margin, type MarginId, margins } from '../../mechanism/margins.ts'
import type { Run } from '../../mechanism/pass.ts'
import { isChanceWhole } from '../../mechanism/trials.ts'
import { millimetres, withUnit } from '../lists.ts'

interface MarginWords {
  /** The number that its part has on the whole site. */
  readonly part: number
  /** The stage, and what it needs. */
  readonly stage: string
  readonly name: string
  /** What the length is, in a few words. */
  readonly means: string
}

/** Every margin in words. */
export const marginWords: Readonly<Record<MarginId, MarginWords>> = {
  hole: { part: 1, stage: 'Card', name: 'hole over the pin', means: 'how much further it may lie out' },
  lowPin: { part: 2, stage: 'Pin', name: 'low, clear of the sweep', means: 'gap between tip and edge' },
  highPin: { part: 3, stage: 'Sweep', name: 'bite on a high pin', means: 'overlap to spare' },
  push: { part: 4, stage: 'Rocker', name: 'push past the reach', means: 'strip’s shift to spare' },
  release: { part: 5, stage: 'Strip', name: 'home in time', means: 'still to shift, eight needles on' },
  dip: { part: 6, stage: 'Hold', name: 'dip past the catch', means: 'dip of the butt to spare' },
  held: { part: 6, stage: 'Hold', name: 'held until the gate', means: 'strip’s shift above letting go' },
  heldUnderFirst: {
    part: 7,
    stage: 'Gate',
    name: 'held butt passes below',
    means: 'gap below the first gate',
  },
  freeOverFirst: {
    part: 7,
    stage: 'Gate',
    name: 'free butt is stopped',
    means: 'overlap with the first gate',
  },
  heldOverSecond: {
    part: 8,
    stage: 'Gate',
    name: 'held butt is taken',
    means: 'overlap with the second gate',
  },
}

/** A margin's length as a label: 0.72 mm, −0.14 mm. */
export const marginLength = ({ mm }: Margin): string => millimetres(mm).replace('-', '−')

/** A chance for a label: 97.6 %; never 0 or 100 %, which no chance is. */
export const percent = (chance: number): string => {
  if (chance > 0.9995) return `over ${withUnit(99.9, '%')}`
  if (chance < 0.0005) return `under ${withUnit(0.1, '%')}`
  return withUnit((100 * chance).toFixed(1), '%')
}

/** How the machine is run, as the margins depend on it. */
export const running = (run: Run, frame: Frame): string =>
  `to the ${frame.pass.way === 1 ? 'right' : 'left'}, at ${withUnit(run.scenario.speed, 'mm/s')}`

const named = ({ id }: Margin): string => {
  const { stage, name } = marginWords[id]
  return `${stage.toLowerCase()}, ${name}`
}

/** Figure 9 in words: the least margin, what fails, and all the rest. */
export const describeMargins = (run: Run, frame: Frame): string => {
  const all = margins(run, frame.pass.way)
  const least = leastMargin(all)
  const failing = all.filter(({ mm }) => mm <= 0)
  const [first] = failing
  const verdict = !first
    ? `Every stage has something left. The least is ${marginLength(least)}: ${named(least)}.`
    : `Past its limit: ${failing.map((margin) => `${named(margin)} (${marginLength(margin)})`).join('; ')}.`
  const rest = all.filter((margin) => margin !== least && margin.mm > 0)
  return [
    `What each stage has left before it fails, in a pass ${running(run, frame)}, with wear ${run.scenario.wear} on a scale from 0 to 1.`,
    verdict,
    rest.length === 0
      ? ''
      : `${first ? 'Left at the others' : 'The others'}: ${rest.map((margin) => `${named(margin)}: ${marginLength(margin)}`).join('; ')}.`,
    `A needle whose pin is through a hole is selected with a chance of ${percent(chanceOfSelection(run, frame.pass.way))}, over all machines of this wear${isChanceWhole(run) ? '' : ', faults of single parts left aside'}.`,
  ]
    .filter((sentence) => sentence !== '')
    .join(' ')
}

import { type CheckId, checkOf, opensMachine } from '../find/checks.ts'
import { allColumns, toCardRow } from '../mechanism/indices.ts'
import { conditionOf } from '../mechanism/condition.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import { faultKinds, type FaultKindName, type Stage } from '../mechanism/fault-kinds.ts'
import { pinHeight } from '../mechanism/pin.ts'
import { soundScenario } from '../mechanism/scenario.ts'
import { faultPhrase } from '../words/faults.ts'
import { listed } from '../words/lists.ts'
import type { NeedleRange } from './needle-range.ts'
import { type Ground, mainCardRows, passOf, type Setup } from './setup.ts'
import { outcomesKey, wrongWords } from './bed-view.ts'

/** What a check finds: in words, and as a text that differs wherever the finding does. */
export interface CheckFinding {
  readonly key: string
  readonly words: string
}

/** Something a repairer can do to learn more, with what the table of checks says that it costs. */
export interface Check {
  readonly id: string
  readonly label: string
  readonly minutes: number
  readonly mostMinutes?: number
  readonly opens: boolean
  /** How much can be made worse by opening the machine for it; 0 where nothing is opened. */
  readonly riskOfOpening: number
  /** The machine in this check; the setup as it is where one only looks. */
  readonly setup: (setup: Setup) => Setup
  readonly finds: (ground: Ground, setup: Setup, range: NeedleRange) => CheckFinding
}

const asIs = (setup: Setup): Setup => setup

const findingOf = (words: string): CheckFinding => ({ key: words, words })

/** A check that makes a pass and looks at the bed. */
const byPass = (change: (setup: Setup) => Setup): Pick<Check, 'setup' | 'finds'> => ({
  setup: change,
  finds: (ground, setup, range) => {
    const pass = passOf(ground, change(setup))
    return { key: outcomesKey(pass, range), words: wrongWords(pass, range) }
  },
})

/** A check that looks at parts: it finds the faults that sit there. */
const byEye = (sees: (kind: FaultKindName) => boolean): Pick<Check, 'setup' | 'finds'> => ({
  setup: asIs,
  finds: (_, { faults = [] }) => {
    const seen = faults.filter(({ kind }) => sees(kind)).map(faultPhrase)
    return findingOf(seen.length === 0 ? 'nothing out of place' : `“${listed(seen)}”`)
  },
})

/** Pins whose height is not the one that the card as punched gives them. */
const pinsSeen = ({ library }: Ground, setup: Setup): CheckFinding => {
  const card = setup.card?.kind === 'own' ? setup.card.rows : mainCardRows(library)
  const row = toCardRow((((setup.pass ?? 1) - 1) % card.length) + 1, card.length)
  const now = conditionOf({ ...soundScenario(card), faults: setup.faults ?? [] })
  const sound = conditionOf(soundScenario(card))
  const odd = allColumns.flatMap((column) => {
    const reading = { row, raised: setup.pass ?? 1 }
    const change = pinHeight(now, reading, column) - pinHeight(sound, reading, column)
    return change === 0 ? [] : [`pin ${column} ${change > 0 ? 'high' : 'low'}`]
  })
  const leaning = allColumns.flatMap((column) => (now.pinOver[column - 1] ? [`pin ${column} leaning`] : []))
  return findingOf(listed([...odd, ...leaning]) || 'every pin as the card asks')
}

const inStages =
  (...stages: readonly Stage[]) =>
  (kind: FaultKindName): boolean =>
    stages.includes(faultKinds[kind].stage)
const named =
  (...starts: readonly string[]) =>
  (kind: FaultKindName): boolean =>
    starts.some((start) => kind.startsWith(start))

/** What a check costs, by the one table of checks; `times` is how often it is made. */
const effortOf = (
  id: CheckId,
  times = 1,
): Pick<Check, 'minutes' | 'mostMinutes' | 'opens' | 'riskOfOpening'> => {
  const check = checkOf(id)
  const opens = opensMachine(check)
  return {
    minutes: times * check.minutes,
    ...(check.mostMinutes === undefined ? {} : { mostMinutes: check.mostMinutes }),
    opens,
    riskOfOpening: opens ? check.risk : 0,
  }
}

/** Whether a check costs more than another: it opens more of the machine, or as much and takes longer. */
export const isDearer = (one: Check, other: Check): boolean =>
  one.riskOfOpening === other.riskOfOpening
    ? one.minutes > other.minutes
    : one.riskOfOpening > other.riskOfOpening

/** The checks from the cheapest to the dearest; whatever opens the machine comes last. */
export const checks: readonly Check[] = [
  {
    id: 'back',
    label: 'Do the next row, the other way',
    ...effortOf('next-row'),
    ...byPass((setup) => ({ ...setup, pass: (setup.pass ?? 1) + 1 })),
  },
  {
    id: 'settings',
    label: 'Look at the settings and at how the card lies',
    ...effortOf('card'),
    ...byEye(named('card.torn', 'card.blocked', 'card.side', 'card.skew', 'card.reversed')),
  },
  {
    id: 'slower',
    label: 'Do the same row slowly',
    ...effortOf('row-slow'),
    ...byPass((setup) => ({ ...setup, speed: 0.2 * dimensions.speed })),
  },
  {
    id: 'row',
    label: 'Do another row, the same way',
    ...effortOf('next-row', 2),
    ...byPass((setup) => ({ ...setup, pass: (setup.pass ?? 1) + 2 })),
  },
  {
    id: 'no-card',
    label: 'Take the card out and do a row',
    ...effortOf('no-card'),
    ...byPass((setup) => ({ ...setup, card: { kind: 'none' } })),
  },
  {
    id: 'bar',
    label: 'Draw out the retainer bar and look at the needles',
    ...effortOf('retainer'),
    ...byEye(named('needle', 'retainer')),
  },
  {
    id: 'pins',
    label: 'Look at the pins from the front of the card reader',
    ...effortOf('pins'),
    setup: asIs,
    finds: pinsSeen,
  },
  {
    id: 'cams',
    label: 'Take the carriage off and look at its cams',
    ...effortOf('carriage'),
    ...byEye(named('presser', 'gate')),
  },
  {
    id: 'push',
    label: 'Push each strip by hand and let it go',
    ...effortOf('strips'),
    ...byEye(named('strip')),
  },
  {
    id: 'cover',
    label: 'Take the covers off the bed and look at belt, sweep, strips and catches',
    ...effortOf('cover'),
    ...byEye((kind) => inStages('sweep', 'strip')(kind) || named('catch')(kind)),
  },
  {
    id: 'reader',
    label: 'Take the card reader off and look at pins and rockers',
    ...effortOf('reader'),
    ...byEye(inStages('pin', 'rocker')),
  },
]

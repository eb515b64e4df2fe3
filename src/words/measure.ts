import type { BestSetting, SettingName } from '../mechanism/best-setting.ts'
import type { MeasuredMargin } from '../mechanism/measured-machine.ts'
import { type Measured, type MeasurementName, measurements } from '../mechanism/measurement.ts'
import { marginWords } from './figures/margins.ts'
import { listed, millimetres, withUnit } from './lists.ts'

/** What is measured, in the words of a sentence. */
export const measurementWords: Readonly<Record<MeasurementName, string>> = {
  pitch: 'the needle pitch',
  pinHigh: 'the height of a pin through a hole',
  pinLow: 'the height of a pin stopped by card',
  sweepEdge: 'the height of the sweep’s edge',
  sweepThrow: 'how far a pin is pushed',
  slack: 'the play of the belt',
  shift: 'how far a strip goes over',
  home: 'a strip’s time to come home',
  reach: 'a catch’s reach',
  presserRight: 'the presser’s dip, moving right',
  presserLeft: 'the presser’s dip, moving left',
  catchDepth: 'the depth of a held butt',
  gate1: 'the lower edge of the first gate',
  gate2: 'the lower edge of the second gate',
}

/** A measured value with its unit: 1.35 mm, 2 needles, 300 ms. */
export const measuredText = (name: MeasurementName, value: number): string => {
  const { unit } = measurements[name]
  if (unit === 'mm') return millimetres(value)
  return withUnit(unit === 'ms' ? value.toFixed(0) : Number(value.toFixed(2)).toString(), unit)
}

/** What kind of outcome a margin with its uncertainty has: it holds, it may fail, or it fails. */
export type MarginState = 'holds' | 'doubtful' | 'fails'

/** A margin that may be out by more than it is: nobody knows whether it holds. */
export const marginState = ({ mm, likely }: MeasuredMargin): MarginState =>
  mm < 0 && -mm >= likely ? 'fails' : mm < likely ? 'doubtful' : 'holds'

/** A margin's stage and name, for a sentence. */
const named = ({ id }: MeasuredMargin): string =>
  `${marginWords[id].stage.toLowerCase()}: ${marginWords[id].name}`

/** A length with what it may be out by: 0.2 mm ± 0.05 mm. */
export const lengthWithError = (mm: number, error: number): string =>
  error < 0.005 ? millimetres(mm) : `${millimetres(mm)} ± ${millimetres(error)}`

/** What the margins of both ways come to, in one or two sentences. */
export const marginsSentence = (
  right: readonly MeasuredMargin[],
  left: readonly MeasuredMargin[],
): string => {
  const both = [
    ...right.map((margin) => ({ ...margin, way: 'right' })),
    ...left.map((margin) => ({ ...margin, way: 'left' })),
  ]
  const measured = both.filter(({ isMeasured }) => isMeasured)
  if (measured.length === 0) return 'Nothing is measured yet: what stands here is the training machine’s.'
  const failing = measured.filter((margin) => marginState(margin) === 'fails')
  const said = (margins: typeof both): string => {
    const names = new Map<string, Set<string>>()
    for (const margin of margins)
      names.set(named(margin), (names.get(named(margin)) ?? new Set()).add(margin.way))
    return listed(
      [...names].map(([name, ways]) => (ways.size === 2 ? name : `${name}, moving ${[...ways].join('')}`)),
    )
  }
  if (failing.length > 0) return `With these values this fails: ${said(failing)}.`
  const doubtful = measured.filter((margin) => marginState(margin) === 'doubtful')
  if (doubtful.length > 0)
    return `Nothing fails for certain, but this is too near to tell with such exactness: ${said(doubtful)}.`
  const least = measured.reduce((best, margin) => (margin.mm < best.mm ? margin : best))
  return `With these values every stage that you measured works. The least left is ${lengthWithError(least.mm, least.likely)}: ${said(both.filter(({ id, mm }) => id === least.id && Math.abs(mm - least.mm) < 0.005))}.`
}

const settingWords: Readonly<
  Record<
    SettingName,
    {
      readonly name: string
      readonly more: string
      readonly less: string
      readonly needs: readonly MeasurementName[]
    }
  >
> = {
  presserRight: {
    name: 'Presser, moving right',
    more: 'deeper',
    less: 'shallower',
    needs: ['presserRight', 'catchDepth', 'gate1'],
  },
  presserLeft: {
    name: 'Presser, moving left',
    more: 'deeper',
    less: 'shallower',
    needs: ['presserLeft', 'catchDepth', 'gate1'],
  },
  gate1: { name: 'First gate', more: 'lower', less: 'higher', needs: ['gate1', 'catchDepth'] },
  sweepEdge: {
    name: 'Sweep over the pins',
    more: 'higher',
    less: 'lower',
    needs: ['sweepEdge', 'pinHigh', 'pinLow'],
  },
  timing: { name: 'Belt', more: 'to the right', less: 'to the left', needs: ['slack'] },
}

/** What of a setting's own values was not measured, so that the training machine's stand in. */
export const notMeasured = ({ name }: BestSetting, measured: Measured): MeasurementName[] =>
  settingWords[name].needs.filter((need) => measured[need] === undefined)

/** Whether anything that a setting depends on was measured. */
export const isAsked = ({ name }: BestSetting, measured: Measured): boolean =>
  settingWords[name].needs.some((need) => measured[need] !== undefined)

const amount = ({ unit }: BestSetting, value: number): string =>
  unit === 'mm' ? millimetres(value) : withUnit(Number(value.toFixed(2)), 'needles')

/** Below this, in its unit, a setting is where it should be. */
const near = { mm: 0.03, needles: 0.1 } as const

/** What to set, by how much, and what that gains; or that it may stay. */
export const settingSentence = (setting: BestSetting): { readonly name: string; readonly said: string } => {
  const { name, more, less } = settingWords[setting.name]
  const by = setting.best - setting.now
  if (Math.abs(by) < near[setting.unit])
    return {
      name,
      said: `leave it where it is: on its worse side ${amount(setting, setting.roomNow)} are left, and no other place leaves more.`,
    }
  const now =
    setting.roomNow < 0
      ? `it is ${amount(setting, -setting.roomNow)} beyond what works`
      : `on its worse side only ${amount(setting, setting.roomNow)} are left`
  const best =
    setting.roomBest < 0
      ? `Even the best place, ${amount(setting, Math.abs(by))} ${by > 0 ? more : less}, is ${amount(setting, -setting.roomBest)} short: look for what is worn.`
      : `Set it ${amount(setting, Math.abs(by))} ${by > 0 ? more : less}: that leaves ${amount(setting, setting.roomBest)} on both sides.`
  return { name, said: `at ${amount(setting, setting.now)} ${now}. ${best}` }
}

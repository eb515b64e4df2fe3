import type { BestSetting, SettingName } from '../mechanism/best-setting.ts'
import type { MeasuredMargin } from '../mechanism/measured-machine.ts'
import { type Measured, type MeasurementName, measurements } from '../mechanism/measurement.ts'
import { marginWords } from './figures/margins.ts'
import { listed, millimetres, withUnit } from './lists.ts'

/** What is measured, in the words of a sentence. */
export const measurementWords: Readonly<Record<MeasurementName, string>> = {
  needles: 'the number of needles',
  pitch: 'the needle pitch',
  pinHigh: 'the height of a pin through a hole',
  pinLow: 'the height of a pin stopped by card',
  sweepEdge: 'the height of the sweep’s edge',
  sweepThrow: 'how far a pin is pushed',
  slack: 'the play of the belt',
  timing: 'how far to the right the belt has the sweep',
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
  if (measured.length === 0) return 'Nothing is measured yet: what is here is the training machine’s.'
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
  gate2: { name: 'Second gate', more: 'lower', less: 'higher', needs: ['gate2', 'catchDepth'] },
  timing: {
    name: 'Belt on its teeth',
    more: 'on to the right',
    less: 'back to the left',
    needs: ['timing', 'slack'],
  },
  seat: {
    name: 'Reader’s seat, once the belt is on the right tooth',
    more: 'to the right',
    less: 'to the left',
    needs: ['timing', 'slack'],
  },
  bar: {
    name: 'A new retainer bar',
    more: 'slower',
    less: 'quicker',
    needs: ['presserRight', 'presserLeft', 'gate1', 'pitch'],
  },
}

/** What of a setting's own values was not measured, so that the training machine's stand in. */
export const notMeasured = ({ name }: BestSetting, measured: Measured): MeasurementName[] =>
  settingWords[name].needs.filter((need) => measured[need] === undefined)

/** Whether anything that a setting depends on was measured. */
export const isAsked = ({ name }: BestSetting, measured: Measured): boolean =>
  settingWords[name].needs.some((need) => measured[need] !== undefined)

const amount = ({ unit }: BestSetting, value: number): string =>
  unit === 'mm'
    ? millimetres(value)
    : withUnit(Number(value.toFixed(2)), unit === 'ms' ? 'ms' : Math.abs(value) === 1 ? 'needle' : 'needles')

/** How far something is to be moved: the belt by whole teeth, all else in its unit. */
const step = (setting: BestSetting, by: number): string => {
  if (setting.unit !== 'teeth') return amount(setting, by)
  const teeth = Math.round(by)
  return withUnit(teeth, teeth === 1 ? 'tooth' : 'teeth')
}

/** Below this, in its unit, a setting is where it should be. */
const near = { mm: 0.03, needles: 0.1, teeth: 0.5, ms: 0.05 } as const

/**
 * What a new bar would gain. How quick the butts are is not measured, so there is only to say how slow they may be, and how
 * it shows that they are slower.
 */
const barSentence = (setting: BestSetting): string => {
  const longest = setting.now + setting.roomNow
  const worst = `may take up to ${withUnit(longest.toFixed(1), 'ms')}, by their time constant, before the first gate misses them at this speed`
  return setting.roomNow < 0
    ? `free butts ${worst}; even a new one, as the training machine’s, is too slow for it. Set presser and gate first.`
    : `free butts ${worst}; a new one, as the training machine’s, leaves ${withUnit(setting.roomBest.toFixed(1), 'ms')} of it. Fit one if needles come unasked here and there when the carriage is fast, and not when it is slow.`
}

/** The second gate, which has one side only: a held butt must pass over its edge. */
const secondGateSentence = (setting: BestSetting): string => {
  const by = setting.best - setting.now
  if (by < near.mm)
    return `leave it where it is: ${millimetres(setting.roomNow)} are left under a held butt, which is enough.`
  const now =
    setting.roomNow < 0
      ? `it is ${millimetres(-setting.roomNow)} above a held butt, which it misses`
      : `only ${millimetres(setting.roomNow)} are left under a held butt`
  return `at ${millimetres(setting.now)} ${now}. Set it ${millimetres(by)} lower: that leaves ${millimetres(setting.roomBest)}, as much as the first gate has at its best. What bounds it from below is the bed.`
}

/** What to set, by how much, and what that gains; or that it may stay. */
export const settingSentence = (setting: BestSetting): { readonly name: string; readonly said: string } => {
  const { name, more, less } = settingWords[setting.name]
  if (setting.name === 'bar') return { name, said: barSentence(setting) }
  if (setting.name === 'gate2') return { name, said: secondGateSentence(setting) }
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
      ? `Even the best place, ${step(setting, Math.abs(by))} ${by > 0 ? more : less}, is ${amount(setting, -setting.roomBest)} short: look for what is worn.`
      : `Set it ${step(setting, Math.abs(by))} ${by > 0 ? more : less}: that leaves ${amount(setting, setting.roomBest)} on both sides.`
  return { name, said: `at ${amount(setting, setting.now)} ${now}. ${best}` }
}

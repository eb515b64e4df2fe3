import { type CardPlace, usualPlace } from '../mechanism/bed.ts'
import { type Fault, faultId } from '../mechanism/fault.ts'
import { entriesFor, type Reach, reachOf } from './entries.ts'
import { conditionsOf, type Setting, settingOf, type Shown, shownBy } from './shown.ts'
import { soundBeds } from './sound.ts'
import type { View } from './view.ts'

/** One single fault of the dictionary. */
export interface Entry {
  readonly fault: Fault
  readonly id: string
  readonly reach: Reach
  /** What it shows in each of the dictionary's views. */
  readonly shown: readonly Shown[]
  /** A short key that entries share only where they show the same. */
  readonly key: string
}

/** What every single fault shows in some views, beside the sound machine. */
export interface Dictionary {
  /** Where the columns of the card lie along the bed, in every view. */
  readonly place: CardPlace
  readonly views: readonly View[]
  readonly settings: readonly Setting[]
  readonly entries: readonly Entry[]
}

/** A text that two predictions share only where they are the same. */
export const signatureOf = (shown: readonly Shown[]): string =>
  shown.map(({ changed, chance }) => `${changed.length === 0 ? '' : changed.join()}${chance || ''}`).join(' ')

/** The dictionary of these views; of every single fault, or only of those given. */
export const dictionaryOf = (
  views: readonly View[],
  faults: readonly Fault[] = entriesFor(views),
): Dictionary => {
  const beds = soundBeds()
  // Without a view no needle is looked at, and it makes no difference.
  const place = views[0] ?? usualPlace
  const settings = views.map((view) => settingOf(view, beds))
  const keys = new Map<string, string>()
  const entries = faults.map((fault): Entry => {
    const conditionIn = conditionsOf([fault])
    const shown = settings.map((setting) => shownBy(fault, setting, conditionIn))
    const long = signatureOf(shown)
    const key = keys.get(long) ?? String(keys.size)
    keys.set(long, key)
    return { fault, id: faultId(fault), reach: reachOf(fault, place), shown, key }
  })
  return { place, views, settings, entries }
}

/** Things grouped by a key, in the order of each group's first. */
export const groupBy = <T>(things: readonly T[], keyOf: (thing: T) => string): T[][] => {
  const groups = new Map<string, T[]>()
  for (const thing of things) {
    const key = keyOf(thing)
    const group = groups.get(key)
    if (group) group.push(thing)
    else groups.set(key, [thing])
  }
  return [...groups.values()]
}

/** The entries grouped by what they show: those of a class can't be distinguished in the dictionary's views. */
export const classesOf = ({ entries }: Dictionary): Entry[][] => groupBy(entries, ({ key }) => key)

/** Whether an entry shows anything at all in the dictionary's views. */
export const isShown = ({ shown }: Entry): boolean =>
  shown.some(({ changed, chance }) => changed.length > 0 || chance > 0)

import {
  columnChances,
  needleChances,
  otherNeedle,
  type Reader,
  stickyChances,
  wrongNotes,
} from '@/find/chances.ts'
import type { Query } from '@/find/query.ts'
import { columnOfNeedle, usualPlace } from '@/mechanism/bed.ts'
import { hasHole } from '@/mechanism/card.ts'
import { faultOf } from '@/mechanism/read-fault.ts'
import { allNeedles, type Column, type Needle, ofRow, toCardRow } from '@/mechanism/indices.ts'
import { at } from '@/mechanism/lookup.ts'
import { startRun } from '@/mechanism/pass.ts'
import { soundScenario } from '@/mechanism/scenario.ts'

/** In which looks something is so. */
export type InLooks = readonly boolean[]

/** The looks in which the card has a hole for a column. */
export const askedOf = ({ passes }: Query, column: Column): InLooks =>
  passes.map(({ card, row }) => hasHole(ofRow(card!, toCardRow(row!, card!.length)), column))

/** The needles of a column. */
export const needlesOf = (column: Column): Needle[] =>
  allNeedles.filter((needle) => columnOfNeedle(needle, usualPlace) === column)

/** How often a needle that nothing holds comes late by a worn bar, in the model's own passes of a card without a hole. */
export const shareLate = (ms: number, speed: number, wear: number): number => {
  const seeds = Array.from({ length: 30 }, (_, n) => n + 1)
  const came = seeds.flatMap((seed) => [
    ...startRun({
      ...soundScenario([0]),
      faults: [faultOf(`retainer.worn=${ms}`)],
      speed,
      wear,
      seed,
    }).passOf(1).came,
  ])
  return came.filter((outcome) => outcome === 'selected').length / came.length
}

/** Chance of a note of a needle that is selected with a chance, and plain otherwise. */
const noteChance = (noted: string, selected: number, slip: number): number => {
  const of = (did: string): number =>
    noted === did ? 1 - slip : slip * (noted === 'u' ? wrongNotes.unmoved : wrongNotes.other)
  return selected * of('s') + (1 - selected) * of('p')
}

/** How likely a needle's notes are, as sound and in every other state, where it is offered a hold in these looks. */
export const needleSum = (
  { passes, slip }: Query,
  needle: Needle,
  offered: InLooks,
  late: (speed: number) => number,
): { readonly sound: number; readonly all: number } => {
  const product = (of: (noted: string, look: number) => number): number =>
    passes.reduce((all, pass, look) => all * of(pass.needles.charAt(needle), look), 1)
  const lateIn = (look: number): number => late(at(passes, look).speed)
  const { noHold, stiff, gone, other } = needleChances
  const sound =
    (1 - noHold - stiff - gone - other) *
    product((noted, look) => noteChance(noted, at(offered, look) ? 1 : lateIn(look), slip))
  return {
    sound,
    all:
      sound +
      noHold * product((noted, look) => noteChance(noted, lateIn(look), slip)) +
      // A stiff needle is late in every pass at these speeds.
      stiff * product((noted) => noteChance(noted, 1, slip)) +
      gone *
        product((noted) =>
          noted === 'u' ? 1 - slip : slip * (noted === 's' ? wrongNotes.goneSelected : wrongNotes.gonePlain),
        ) +
      other *
        product((noted) =>
          noted === 's' ? otherNeedle.selected : noted === 'p' ? otherNeedle.plain : otherNeedle.unmoved,
        ),
  }
}

/** Every choice of looks in which a pin that does not stay pushed over may be up, with its chance. */
export const columnChoices = (
  asked: InLooks,
  reader: Reader,
  isSticky = true,
): { readonly up: InLooks; readonly chance: number }[] => {
  const { dead, high, over, sticky, other } = columnChances[reader]
  const choices = Array.from({ length: 1 << asked.length }, (_, code) =>
    asked.map((__, look) => (code & (1 << look)) !== 0),
  )
  const stuck = choices.filter((up) => up.every((isUp, look) => !isUp || at(asked, look)))
  return [
    { up: asked, chance: 1 - dead - high - over - sticky - other },
    { up: asked.map(() => false), chance: dead },
    { up: asked.map(() => true), chance: high },
    ...choices.map((up) => ({ up, chance: other / choices.length })),
    ...(isSticky
      ? stuck.flatMap((up) =>
          stickyChances.map(({ share, chance }) => ({
            up,
            chance:
              sticky *
              chance *
              up.reduce((all, isUp, look) => (at(asked, look) ? all * (isUp ? 1 - share : share) : all), 1),
          })),
        )
      : []),
  ]
}

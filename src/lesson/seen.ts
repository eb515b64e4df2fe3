import { columnOfNeedle, needleName, stripOfNeedle } from '../mechanism/bed.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import type { Outcome } from '../mechanism/gate.ts'
import type { Pass } from '../mechanism/pass.ts'
import type { Departure } from '../mechanism/reason.ts'
import { listed, needlesListed } from '../words/lists.ts'
import { causeOf } from '../words/reason.ts'
import { indexesOf, type Scene, type Stretch, wayWord } from './scene.ts'
import type { Picture } from './question.ts'

/** The needles of a stretch that came out otherwise than asked. */
export const wrongIn = (pass: Pass, { first, count }: Stretch): Departure[] =>
  pass.departures.filter(({ needle }) => needle >= first && needle < first + count)

/** One text for all that a stretch of the bed shows after a pass. */
export const bedKey = (pass: Pass, { first, count }: Stretch): string =>
  pass.came.slice(first, first + count).join()

/** What a needle is called that came out so without being asked. */
export const outcomeWords: Readonly<Record<Outcome, string>> = {
  plain: 'missed',
  selected: 'selected unasked',
  unmoved: 'not moved',
}

/** What is wrong on a stretch of the bed: R3 and R11 missed. */
export const wrongWords = (pass: Pass, stretch: Stretch): string => {
  const wrong = wrongIn(pass, stretch)
  if (wrong.length === 0) return 'every needle right'
  const came = new Set(pass.came.slice(stretch.first, stretch.first + stretch.count))
  if (came.size === 1 && came.has('plain')) return 'nothing selected'
  if (came.size === 1 && came.has('selected')) return 'everything selected'
  return listed(
    Object.entries(outcomeWords).flatMap(([outcome, word]) => {
      const some = wrong.filter((departure) => departure.came === outcome)
      return some.length === 0 ? [] : [`${needlesListed(some.map(({ needle }) => needle))} ${word}`]
    }),
  )
}

const cameWords = ({ came }: Departure): string =>
  came === 'selected' ? 'is selected without being asked' : came === 'plain' ? 'is missed' : 'does not move'

/** Why a needle came out as it did, in one sentence. */
export const whyNeedle = (pass: Pass, index: number): string => {
  const name = needleName(index)
  const departure = pass.departures.find(({ needle }) => needle === index)
  if (departure) return `${name} ${cameWords(departure)}: ${causeOf(departure)}.`
  const came = pass.came[index] === 'selected' ? 'is selected' : 'stays plain'
  return `${name} is on strip ${stripOfNeedle(index)} and ${came}, as the card asks of column ${columnOfNeedle(index)}.`
}

/** A stretch of the bed after a pass, as a picture. */
export const bedPicture = (pass: Pass, stretch: Stretch, scene: Scene): Picture => {
  const speed = scene.speed === undefined || scene.speed === dimensions.speed ? '' : `, ${scene.speed} mm/s`
  const row = pass.row === null ? 'no card' : `card row ${pass.row}`
  const indexes = indexesOf(stretch)
  return {
    kind: 'bed',
    title: `Pass ${pass.pass}, to the ${wayWord(pass.way)}, ${row}${speed}`,
    first: stretch.first,
    asked: indexes.map((index) => pass.asked[index] ?? 'plain'),
    came: indexes.map((index) => pass.came[index] ?? 'plain'),
    words: wrongWords(pass, stretch),
  }
}

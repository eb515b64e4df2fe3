import { readNeedle, readNeedleList } from '../../link/needle-list.ts'
import { canonicalPlace, needleName } from '../../mechanism/bed.ts'
import { slotOf, toNeedle } from '../../mechanism/indices.ts'
import { cardPlaceWords } from '../../words/card-place.ts'
import { counted } from '../../words/lists.ts'
import { expectedIn } from './marks.ts'
import type { FindStore } from './store.ts'

/** Marks the needles of a typed list wrong in the current pass; gives what there is to say about it. */
export const markTyped = (store: FindStore, text: string): string => {
  const { needles: named, troubles } = readNeedleList(text, store.pass().marks.length)
  const needles = named.map((needle) => slotOf(needle, store.pass().marks.length))
  const chosen = new Set(needles)
  if (needles.length > 0)
    store.setPass({ marks: store.pass().marks.map((mark, index) => (chosen.has(index) ? 'w' : mark)) })
  const expected = expectedIn(store.pass(), store.library, store.now().session)
  const missed = needles.filter((index) => expected[index] === 'selected').length
  const done =
    needles.length === 0
      ? text.trim() === ''
        ? `Type needles such as ${needleName(toNeedle(102))} ${needleName(toNeedle(110))}-${needleName(toNeedle(118))}.`
        : 'Nothing was marked.'
      : `Marked ${counted(needles.length, 'needle')} wrong: ${missed} missed, ${needles.length - missed} selected without being asked.`
  return [done, ...troubles].join(' ')
}

/** Takes a typed needle as that of column 1, for all passes; gives what there is to say about it. */
export const setColumnOne = (store: FindStore, text: string): string => {
  const needle = readNeedle(text, store.pass().marks.length)
  if (typeof needle === 'string') return `${needle} ${needleName(store.now().session.columnOne)} is kept.`
  store.set(canonicalPlace({ columnOne: needle }))
  return cardPlaceWords(needle)
}

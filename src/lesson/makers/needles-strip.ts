import { stripOfNeedle } from '../../mechanism/bed.ts'
import { hasHole } from '../../mechanism/card.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { at } from '../../mechanism/lookup.ts'
import { toNeedle } from '../../mechanism/indices.ts'
import { listed } from '../../words/lists.ts'
import { firstValid } from '../seeded-random.ts'
import type { Maker } from '../question.ts'
import { columnOneWords, needlesIn, rangeNames, someRange } from '../needle-range.ts'
import { columnsOf, broken, mainCardRows, rowPicture } from '../setup.ts'
import { needlesQuestion } from './needles-question.ts'

const { columns, strips } = dimensions

/** Which needles come out wrong with a strip seized or stuck shifted? */
export const badStrip: Maker = (kit) =>
  firstValid(() => {
    const { random } = kit
    const rows = mainCardRows(kit.library)
    const pass = random.whole(1, rows.length)
    const strip = random.whole(1, strips)
    const seized = random.whole(0, 1) === 0
    const range = someRange(kit, columns, 4)
    const setup = { pass, faults: [broken(seized ? 'strip.seized' : 'strip.over', [strip])] }
    const all = random.shuffled(columnsOf(strip))
    const first = all.find((column) => hasHole(at(rows, pass - 1), column) === seized) ?? strip
    const others = columnsOf(strip).filter((column) => column !== first)
    const question = needlesQuestion(kit, {
      prompt: `Strip ${strip} is ${seized ? 'seized: it never shifts' : 'stuck shifted'}. Pass ${pass} reads card row ${pass}. ${columnOneWords(kit)}. Which of the needles ${rangeNames(range)} come out wrong?`,
      setup,
      range,
      goal: 'wrong',
      pictures: [rowPicture(rows, pass)],
      slips: [
        {
          chosen: needlesIn(range).filter((index) => stripOfNeedle(toNeedle(index), kit) === strip),
          reason: `All of these are on strip ${strip}, but some of them were to come out ${seized ? 'plain' : 'selected'} anyway, so nothing shows there.`,
        },
        {
          setup: { ...setup, faults: [broken(seized ? 'rocker.dead' : 'pin.high', [first])] },
          reason: `That is column ${first} alone; strip ${strip} serves columns ${listed(others.map(String))} as well.`,
        },
        {
          setup: { ...setup, faults: [broken(seized ? 'strip.over' : 'strip.seized', [strip])] },
          reason: seized
            ? 'A strip that never shifts can’t hold a butt down, so it misses needles; it never selects one too many.'
            : 'A strip that stays shifted holds every butt, so it selects needles too many; it never misses one.',
        },
      ],
      because: `of the needles here that strip ${strip} serves, the card asks ${seized ? 'for' : 'nothing of'} just those.`,
    })
    return question.slips.length === 3 ? question : null
  })

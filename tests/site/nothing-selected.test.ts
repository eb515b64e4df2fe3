import { expect, test } from 'vitest'
import { exampleOf } from '@/find/battery.ts'
import { symptomOf } from '@/find/likeness.ts'
import { dimensions } from '@/mechanism/dimensions.ts'
import { faultKindNames, type FaultKindName } from '@/mechanism/fault-kinds.ts'
import { startRun } from '@/mechanism/pass.ts'
import { soundScenario } from '@/mechanism/scenario.ts'
import { nothingSelected } from '@/site/nothing-selected.ts'
import { cardLibrary, cardsFolder } from '@/commands/cards.ts'

const library = cardLibrary(cardsFolder)
const pattern = library.cards.get(library.main)!

/** How many needles come forward without a card, in a pass each way. */
const withoutCard = (kind: FaultKindName): number[] => {
  const run = startRun({ ...soundScenario(null), faults: [exampleOf(kind)] })
  return [1, 2].map((pass) => run.passOf(pass).came.filter((outcome) => outcome === 'selected').length)
}
const stepOf = (words: RegExp): number => nothingSelected.findIndex(({ ask }) => words.test(ask))

test('every kind that selects nothing is asked for once, and others only where one way is asked about', () => {
  const asked = nothingSelected.flatMap(({ kinds }) => kinds)
  const expected = faultKindNames.filter((kind) => symptomOf(kind, pattern) === 'nothing')
  expect(asked.filter((kind) => !kind.startsWith('presser')).sort()).toEqual(expected.sort())
})

test('what the sheet asks parts the kinds on the machine as it says', () => {
  const card = stepOf(/card out/)
  const oneWay = stepOf(/one way/)
  for (const [n, { kinds }] of nothingSelected.entries())
    for (const kind of kinds) {
      const [right, left] = withoutCard(kind)
      const isAll = right === dimensions.needles && left === dimensions.needles
      expect(isAll, kind).toBe(n === card)
      expect((right === 0) !== (left === 0), kind).toBe(n === oneWay)
    }
})

test('it goes from settings to what opens the machine, and whoever opens it unplugs it', () => {
  const opens = nothingSelected.map(({ opens: isOpened = false }) => isOpened)
  expect(opens).toEqual([...opens].sort())
  for (const { opens: isOpened, cautions } of nothingSelected)
    if (isOpened) expect(cautions).toEqual(expect.arrayContaining(['unplug', 'springs']))
  expect(stepOf(/set to pattern/)).toBe(0)
  expect(stepOf(/belt engaged/)).toBe(1)
  expect(stepOf(/off its lock/)).toBe(2)
})

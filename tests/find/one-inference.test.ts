import { afterAll, describe, expect, test, vi } from 'vitest'
import { cardLibrary, cardsFolder } from '@/commands/cards.ts'
import { findDocument } from '@/commands/find-document.ts'
import { readQuery } from '@/commands/query-file.ts'
import { queryOf } from '@/features/find/session-query.ts'
import { slips } from '@/find/chances.ts'
import { findPlaces } from '@/find/find-places.ts'
import { type Finding, infer } from '@/find/infer.ts'
import type { WorkerMessage, WorkerQuestion } from '@/find/messages.ts'
import { nextLooks } from '@/find/next.ts'
import type { Query } from '@/find/query.ts'
import type { RankedAnswer } from '@/find/rank.ts'
import { encodeCard } from '@/link/card-text.ts'
import { readSession } from '@/link/session-link.ts'
import { rowsOf } from '@/link/state.ts'
import { faultId } from '@/mechanism/fault.ts'

const library = cardLibrary(cardsFolder)

/** The worker's module, with a port of this test's own. */
const sent: WorkerMessage[] = []
let ask: (event: { readonly data: WorkerQuestion }) => void = () => {
  throw new Error('the worker does not listen')
}
vi.stubGlobal('addEventListener', (_: string, listener: typeof ask) => {
  ask = listener
})
vi.stubGlobal('postMessage', (message: WorkerMessage) => void sent.push(structuredClone(message)))
await import('@/workers/find.ts')
afterAll(() => {
  vi.unstubAllGlobals()
})

interface Chance {
  readonly faults: readonly string[]
  readonly probability: number
}

const ids = (ways: readonly (readonly string[])[]): string[] => ways.map((way) => [...way].sort().join(' + '))

const inProcess = ({ answers }: Finding): Chance[] =>
  answers.map(({ kind, ways, probability }: RankedAnswer) => ({
    faults: kind === 'unknown' ? ['unknown'] : ids(ways.map((way) => way.map(({ id }) => id))),
    probability,
  }))

/** What the page hears of a session, and whether the next looks came after the answers. */
const onThePage = (query: Query) => {
  sent.length = 0
  ask({ data: { kind: 'infer', id: 1, query: structuredClone(query) } })
  const [ranked, next] = sent
  if (ranked?.kind !== 'ranked' || next?.kind !== 'next') throw new Error('the worker sent something else')
  const chances = ranked.answers.map(({ kind, ways, probability }): Chance => ({
    faults: kind === 'unknown' ? ['unknown'] : ids(ways.map((way) => way.map(faultId))),
    probability,
  }))
  return { chances, looks: next.looks }
}

/** The file of the command that says the same as a session: it has one card, and no parts looked at. */
const fileOf = (text: string): string => {
  const { session } = readSession(text, library)
  const query = queryOf(session, library)
  const [first] = session.passes
  const rows = first ? rowsOf(first.card, library) : null
  return JSON.stringify({
    card: rows ? `x.${encodeCard(rows)}` : 'none',
    passes: query.passes.map(({ row, way, speed, needles }) => ({
      row,
      way: way === 1 ? 'right' : 'left',
      speed,
      needles,
    })),
  })
}

const byCommand = (file: string) => {
  const query = readQuery(file, library)
  const document = JSON.parse(findDocument(query, findPlaces(query), [])) as {
    ranked: { faults: string[]; probability: number; why: string }[]
    places: { place: string; wrong: number }[]
  }
  return { ranked: document.ranked, places: document.places }
}

/** The page hears the likely answers only. */
const expectSame = (few: readonly Chance[], all: readonly Chance[]): void => {
  expect(few.length).toBeGreaterThan(0)
  for (const [n, { faults, probability }] of few.entries()) {
    const other = all[n]!
    expect(faults).toEqual(other.faults.slice(0, faults.length))
    expect(Math.abs(probability - other.probability)).toBeLessThan(1e-12)
  }
}

const oneCard = [
  ['nothing wrong', 'pass=1.right.500'],
  ['one needle missed', 'pass=1.right.500.wR3'],
  ['every eighth needle missed', 'pass=1.right.500.wL94-R99x8'],
  [
    'a column missed, and looked at again fast',
    'pass=1.right.500.wL93-R100x24&pass=1.right.900.wL93-R100x24',
  ],
  ['two rows, one of them noted the other way round', 'pass=1.left.500.wR3_R11&pass=4.right.500'],
  ['few needles looked at', 'pass=1.right.500.wR3_R11.nL100-R2_R4-R10_R12-R100'],
  ['one that did not move', 'pass=1.right.500.uR7&pass=2.left.500.uR7'],
  ['no card', 'card=none&pass=0.right.500.wR3'],
  ['two faults of a strip', 'card=all-holes&pass=1.right.500.wL94-R99x8_L90-R98x24'],
] as const

const more = [
  ['several cards', 'card=all-holes&pass=1.right.500.wL94-R99x8&card=blank&pass=1.left.500'],
  ['a part that was found', 'pass=1.right.500.wL93-R100x24&check=pins.pin.5.low'],
  ['parts that were sound', 'pass=1.right.500.wL93-R100x24&check=pins&check=retainer'],
  ['marks made in passing', 'marks=rough&pass=1.right.500.wR3'],
] as const

describe('one search for all who ask', () => {
  test.each([...oneCard, ...more])('the worker has the answers of the search itself: %s', (_, text) => {
    const query = queryOf(readSession(text, library).session, library)
    const finding = infer(query)
    const page = onThePage(query)
    expectSame(page.chances, inProcess(finding))
    expect(page.looks).toEqual(nextLooks(query, finding))
  })

  test.each(oneCard)('the command has the answers of the search itself: %s', (_, text) => {
    const query = { ...queryOf(readSession(text, library).session, library), slip: slips.sure }
    const { places, ranked } = findPlaces(query)
    const command = byCommand(fileOf(text))
    expect(command.places.map(({ place, wrong }) => [place, wrong])).toEqual(
      places.map(({ place, wrong }) => [place, wrong]),
    )
    expect(command.ranked.map(({ probability }) => probability)).toEqual(
      ranked.map(({ probability }) => probability),
    )
  })

  test('has a single needle missed rather for its own fault than for a slip of the pen', () => {
    const [first] = byCommand(fileOf('pass=1.right.500.wR3')).ranked
    expect(first!.faults).toEqual(['catch.R3.broken', 'needle.R3.bent'])
  })
})

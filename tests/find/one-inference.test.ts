import { afterAll, describe, expect, test, vi } from 'vitest'
import { cardLibrary, cardsFolder } from '@/commands/cards.ts'
import { findDocument } from '@/commands/find-document.ts'
import { readQuery } from '@/commands/query-file.ts'
import { queryOf } from '@/features/find/session-query.ts'
import { infer, inferWhole } from '@/find/infer.ts'
import { answersOf, type WorkerMessage, type WorkerQuestion } from '@/find/messages.ts'
import { nextLooks } from '@/find/next.ts'
import type { Query } from '@/find/query.ts'
import { encodeCard } from '@/link/card-text.ts'
import { readSession } from '@/link/session-link.ts'
import { rowsOf } from '@/link/state.ts'

const library = cardLibrary(cardsFolder)

const queryIn = (text: string): Query => queryOf(readSession(text, library).session, library)

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
afterAll(async () => {
  // What was shown right comes last, once nobody has marked anything for a moment.
  await vi.waitUntil(() => sent.at(-1)?.kind === 'shown', { timeout: 20_000 })
  vi.unstubAllGlobals()
})

/** What the page hears of a session, and the next looks that come after, by session. */
const heard = new Map<string, ReturnType<typeof askedOn>>()
const onThePage = (text: string) => {
  let page = heard.get(text)
  if (!page) heard.set(text, (page = askedOn(queryIn(text))))
  return page
}

const askedOn = (query: Query) => {
  sent.length = 0
  ask({ data: { kind: 'infer', id: 1, query: structuredClone(query) } })
  const [ranked, next] = sent
  if (ranked?.kind !== 'ranked' || next?.kind !== 'next') throw new Error('the worker sent something else')
  return { answers: ranked.answers, unexplained: ranked.unexplained, looks: next.looks }
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
  const inference = inferWhole(query)
  return JSON.parse(findDocument(query, inference.finding, nextLooks(query, inference))) as {
    places: { place: string; wrong: number; before: number | null }[]
    oil: object
    wear: object
    next: { bits: number; minutes: number }[]
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

describe('one search for all who ask', { timeout: 180_000 }, () => {
  test.each([...oneCard, ...more])('the worker has the answers of the search itself: %s', (_, text) => {
    const query = queryIn(text)
    const inference = inferWhole(query)
    const { finding } = inference
    const page = onThePage(text)
    expect(page.answers).toEqual(answersOf(query, finding))
    expect(page.unexplained).toEqual(finding.unexplained)
    expect(page.looks).toEqual(nextLooks(query, inference))
  })

  test.each(oneCard)('the command has the places of the search: %s', (_, text) => {
    const finding = infer(queryIn(text))
    const command = byCommand(fileOf(text))
    expect(command.places.map(({ place, wrong, before }) => ({ place, wrong, before }))).toEqual(
      finding.places.map(({ place, wrong, before }) => ({ place, wrong, before })),
    )
    expect(command.oil).toEqual(finding.oil)
    expect(command.wear).toEqual(finding.wear)
    expect(command.next.map(({ bits, minutes }) => [bits, minutes])).toEqual(
      onThePage(text).looks.map(({ bits, minutes }) => [Math.round(bits * 1e4) / 1e4, minutes]),
    )
  })
})

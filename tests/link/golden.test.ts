import { describe, expect, test } from 'vitest'
import { cardLibrary, cardsFolder } from '@/commands/cards.ts'
import { rowText } from '@/link/card-text.ts'
import { read } from '@/link/read.ts'
import { rowsOf, type State } from '@/link/state.ts'
import { write } from '@/link/write.ts'
import { golden, type GoldenLink } from '../golden/links.ts'
import { toNeedle } from '@/mechanism/indices.ts'

const library = cardLibrary(cardsFolder)

/** The state of an empty link, by hand. */
const usual: Omit<State, 'card'> = {
  pass: 1,
  at: -12,
  faults: [],
  speed: 500,
  wear: 0,
  seed: 1,
  bed: { first: toNeedle(0), last: toNeedle(199) },
  columnOne: toNeedle(100),
  own: {},
  note: '',
}

const cardInWords = ({ card }: State): GoldenLink['state']['card'] => {
  if (card.kind === 'own') return card.rows.map(rowText)
  return card.kind === 'site' ? card.id : 'none'
}

describe('a link once given to someone', () => {
  test.each(golden)('still means $means: “$text”', ({ text, state, said = 0 }) => {
    const reading = read(text, library)
    expect({ ...reading.state, card: cardInWords(reading.state) }).toEqual({
      ...usual,
      card: 'harbour-star',
      ...state,
    })
    expect(reading.troubles).toHaveLength(said)
  })

  test.each(golden)('keeps its canonical form: “$text”', ({ text, canonical = text }) => {
    const { state } = read(text, library)
    expect(write(state, library)).toBe(canonical)
    expect(read(canonical, library)).toEqual({ state, troubles: [] })
  })

  test('names cards that are all here', () => {
    const ids = golden.flatMap(({ state }) => (typeof state.card === 'string' ? [state.card] : []))
    expect(ids.length).toBeGreaterThan(3)
    for (const id of ids) expect([...library.cards.keys(), 'none']).toContain(id)
  })

  test('is short enough for a QR code that reads from the back of a room', () => {
    const card = rowsOf({ kind: 'site', id: 'harbour-star' }, library) ?? []
    const { state } = read('pass=18&at=R12.5&break=strip.3.seized&break=pin.5.low&needles=L24-R24', library)
    const own = { ...state, card: { kind: 'own' as const, rows: card.slice(0, 24) } }
    const inWords = golden.filter(({ text }) => text.length >= 200).map(({ text }) => text)
    expect(inWords).toEqual([])
    expect(write(own, library).length).toBeLessThan(200)
  })
})

import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { cardLibrary, cardsFolder } from '@/commands/cards.ts'
import { allRight, type NeedleMark, marks, readMarks, writeMarks } from '@/link/bed-marks.ts'
import { encodeCard } from '@/link/card-text.ts'
import { readNeedleList } from '@/link/needle-list.ts'
import type { SeenPass, Session } from '@/link/session.ts'
import { emptySession, readSession, writeSession } from '@/link/session-link.ts'
import { needleName } from '@/mechanism/bed.ts'
import { faultId } from '@/mechanism/fault.ts'
import { faultOf } from '@/mechanism/read-fault.ts'
import { needleAtSlot, toNeedle } from '@/mechanism/indices.ts'
import { goldenSessions } from '../golden/session-links.ts'
import { nothingOwn } from '@/mechanism/own.ts'

const library = cardLibrary(cardsFolder)
const names = (text: string): string[] =>
  readNeedleList(text).needles.map((needle) => needleName(toNeedle(needle)))
const fault = (id: string) => faultOf(id)

const cardName = ({ card }: SeenPass): string =>
  card.kind === 'own' ? `x.${encodeCard(card.rows)}` : card.kind === 'site' ? card.id : 'none'

const markedOf = ({ marks: bed }: SeenPass): Record<string, string[]> => {
  const marked: Record<string, string[]> = {}
  for (const [index, mark] of bed.entries())
    if (mark !== 'r') (marked[mark] ??= []).push(needleName(needleAtSlot(index, bed.length)))
  return marked
}

describe('a session once kept', () => {
  test.each(goldenSessions)(
    'still says the same: “$text”',
    ({
      text,
      passes,
      checked,
      finding,
      isRough = false,
      practice = null,
      first = 'R1',
      said = 0,
      intake = [],
      deal = null,
      level = 1,
      own = {},
    }) => {
      const { session, troubles } = readSession(text, library)
      expect(troubles).toHaveLength(said)
      expect(needleName(session.columnOne)).toBe(first)
      expect(
        session.passes.map((pass) => ({
          card: cardName(pass),
          row: pass.row,
          way: pass.way,
          speed: pass.speed,
          ...(pass.pass === null ? {} : { pass: pass.pass }),
          marked: markedOf(pass),
        })),
      ).toEqual(passes)
      expect(
        session.checked.map(({ check, found }) => (found ? `${check} ${faultId(found)}` : check)),
      ).toEqual(checked)
      expect((session.finding ?? []).map(faultId)).toEqual(finding)
      expect(session.isRough).toBe(isRough)
      expect([session.practice, session.deal, session.level]).toEqual([practice, deal, level])
      expect(session.intake).toEqual(intake)
      expect(session.own).toEqual(own)
    },
  )

  test.each(goldenSessions)('keeps its form: “$text”', ({ text, canonical = text }) => {
    expect(writeSession(readSession(text, library).session, library)).toBe(canonical)
  })
})

const beds = fc.array(fc.constantFrom<NeedleMark>(...marks), { minLength: 200, maxLength: 200 })
const passes = fc
  .record({
    card: fc.constantFrom(
      { kind: 'site' as const, id: 'harbour-star' },
      { kind: 'site' as const, id: 'blank' },
      { kind: 'own' as const, rows: [1, 2, 3] },
    ),
    row: fc.constantFrom(1, 2),
    way: fc.constantFrom(1 as const, -1 as const),
    speed: fc.constantFrom(100, 500, 1500),
    round: fc.option(fc.nat(4000)),
    marks: beds,
  })
  .map(({ round, ...pass }) => ({
    ...pass,
    pass: round === null ? null : 2 * round + (pass.way === 1 ? 1 : 2),
  }))

/** Good links with a few characters taken out, put in or changed. */
const scratched = fc
  .tuple(
    fc.constantFrom(...goldenSessions.map(({ text }) => text)),
    fc.array(fc.tuple(fc.nat(300), fc.nat(3), fc.string({ maxLength: 3 })), { maxLength: 5 }),
  )
  .map(([text, cuts]) =>
    cuts.reduce((now, [place, gone, put]) => {
      const at = place % (now.length + 1)
      return now.slice(0, at) + put + now.slice(at + gone)
    }, text),
  )

describe('a session’s link', () => {
  test('is given back as it was, with nothing to say', () => {
    fc.assert(
      fc.property(fc.array(passes, { minLength: 1, maxLength: 4 }), (some) => {
        const session: Session = {
          practice: some.length > 3 ? 7 : null,
          deal: some.length > 4 ? 8 : null,
          level: some.length > 2 ? 3 : 1,
          isRough: some.length > 2,
          passes: some,
          columnOne: toNeedle(some.length > 1 ? 113 : 100),
          own: some.length === 2 ? { pitch: 5 } : nothingOwn,
          checked: [{ check: 'pins', found: fault('pin.3.low') }],
          intake: some.length > 2 ? ['stood.yes', 'plain.badly'] : [],
          finding: [fault('pin.3.low')],
        }
        expect(readSession(writeSession(session, library), library)).toEqual({ session, troubles: [] })
      }),
      { numRuns: 100 },
    )
  })

  test('always reads to a session, whatever it is, and then keeps its form', () => {
    fc.assert(
      fc.property(scratched, (text) => {
        const { session } = readSession(text, library)
        expect(session.passes.length).toBeGreaterThan(0)
        expect(readSession(writeSession(session, library), library)).toEqual({ session, troubles: [] })
      }),
      { numRuns: 500 },
    )
  })

  test('says in a sentence what it could not read', () => {
    const text =
      'card=nix&pass=99.right.500.wR300_R3&pass=1.up.500&pass=1.left.9&check=NO&found=what&colour=red'
    const { session, troubles } = readSession(text, library)
    expect(session.passes).toHaveLength(2)
    expect(markedOf(session.passes[0]!)).toEqual({ w: ['R3'] })
    expect(session.passes[0]).toMatchObject({ row: 1 })
    const said = troubles.map(({ sentence }) => sentence)
    for (const word of ['nix', '99', 'R300', '1.up.500', '9', 'NO', 'what', 'colour'])
      expect(said.some((sentence) => sentence.includes(`“${word}`))).toBe(true)
    expect(said).toHaveLength(8)
  })

  test('is empty where nothing was entered', () => {
    expect(readSession('', library)).toEqual({ session: emptySession(library), troubles: [] })
    expect(writeSession(emptySession(library), library)).toBe('pass=1.right.500')
  })
})

describe('a bed’s marks', () => {
  test('are short: a strip’s needles are one run, and no bed takes more than 70 characters', () => {
    const strip = allRight.map((mark, index): NeedleMark => (index % 8 === 6 ? 'w' : mark))
    expect(writeMarks(strip)).toBe('wL94-R99x8')
    fc.assert(
      fc.property(beds, (bed) => {
        expect(writeMarks(bed).length).toBeLessThanOrEqual(70)
        expect(readMarks(writeMarks(bed))).toEqual({ marks: bed, leftOut: [] })
      }),
      { numRuns: 200 },
    )
  })
})

describe('a list of needles', () => {
  test('is read as people type it', () => {
    expect(names('R3 R11 R19')).toEqual(['R3', 'R11', 'R19'])
    expect(names('r3, r11; l2.')).toEqual(['L2', 'R3', 'R11'])
    expect(names('L2-R2')).toEqual(['L2', 'L1', 'R1', 'R2'])
    expect(names('R5 – R3')).toEqual(['R3', 'R4', 'R5'])
    expect(names('R 3 to R 5')).toEqual(['R3', 'R4', 'R5'])
    expect(names('')).toEqual([])
  })

  test('keeps what it can and names what is no needle or comes twice', () => {
    const { needles, troubles } = readNeedleList('R3 R300 11 R3 <b>')
    expect(needles.map((needle) => needleName(toNeedle(needle)))).toEqual(['R3'])
    expect(troubles).toEqual([
      '“R300”, “11”, “<B>” are no needle here: they run from L100 to R100.',
      'You named R3 more than once.',
    ])
  })
})

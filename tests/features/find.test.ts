import { describe, expect, test } from 'vitest'
import { cardLibrary, cardsFolder } from '@/commands/cards.ts'
import type { NotedPass } from '@/find/query.ts'
import { bestCourse } from '@/find/best-course.ts'
import { opensMachine } from '@/find/checks.ts'
import { advisedCourse } from '@/find/advised-course.ts'
import { findingState } from '@/features/find/finding-state.ts'
import { marksFor } from '@/features/find/machine-view.ts'
import type { DealtMachine } from '@/find/deal-machine.ts'
import { needlesWith, practiceFault, shownFaults } from '@/find/practice.ts'
import { readGuess } from '@/features/find/practice-guess.ts'
import { infer, inferWhole } from '@/find/infer.ts'
import { placeOfFault } from '@/find/place.ts'
import { answersOf } from '@/find/messages.ts'
import { nextLooks } from '@/find/next.ts'
import { slips } from '@/find/chances.ts'
import { marksPredicted } from '@/features/find/marks.ts'
import { markAs, notedAs } from '@/link/bed-marks.ts'
import { queryOf, withMachine } from '@/features/find/session-query.ts'
import { sameAllOver } from '@/features/find/settings-first.ts'
import { movedTo, plainPasses } from '@/features/find/starts.ts'
import { marks } from '@/link/bed-marks.ts'
import { read } from '@/link/read.ts'
import { firstPass, type Session } from '@/link/session.ts'
import { emptySession, readSession } from '@/link/session-link.ts'
import { scenarioOf } from '@/link/state.ts'
import { needleIndex, usualPlace } from '@/mechanism/bed.ts'
import { type Fault, faultId, type FaultId } from '@/mechanism/fault.ts'
import { faultOf } from '@/mechanism/read-fault.ts'
import { startRun } from '@/mechanism/pass.ts'

const library = cardLibrary(cardsFolder)
const session = (text: string): Session => readSession(text, library).session

const answers = (known: Session) => {
  const query = queryOf(known, library)
  return answersOf(query, infer(query))
}
const looks = (known: Session) => {
  const query = queryOf(known, library)
  return nextLooks(query, inferWhole(query))
}
const top = (known: Session): string[] =>
  answers(known)[0]?.ways.map((way) => way.map(faultId).join(' + ')) ?? []

describe('a mark', () => {
  test('is what was seen beside what was asked, both ways', () => {
    for (const asked of ['selected', 'plain'] as const)
      for (const mark of marks) expect(markAs(notedAs(mark, asked), asked)).toBe(mark)
  })
})

describe('what it may be', () => {
  test('is nothing where every needle is right', () => {
    expect(answers(emptySession(library))[0]).toMatchObject({ kind: 'sound' })
  })

  test('is the strip where every eighth is missed, with one card or with several', () => {
    expect(top(session('pass=1.right.500.wL94-R99x8'))).toEqual(['strip.3.seized'])
    const once = top(session('pass=1.right.500&card=all-holes&pass=1.right.500.wL94-R99x8'))
    expect(once).not.toContain('strip.3.seized')
    const several = session('card=all-holes&pass=1.right.500.wL94-R99x8&card=blank&pass=1.left.500')
    expect(top(several)).toEqual(['strip.3.seized'])
  })

  test('is the needle or its catch where one is marked wrong, and a slip where it was marked roughly', () => {
    expect(top(session('pass=1.right.500.wR3')).sort()).toEqual(['catch.R3.broken', 'needle.R3.bent'])
    expect(answers(session('marks=rough&pass=1.right.500.wR3'))[0]).toMatchObject({ kind: 'sound' })
  })

  test('is not distinguished from what nobody looked at', () => {
    const [first, second] = answers(session('pass=1.right.500.nL100-R100'))
    expect(first).toMatchObject({ kind: 'sound' })
    expect(second).toBeUndefined()
  })

  test('moves with what was found at a part', () => {
    const seen = 'pass=1.right.500.wL93-R100x24'
    const before = answers(session(seen))[0]!
    expect(before.ways.length).toBeGreaterThan(1)
    const pin = before.ways.map(([fault]) => faultId(fault!)).find((id) => id.startsWith('pin.'))!
    expect(top(session(`${seen}&check=pins.${pin}`))[0]).toBe(pin)
    expect(top(session(`${seen}&check=pins`))[0]).toMatch(/^rocker/)
  })
})

describe('the next check', () => {
  const known = session('pass=1.right.500.wL93-R100x24')

  test('has a button for what each likely answer would show, beside the sound machine’s', () => {
    for (const { pass, outcomes } of looks(known)) {
      expect(outcomes.length).toBeGreaterThan(0)
      const [first] = outcomes
      if (pass) expect(first).toMatchObject({ kind: 'bed', prediction: { changed: [] } })
      else expect(first).toEqual({ kind: 'part', found: null })
    }
  })

  test('never opens the machine before what does not, and is not asked for twice', () => {
    const opens = looks(known).map((next) => opensMachine(next))
    expect(opens).toEqual([...opens].sort((a, b) => Number(a) - Number(b)))
    const done: Session = { ...known, checked: [{ check: 'pins', found: null }] }
    expect(looks(known).map(({ check }) => check)).toContain('pins')
    expect(looks(done).map(({ check }) => check)).not.toContain('pins')
  })

  test('whose outcome is taken makes its answer no less likely', () => {
    const seized = faultOf('strip.3.seized')
    const few = session('pass=1.right.500.wR3_R11.nL100-R2_R4-R10_R12-R100')
    const chance = (now: Session): number =>
      answers(now)
        .filter(({ ways }) => ways.some((way) => way.some((fault) => faultId(fault) === faultId(seized))))
        .reduce((sum, { probability }) => sum + probability, 0)
    const look = looks(few).find(({ pass }) => pass?.card === 'same')!
    const outcome = look.outcomes.find(
      (one) => one.kind === 'bed' && one.if.some(([fault]) => fault && faultId(fault) === faultId(seized)),
    )
    expect(outcome).toBeDefined()
    if (!look.pass || outcome?.kind !== 'bed') return
    const { row, way, speed } = look.pass
    const pass = { ...firstPass(library), row, way, speed }
    const seen = { ...pass, marks: marksPredicted(pass, outcome.prediction, library, usualPlace) }
    expect(chance({ ...few, passes: [...few.passes, seen] })).toBeGreaterThanOrEqual(chance(few))
  })
})

describe('the machine of a finding', () => {
  const asSeen = (known: Session, ...ids: readonly string[]) => {
    const faults = ids.map((id) => faultOf(id))
    const { text, isMoved } = findingState(known, faults, library)
    const { state, troubles } = read(text, library)
    expect(troubles).toEqual([])
    const { came, asked, way } = startRun(scenarioOf(state, library)).passOf(state.pass)
    return { isMoved, way, marks: came.map((out, n) => markAs(out, asked[n]!)) }
  }
  const seized = 'wL94-R99x8'

  test('comes out on the workbench as it was noted', () => {
    const known = session(`pass=1.right.500.${seized}`)
    const { isMoved, marks: seen } = asSeen(known, 'strip.3.seized')
    expect(isMoved).toBe(false)
    expect(seen).toEqual(known.passes[0]!.marks)
  })

  test('does so for a row noted the other way round, with its own holes and its own faults', () => {
    for (const [row, way] of [
      [2, 'right'],
      [1, 'left'],
      [32, 'right'],
    ] as const) {
      const empty = session(`pass=${row}.${way}.500`)
      for (const id of [`card.blocked.${row}.4`, 'strip.4.seized', 'pin.4.high']) {
        const fault = faultOf(id)
        const [bed] = needlesWith(queryOf(empty, library), alone(fault))
        const { isMoved, way: goes, marks: seen } = asSeen(empty, id)
        expect([isMoved, goes]).toEqual([true, way === 'right' ? 1 : -1])
        const withMarks = { ...empty.passes[0]!, marks: seen }
        expect(queryOf({ ...empty, passes: [withMarks] }, library).passes[0]!.needles).toBe(bed)
      }
    }
  })
})

describe('the marks on the machine', () => {
  test('ring each likely part once, with its answer’s place in the ranking', () => {
    const known = session('pass=1.right.500.wR3')
    const marked = marksFor(answers(known))
    expect(marked[0]).toMatchObject({ number: '1' })
    expect(new Set(marked.map(({ fault }) => faultId(fault))).size).toBe(marked.length)
    expect(marksFor(answers(session('pass=1.right.500')))).toEqual([])
  })
})

/** A machine with one fault, as new but for that. */
const alone = (fault: Fault): DealtMachine => ({ faults: [fault], wear: 0, seed: 1 })

describe('practice', () => {
  test('shows beds of which the part broken is among the first places, at the end of the page’s course', () => {
    for (let seed = 0; seed < 4; seed++) {
      const fault = practiceFault(seed)
      const [start] = queryOf(emptySession(library), library).passes
      const { alike } = bestCourse(fault, start!, usualPlace)
      const { passes: course, places: named } = advisedCourse(alone(fault), start!, usualPlace, alike)
      const beds = needlesWith({ card: start!.card, passes: course, ...usualPlace }, alone(fault))
      const passes = course.map((pass, n) => ({ ...pass, needles: beds[n]! }))
      const { places } = infer({ card: start!.card, slip: slips.sure, passes, checks: [], ...usualPlace })
      expect(places.slice(0, 3).map(({ place }) => place)).toContain(placeOfFault(fault))
      expect(named).toEqual(places.filter(({ wrong }) => wrong > 0.5).map(({ place }) => place))
      expect(course.length).toBeLessThanOrEqual(8)
    }
  }, 180_000)

  test('knows which faults of a machine show in the passes seen', () => {
    const [start] = queryOf(emptySession(library), library).passes
    const faults = ['strip.3.seized', 'needle.R5.bent', 'needle.R3.bent'].map((id) => faultOf(id as FaultId))
    const card = start!.card!
    const shown = (passes: NotedPass[]): string[] =>
      shownFaults({ card, passes, ...usualPlace }, { faults, wear: 0, seed: 1 }).map(faultId)
    const holes: NotedPass = { ...start!, card: [0xffffff] }
    // A bent needle changes one note a pass, and one on a seized strip none.
    expect(shown([holes])).toEqual(['strip.3.seized'])
    expect(shown([holes, holes, holes])).toEqual(['strip.3.seized', 'needle.R5.bent'])
    expect(shown([{ ...start!, card: [0] }])).toEqual([])
  })

  test('follows its own advice on a machine with several faults until each that shows is named', () => {
    const [start] = queryOf(emptySession(library), library).passes
    const machine = { faults: [faultOf('strip.3.seized'), faultOf('pin.6.low')], wear: 0, seed: 1 }
    const { passes, places } = advisedCourse(machine, start!, usualPlace)
    expect(places).toEqual(expect.arrayContaining(['strip.3', 'column.6']))
    expect(passes.length).toBeGreaterThanOrEqual(3)
    expect(passes.length).toBeLessThanOrEqual(8)
    // A needle that did not move stops it until the piece is found, and no longer.
    const gone = { ...machine, faults: [...machine.faults, faultOf('needle.R20.gone')] }
    const after = advisedCourse(gone, start!, usualPlace)
    expect(after.passes.length).toBeGreaterThanOrEqual(3)
    expect(after.places).toContain('needle.R20')
  }, 180_000)

  test('gives its beds to a session, whatever was marked', () => {
    const seed = Array.from({ length: 99 }, (_, n) => n).find(
      (n) => practiceFault(n).kind === 'strip.seized',
    )!
    const practised = withMachine(
      { ...session('pass=1.right.500.wR1&pass=2.left.500&pass=3.right.500&pass=4.left.500'), practice: seed },
      library,
    )
    const [strip] = practiceFault(seed).at
    expect(top(practised)).toContain(`strip.${strip}.seized`)
  })

  test('reads what somebody says it is, or says why not', () => {
    expect(readGuess('strip.seized', '3')).toEqual(faultOf('strip.3.seized'))
    expect(readGuess('needle.bent', 'r3')).toEqual(faultOf('needle.R3.bent'))
    expect(readGuess('belt.timing', '')).toMatchObject({ kind: 'belt.timing' })
    expect(readGuess('gate.1.low', '')).toMatchObject({ kind: 'gate.1.low' })
    expect(readGuess('strip.seized', '9')).toBe('That won’t do: there is no strip 9; they run from 1 to 8.')
  })
})

describe('three plain answers', () => {
  const from = (
    which: 'nothing' | 'everything' | 'eighth' | 'column' | 'one',
    ways: 'both' | 'one',
    when: 'any' | 'fast',
  ) =>
    top({
      ...emptySession(library),
      passes: plainPasses(
        { which, ways, when, needle: needleIndex('R3')! },
        firstPass(library),
        library,
        usualPlace,
      ),
    }).join(' ')

  test('fill in beds of which the fault that they describe is the first answer', () => {
    expect(from('eighth', 'both', 'any')).toContain('strip.3.seized')
    expect(from('column', 'both', 'any')).toContain('pin.3.low')
    expect(from('one', 'both', 'any')).toContain('needle.R3.bent')
    expect(from('nothing', 'one', 'any')).toContain('presser.right.worn')
    expect(from('nothing', 'both', 'any')).toContain('carriage.plain')
    expect(from('everything', 'both', 'any')).toContain('gate.1.high')
    expect(from('one', 'both', 'fast')).toContain('needle.R3.stiff')
  })
})

describe('an example’s marks', () => {
  test('are moved with column 1, and still show the same part', () => {
    const examples = (['eighth', 'column'] as const).map((which) =>
      plainPasses(
        { which, ways: 'both', when: 'any', needle: needleIndex('R3')! },
        firstPass(library),
        library,
        usualPlace,
      ),
    )
    for (const name of ['R1', 'R4', 'R13', 'R24']) {
      const place = { columnOne: needleIndex(name)! }
      const found = examples.map((passes) =>
        top({
          ...emptySession(library),
          ...place,
          passes: passes.map((pass) => ({ ...pass, marks: movedTo(place, pass.marks) })),
        }).join(' '),
      )
      expect(found[0]).toContain('strip.3.seized')
      expect(found[1]).toContain('pin.3.low')
    }
  })

  test('stay as they are where column 1 is at its usual needle', () => {
    const marks = session('pass=1.right.500.wR3-R19x8_R40.uL1').passes[0]!.marks
    expect(movedTo(usualPlace, marks)).toEqual(marks)
    const moved = movedTo({ columnOne: needleIndex('R2')! }, marks)
    expect(moved[needleIndex('R41')!]).toBe('w')
    expect(moved[needleIndex('R1')!]).toBe('u')
  })
})

describe('settings are ruled out first', () => {
  test('where a pass selected nothing or everything, though the card asked for both', () => {
    const seen = (text: string) => sameAllOver(session(text).passes[0]!, library, usualPlace)
    const example = (which: 'nothing' | 'everything' | 'eighth') =>
      sameAllOver(
        plainPasses(
          { which, ways: 'both', when: 'any', needle: needleIndex('R3')! },
          firstPass(library),
          library,
          usualPlace,
        )[0]!,
        library,
        usualPlace,
      )
    expect([example('nothing'), example('everything'), example('eighth')]).toEqual([
      'nothing',
      'everything',
      null,
    ])
    expect(seen('pass=1.right.500')).toBeNull()
    // A blank card asks for nothing, so that nothing selected is no sign.
    expect(seen('pass=1.right.500&card=blank')).toBeNull()
  })
})

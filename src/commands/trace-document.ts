import { type CardLibrary, scenarioOf, type State } from '../link/state.ts'
import { write } from '../link/write.ts'
import { needleName, needlesIn } from '../mechanism/bed.ts'
import { conditionOf } from '../mechanism/condition.ts'
import { outcomeLetters } from '../mechanism/gate.ts'
import { runPass } from '../mechanism/pass.ts'
import type { Departure } from '../mechanism/reason.ts'
import { ofNeedle } from '../mechanism/indices.ts'

const departureText = (pass: number, { needle, asked, came, stage, part }: Departure): string =>
  JSON.stringify({ pass, needle: needleName(needle), asked, came, stage, part })

/**
 * The JSON document of a state's passes, whole, from 1 to the state's own, one line a pass and a departure. It comes
 * in pieces, as some thousands of passes make a text too long to hold at once.
 */
export function* traceDocument(state: State, library: CardLibrary): Generator<string> {
  const condition = conditionOf(scenarioOf(state, library))
  const departures: (readonly Departure[])[] = []
  yield `{ "state": ${JSON.stringify(write(state, library))},\n  "passes": [`
  for (let number = 1; number <= state.pass; number++) {
    const pass = runPass(condition, number)
    const way = pass.way === 1 ? 'right' : 'left'
    let needles = ''
    for (const needle of needlesIn(state.bed)) needles += outcomeLetters[ofNeedle(pass.came, needle)]
    departures.push(pass.departures)
    yield `${number > 1 ? ',' : ''}\n    ${JSON.stringify({ pass: number, way, row: pass.row, needles })}`
  }
  yield '\n  ],\n  "departures": ['
  let comma = ''
  for (const [index, ofPass] of departures.entries()) {
    if (ofPass.length === 0) continue
    const lines = ofPass.map((departure) => `\n    ${departureText(index + 1, departure)}`)
    yield comma + lines.join(',')
    comma = ','
  }
  yield '\n  ] }\n'
}

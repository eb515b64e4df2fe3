import { allColumns } from '../../mechanism/indices.ts'
import { needleName } from '../../mechanism/bed.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import type { Fault } from '../../mechanism/fault.ts'
import { millimetres } from '../../words/lists.ts'
import type { Maker } from '../question.ts'
import { needlesIn, rangeNames, someRange } from '../needle-range.ts'
import { broken, ownRow, rowPicture, rowWith, type Setup } from '../setup.ts'
import { needlesQuestion } from './needles-question.ts'

const { columns, catchDepth, gate1 } = dimensions

/** Which needles come forward with the first gate too low or too high? */
export const badGate: Maker = (kit) => {
  const { random } = kit
  const row = rowWith(random.some(allColumns, 7))
  const range = someRange(kit, columns)
  const isLow = random.whole(0, 1) === 0
  const by = random.pick([0.2, 0.3, 0.55, 0.65])
  const fault: Fault = broken(isLow ? 'gate.1.low' : 'gate.1.high', [], by)
  const pass = random.whole(1, 2)
  const setup: Setup = { card: ownRow(row), pass, faults: [fault] }
  const edge = isLow ? gate1 + by : gate1 - by
  const place = edge > 0 ? `${millimetres(edge)} below rest` : `${millimetres(-edge)} above rest`
  const isHarmless = edge > 0 && edge < catchDepth
  return needlesQuestion(kit, {
    prompt: `The first gate’s edge belongs ${millimetres(gate1)} below the rest line, but it ${isLow ? 'hangs' : 'stands'} ${millimetres(by)} too ${isLow ? 'low' : 'high'}. A held butt stands at ${millimetres(catchDepth)} below rest, a free one has sprung back up to rest. ${needleName(range.first)} is column 1. Which of the needles ${rangeNames(range)} come forward? Choose none if none do.`,
    setup,
    range,
    goal: 'selected',
    pictures: [rowPicture([row], 1)],
    slips: [
      {
        setup: { ...setup, faults: [] },
        reason: isLow
          ? `The gate’s edge hangs ${place} now, and a held butt at ${millimetres(catchDepth)} does not pass under it.`
          : `The gate’s edge stands ${place} now, and a free butt at rest does not reach it.`,
      },
      {
        chosen: [],
        reason: isHarmless
          ? `The gate’s edge is ${place}: a held butt at ${millimetres(catchDepth)} still passes under it.`
          : 'A gate that stands too high stops nobody: free butts slip under it with the held ones.',
      },
      {
        chosen: needlesIn(range),
        reason: isHarmless
          ? `The gate’s edge is ${place}: a free butt at rest still meets it and is turned back.`
          : 'A gate that hangs too low lets nobody by: it stops the held butts with the free ones.',
      },
    ],
    because: isHarmless
      ? `the gate’s edge, ${place}, still stands between a free butt and a held one.`
      : isLow
        ? `the gate’s edge, ${place}, stops held butts too.`
        : `the gate’s edge, ${place}, lets free butts slip under.`,
  })
}

import { columnOfNeedle, needleName, wayOfPass } from '../../mechanism/bed.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import type { Fault } from '../../mechanism/fault.ts'
import { facts } from '../../words/facts.ts'
import { millimetres } from '../../words/lists.ts'
import {
  broken,
  everyColumn,
  indexesOf,
  namesOf,
  ownRow,
  rowPicture,
  rowWith,
  type Scene,
  someStretch,
  wayWord,
} from '../scene.ts'
import type { Kit, Maker } from '../question.ts'
import { predict, type Slip } from './predict.ts'

const { columns, strips, presser, catchDepth, gate1 } = dimensions

const someRow = ({ draw }: Kit): number => rowWith(draw.some(everyColumn, 7))

/** One needle's catch or butt. */
const oneNeedle = (kit: Kit, row: number, asked: readonly number[]) => {
  const { draw } = kit
  const needle = draw.pick(asked)
  const name = needleName(needle)
  const isCatch = draw.whole(0, 1) === 0
  const scene: Scene = {
    card: ownRow(row),
    pass: draw.whole(1, 2),
    faults: [broken(isCatch ? 'catch.broken' : 'needle.bent', [needle])],
  }
  const column = columnOfNeedle(needle)
  const slips: Slip[] = [
    {
      chosen: asked,
      reason: `Only ${name} is without a sound ${isCatch ? 'catch' : 'butt'}; the others are held as before.`,
    },
    {
      chosen: [],
      reason: `Strip ${((column - 1) % strips) + 1} shifts, but at ${name} nothing holds the butt.`,
    },
  ]
  return {
    what: isCatch
      ? `The catch of ${name} is broken`
      : `Needle ${name} is bent: its butt is out of the catch’s reach`,
    scene,
    slips,
    because: 'one catch holds one butt, so nothing else can notice.',
  }
}

/** The presser, for one way or the other. */
const shallowDip = (kit: Kit, row: number, asked: readonly number[]) => {
  const { draw } = kit
  const way = draw.pick(['right', 'left'] as const)
  const worn = draw.pick([0.3, 0.4, 0.75, 0.85])
  const pass = draw.whole(1, 2)
  const moves = wayWord(wayOfPass(pass))
  const scene: Scene = {
    card: ownRow(row),
    pass,
    faults: [broken(`presser.${way}.worn`, [], worn)],
  }
  const dips = millimetres(presser - worn)
  const isEnough = presser - worn >= catchDepth
  const because =
    moves !== way
      ? `the presser is worn for passes to the ${way}, and this one goes ${moves}.`
      : isEnough
        ? `a dip of ${dips} is still more than the catches’ ${facts.catchDepth}.`
        : `a dip of ${dips} does not reach the catches at ${facts.catchDepth}, so no butt is held.`
  return {
    what: `The presser dips a butt by ${facts.presser} when new. For passes to the ${way} it has worn by ${millimetres(worn)}; a catch holds a butt at ${facts.catchDepth}`,
    scene,
    slips: [
      {
        chosen: asked,
        reason:
          moves === way
            ? `Worn as it is, the presser still dips ${dips}, and a catch needs ${facts.catchDepth}.`
            : `The carriage goes ${moves}, and that way the presser is as new.`,
      },
      {
        chosen: [],
        reason: `This way the presser dips only ${dips}, and a catch needs ${facts.catchDepth}.`,
      },
    ],
    because,
  }
}

/** Which needles are missed with a fault in the hold? */
export const badHold: Maker = (kit) => {
  const row = someRow(kit)
  const stretch = someStretch(kit.draw, columns)
  const asked = indexesOf(stretch).filter((index) => (row >> (columns - columnOfNeedle(index))) & 1)
  const { what, scene, slips, because } =
    kit.draw.whole(0, 2) === 0 ? oneNeedle(kit, row, asked) : shallowDip(kit, row, asked)
  return predict(kit, {
    prompt: `${what}. The carriage moves ${wayWord(wayOfPass(scene.pass ?? 1))}. ${needleName(stretch.first)} is column 1. Which of the needles ${namesOf(stretch)} are missed? Choose none if none are.`,
    scene,
    stretch,
    goal: 'wrong',
    pictures: [rowPicture([row], 1)],
    slips,
    because,
  })
}

/** Which needles come forward with the first gate too low or too high? */
export const badGate: Maker = (kit) => {
  const { draw } = kit
  const row = someRow(kit)
  const stretch = someStretch(draw, columns)
  const isLow = draw.whole(0, 1) === 0
  const by = draw.pick([0.2, 0.3, 0.55, 0.65])
  const fault: Fault = broken(isLow ? 'gate.1.low' : 'gate.1.high', [], by)
  const pass = draw.whole(1, 2)
  const scene: Scene = { card: ownRow(row), pass, faults: [fault] }
  const edge = isLow ? gate1 + by : gate1 - by
  const place = edge > 0 ? `${millimetres(edge)} below rest` : `${millimetres(-edge)} above rest`
  const isHarmless = edge > 0 && edge < catchDepth
  return predict(kit, {
    prompt: `The first gate’s edge belongs ${facts.gate1} below the rest line, but it ${isLow ? 'hangs' : 'stands'} ${millimetres(by)} too ${isLow ? 'low' : 'high'}. A held butt stands at ${facts.catchDepth} below rest, a free one has sprung back up to it. ${needleName(stretch.first)} is column 1. Which of the needles ${namesOf(stretch)} come forward? Choose none if none do.`,
    scene,
    stretch,
    goal: 'selected',
    pictures: [rowPicture([row], 1)],
    slips: [
      {
        scene: { ...scene, faults: [] },
        reason: isLow
          ? `The gate’s edge hangs ${place} now, and a held butt at ${facts.catchDepth} does not pass under it.`
          : `The gate’s edge stands ${place} now, and a free butt at rest does not reach it.`,
      },
      {
        chosen: [],
        reason: isHarmless
          ? `The gate’s edge is ${place}: a held butt at ${facts.catchDepth} still passes under it.`
          : 'A gate that stands too high stops nobody: free butts slip under it with the held ones.',
      },
      {
        chosen: indexesOf(stretch),
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

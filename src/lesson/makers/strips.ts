import { needleName, stripOfNeedle, wayOfPass } from '../../mechanism/bed.ts'
import { ghostSpeed, releaseTime } from '../../mechanism/closed-forms.ts'
import { hasHole } from '../../mechanism/card.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import { listed } from '../../words/lists.ts'
import {
  broken,
  everyColumn,
  indexesOf,
  mainRows,
  namesOf,
  ownRow,
  passOf,
  rowPicture,
  rowWith,
  someStretch,
  wayWord,
} from '../scene.ts'
import { firstGood } from '../draw.ts'
import type { Maker } from '../question.ts'
import { goalOf, predict } from './predict.ts'

const { columns, strips, pitch, stripReturnThick } = dimensions

/** The columns that work a strip. */
export const columnsOf = (strip: number): number[] => [strip, strip + strips, strip + 2 * strips]

/** Which needles come out wrong with a strip seized or stuck shifted? */
export const badStrip: Maker = (kit) =>
  firstGood(() => {
    const { draw } = kit
    const rows = mainRows(kit.library)
    const pass = draw.whole(1, rows.length)
    const strip = draw.whole(1, strips)
    const seized = draw.whole(0, 1) === 0
    const stretch = someStretch(draw, columns, 4)
    const scene = { pass, faults: [broken(seized ? 'strip.seized' : 'strip.over', [strip])] }
    const all = draw.shuffled(columnsOf(strip))
    const first = all.find((column) => hasHole(rows[pass - 1] ?? 0, column) === seized) ?? strip
    const others = columnsOf(strip).filter((column) => column !== first)
    const question = predict(kit, {
      prompt: `Strip ${strip} is ${seized ? 'seized: it never shifts' : 'stuck shifted'}. Pass ${pass} reads card row ${pass}. R1 is column 1. Which of the needles ${namesOf(stretch)} come out otherwise than the card asks?`,
      scene,
      stretch,
      goal: 'wrong',
      pictures: [rowPicture(rows, pass)],
      slips: [
        {
          chosen: indexesOf(stretch).filter((index) => stripOfNeedle(index) === strip),
          reason: `All of these are on strip ${strip}, but some of them were to come out ${seized ? 'plain' : 'selected'} anyway, so nothing shows there.`,
        },
        {
          scene: { ...scene, faults: [broken(seized ? 'rocker.dead' : 'pin.high', [first])] },
          reason: `That is column ${first} alone; strip ${strip} serves columns ${listed(others.map(String))} as well.`,
        },
        {
          scene: { ...scene, faults: [broken(seized ? 'strip.over' : 'strip.seized', [strip])] },
          reason: seized
            ? 'A strip that never shifts can’t hold a butt down, so it misses needles; it never selects one too many.'
            : 'A strip that stays shifted holds every butt, so it selects needles too many; it never misses one.',
        },
      ],
      because: `of the needles here that strip ${strip} serves, the card asks ${seized ? 'for' : 'nothing of'} just those.`,
    })
    return question.slips.length === 3 ? question : null
  })

/** Which needles come out wrong with two faults at once? */
export const twoFaults: Maker = (kit) =>
  firstGood(() => {
    const { draw } = kit
    const rows = mainRows(kit.library)
    const pass = draw.whole(1, rows.length)
    const [strip, other] = draw.shuffled(everyColumn.slice(0, strips))
    const column = draw.pick(columnsOf(other!))
    const stretch = someStretch(draw, columns + strips)
    const seized = broken('strip.seized', [strip!])
    const dead = broken('rocker.dead', [column])
    const question = predict(kit, {
      prompt: `Strip ${strip!} is seized and rocker ${column} is broken. Pass ${pass} reads card row ${pass}. ${needleName(stretch.first)} is column 1. Which of the needles ${namesOf(stretch)} are missed?`,
      scene: { pass, faults: [seized, dead] },
      stretch,
      goal: 'wrong',
      pictures: [rowPicture(rows, pass)],
      slips: [
        {
          scene: { pass, faults: [seized] },
          reason: `These are the needles of strip ${strip!}; rocker ${column} misses its own as well.`,
        },
        {
          scene: { pass, faults: [dead] },
          reason: `These are the needles of rocker ${column}; strip ${strip!} misses its own as well.`,
        },
        {
          scene: { pass, faults: [seized, broken('strip.seized', [other!])] },
          reason: `Rocker ${column} is only one of three that work strip ${other!}; the other two still push it.`,
        },
      ],
      because: `strip ${strip!} misses every ${strips}th needle that is asked for, and rocker ${column} every ${columns}th.`,
    })
    return question.slips.length === 3 ? question : null
  })

/** Which needles come out wrong with thick oil on a strip? */
export const thickOil: Maker = (kit) => {
  const { draw } = kit
  const threshold = ghostSpeed(stripReturnThick)
  const strip = draw.whole(1, strips)
  const column = draw.pick(columnsOf(strip))
  const isFast = draw.whole(0, 2) > 0
  // Well clear of the threshold on either side.
  const speed = 10 * Math.round((isFast ? draw.whole(130, 180) : draw.whole(40, 75)) * threshold * 0.001)
  const fast = 15 * Math.round(threshold / 10)
  const pass = draw.whole(1, 2)
  const way = wayOfPass(pass)
  const others = everyColumn.filter((one) => !columnsOf(strip).includes(one))
  const row = rowWith([column, ...draw.some(others, 5)])
  const stretch = someStretch(draw, columns)
  const scene = { card: ownRow(row), pass, speed, faults: [broken('strip.slow', [strip])] }
  const ghosts = goalOf(passOf(kit.library, { ...scene, speed: fast }), stretch, 'wrong')
  const behind = indexesOf(stretch).filter((index) =>
    ghosts.some((ghost) => Math.abs(ghost - 2 * strips * way - index) % columns === 0),
  )
  const falls = releaseTime(stripReturnThick).toFixed(0)
  const takes = ((1000 * strips * pitch) / speed).toFixed(0)
  return predict(kit, {
    prompt: `Oil has thickened on strip ${strip}: let go, it takes ${falls} ms to fall back below its catches’ reach. The carriage moves ${wayWord(way)} at ${speed} mm/s, so eight needles take ${takes} ms. ${needleName(stretch.first)} is column 1. Which of the needles ${namesOf(stretch)} come out otherwise than the card asks? Choose none if none do.`,
    scene,
    stretch,
    goal: 'wrong',
    pictures: [rowPicture([row], 1)],
    slips: [
      {
        chosen: behind,
        reason: `The strip is late, so its ghost comes after its own needle in the carriage’s direction: to the ${wayWord(way)}.`,
      },
      {
        chosen: goalOf(
          passOf(kit.library, { ...scene, faults: [broken('strip.seized', [strip])] }),
          stretch,
          'wrong',
        ),
        reason: `A slow strip still shifts in time for its own needle; what is late is its way back.`,
      },
      isFast
        ? {
            chosen: [],
            reason: `Eight needles take ${takes} ms, and the strip needs ${falls} ms to fall back: it still holds the next butt that it meets.`,
          }
        : {
            chosen: ghosts,
            reason: `Eight needles take ${takes} ms, and after ${falls} ms the strip has fallen back: it holds no butt too many.`,
          },
    ],
    because: isFast
      ? `eight needles on, strip ${strip} has not yet fallen back, and it holds a butt that nobody asked for.`
      : `at this speed strip ${strip} has fallen back before the next of its needles comes.`,
  })
}

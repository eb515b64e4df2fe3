import { allStrips, toNeedle } from '../../mechanism/indices.ts'
import { stripOfNeedle } from '../../mechanism/bed.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import type { Fault } from '../../mechanism/fault.ts'
import { firstValid } from '../seeded-random.ts'
import type { Kit, Maker } from '../question.ts'
import { needlesIn, someRange } from '../needle-range.ts'
import { columnsOf, mainCardRows, type Setup } from '../setup.ts'
import { partQuestion } from './part-question.ts'

const { columns, strips, speed } = dimensions

/** Places for faults that are easily mistaken for each other: one strip, one of its columns, one of its needles. */
interface Places {
  readonly strip: number
  readonly column: number
  readonly needle: number
  /** The pass seen; it reads the card row of its own number. */
  readonly pass: number
  readonly other: number
}

/** How a bed is looked at, and what may have done it. */
export interface Looks {
  /** The passes and speeds at which the bed is seen. */
  readonly views: (pass: number) => readonly Setup[]
  readonly suspects: (places: Places) => readonly Fault[]
  /** How many needles are seen. */
  readonly count?: number
}

/** Makes questions for the broken part among some suspects. */
export const partAmong =
  ({ views, suspects, count = 2 * columns }: Looks): Maker =>
  (kit: Kit) =>
    firstValid(() => {
      const { random } = kit
      const range = someRange(kit, count)
      const strip = random.whole(1, strips)
      const pass = random.whole(1, mainCardRows(kit.library).length - 2)
      const places: Places = {
        strip,
        column: random.pick(columnsOf(strip)),
        needle: random.pick(
          needlesIn(range).filter((index) => stripOfNeedle(toNeedle(index), kit) === strip),
        ),
        pass,
        other: random.pick(allStrips.filter((one) => one !== strip)),
      }
      return partQuestion(kit, { views: views(pass), range, suspects: suspects(places) })
    })

/** Ways of looking at a bed: after one pass, after one each way, after two the same way, and at two speeds. */
export const onePass = (pass: number): Setup[] => [{ pass }]
export const bothWays = (pass: number): Setup[] => [{ pass }, { pass: pass + 1 }]
export const sameWay = (pass: number): Setup[] => [{ pass }, { pass: pass + 2 }]
export const twoSpeeds = (pass: number): Setup[] => [
  { pass, speed: 1.5 * speed },
  { pass, speed: 0.2 * speed },
]

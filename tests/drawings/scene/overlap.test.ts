import { expect, test } from 'vitest'
import { extentOf } from '@/drawings/scene/engine/extent.ts'
import { separationByRoom, separationOf } from '@/drawings/scene/engine/separate.ts'
import { modelNames, models } from '@/drawings/scene/machine/models.ts'
import { states } from './machines.ts'

/** Parts that are one solid, or that are inside each other as they should: a wire in its hole, a spring in its seat. */
const together: ReadonlySet<string> = new Set(['needle butt', 'needle spur', 'butt spur', 'strip catch'])

const isOne = (one: string, other: string): boolean =>
  one === other || together.has(`${one} ${other}`) || together.has(`${other} ${one}`)

const cases = modelNames.flatMap((model) => states.map(([state, pose]) => ({ model, state, pose })))

test.each(cases)('no two parts are in one place: $model, $state', ({ model, pose }) => {
  const pieces = models[model](pose).flatMap(({ name, shape, order }) =>
    shape ? [{ name, shape, order, room: extentOf(shape) }] : [],
  )
  const wrong: string[] = []
  for (const [n, one] of pieces.entries())
    for (const other of pieces.slice(n + 1)) {
      if (isOne(one.name, other.name) && one.order === other.order) continue
      if (separationByRoom(one.room, other.room)) continue
      const { gap } = separationOf(one.shape, other.shape)
      if (gap < -0.02)
        wrong.push(`${one.name} ${one.order} is ${(-gap).toFixed(2)} mm in ${other.name} ${other.order}`)
    }
  expect(wrong).toEqual([])
})

import { held, openSession, slide } from '../browser/held.ts'
import { open, test } from '../browser/page.ts'
import { note } from './figure.ts'

const inputs = 10_000

test('what is held after ten thousand inputs', async ({ page }) => {
  test.slow()
  await open(page, 'pass=9&break=strip.3.seized')
  const session = await openSession(page)
  await slide(page, inputs / 4)
  const before = await held(page, session)
  await slide(page, inputs)
  const after = await held(page, session)
  const change = (name: keyof typeof before, digits = 0): string =>
    `${before[name].toFixed(digits)} to ${after[name].toFixed(digits)}`
  note(`nodes held after ${inputs} inputs`, change('nodes'), 'the same', after.nodes <= before.nodes)
  note(
    `listeners held after ${inputs} inputs`,
    change('listeners'),
    'the same',
    after.listeners <= before.listeners,
  )
  const most = before.heap * 1.15 + 1
  note(
    `memory held after ${inputs} inputs`,
    `${change('heap', 1)} MB`,
    `below ${most.toFixed(1)} MB`,
    after.heap < most,
  )
})

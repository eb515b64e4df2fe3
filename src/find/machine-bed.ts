import { needlesAt } from './bed-needles.ts'
import type { Hypothesis } from './hypotheses.ts'
import { isKindByChance } from './kinds-by-chance.ts'
import { changedCode, changedSlot, packChange } from './packed-change.ts'
import { lateChance, type Setting, settingOf, type Shown, shownByAll } from './shown.ts'
import { soundBeds } from './sound.ts'

/** What a whole machine shows in a view, beside a sound one; what chance decides is only a chance. */
export const shownByMachine = (
  { faults, hasCard }: Pick<Hypothesis, 'faults' | 'hasCard'>,
  setting: Setting,
): Shown => {
  const needles = needlesAt(setting.view)
  const firm = faults.filter(({ kind }) => !isKindByChance(kind))
  const bar = faults.find(({ kind }) => kind === 'retainer.worn')
  const chance =
    bar?.kind === 'retainer.worn'
      ? lateChance(bar.amount, setting.view.speed, setting.condition.dimensions)
      : 0
  if (hasCard || !setting.view.card)
    return { changed: shownByAll(firm, needles, [setting])[0]!.changed, chance }
  const bare = settingOf({ ...setting.view, card: null }, soundBeds())
  const own = new Map(
    Array.from(
      shownByAll(firm, needles, [bare])[0]!.changed,
      (change) => [changedSlot(change), changedCode(change)] as const,
    ),
  )
  const changed = needles.flatMap((_, slot) => {
    const code = own.get(slot) ?? bare.sound.codes[slot]!
    return code === setting.sound.codes[slot] ? [] : [packChange(slot, code)]
  })
  return { changed: Uint16Array.from(changed), chance }
}

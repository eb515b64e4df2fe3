import { type Fault, faultId } from '../../mechanism/fault.ts'
import { startRun } from '../../mechanism/pass.ts'
import { soundScenario } from '../../mechanism/scenario.ts'
import { faultPhrase, faultWords } from '../../words/faults.ts'
import { firstGood } from '../draw.ts'
import type { Kit, Maker, Option } from '../question.ts'
import { broken, mainRows, textOf } from '../scene.ts'

/** How many passes are told, and how many answers are offered. */
const told = 6
const offered = 4

const rowsRead = ({ library }: Kit, fault: Fault): number[] => {
  const run = startRun({ ...soundScenario(mainRows(library)), faults: [fault] })
  return Array.from({ length: told }, (_, n) => run.passOf(n + 1).row ?? 0)
}

/** What does not step the card as it should, from the rows that six passes read? */
export const steppingPart: Maker = (kit) =>
  firstGood(() => {
    const { draw, library } = kit
    const suspects = [
      broken('card.locked'),
      broken('pawl.right'),
      broken('pawl.left'),
      broken('pawl.double'),
      broken('turn.short', [draw.whole(2, told)]),
    ]
    const culprit = draw.pick(suspects)
    const seen = rowsRead(kit, culprit).join(', ')
    const options = draw
      .shuffled([
        culprit,
        ...draw
          .some(suspects, suspects.length)
          .filter((one) => one !== culprit)
          .slice(0, offered - 1),
      ])
      .map((fault): Option => {
        const would = rowsRead(kit, fault).join(', ')
        return {
          id: faultId(fault),
          label: faultPhrase(fault),
          note: '',
          right: fault === culprit,
          reason:
            fault === culprit
              ? `“${faultPhrase(fault)}” shows as ${faultWords[fault.kind].shows}, and so it does here.`
              : `“${faultPhrase(fault)}” would read rows ${would}, but rows ${seen} were read.`,
          show: textOf(library, { pass: told, faults: [fault] }),
        }
      })
    if (new Set(options.map(({ reason }) => reason)).size < offered) return null
    return {
      kind: 'part',
      prompt: `The first turn is made at the right. Passes 1 to ${told} read card rows ${seen}. What is wrong with the machine?`,
      state: textOf(library, {}),
      pictures: [],
      options,
    }
  })

import { type Fault, faultId } from '../../mechanism/fault.ts'
import { startRun } from '../../mechanism/pass.ts'
import { soundScenario } from '../../mechanism/scenario.ts'
import { faultPhrase, faultWords } from '../../words/faults.ts'
import { firstValid } from '../seeded-random.ts'
import type { Kit, Maker, Option } from '../question.ts'
import { broken, cardRowOf, mainCardRows, linkText } from '../setup.ts'

/** How many passes the question lists, and how many answers it offers. */
const passCount = 6
const offered = 4

const rowsRead = ({ library }: Kit, fault: Fault): number[] => {
  const run = startRun({ ...soundScenario(mainCardRows(library)), faults: [fault] })
  return Array.from({ length: passCount }, (_, n) => cardRowOf(run.passOf(n + 1)))
}

/** What does not step the card as it should, from the rows that six passes read? */
export const steppingPart: Maker = (kit) =>
  firstValid(() => {
    const { random } = kit
    const suspects = [
      broken('card.locked'),
      broken('pawl.right'),
      broken('pawl.left'),
      broken('pawl.double'),
      broken('turn.short', [random.whole(2, passCount)]),
    ]
    const culprit = random.pick(suspects)
    const seen = rowsRead(kit, culprit).join(', ')
    const options = random
      .shuffled([
        culprit,
        ...random
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
          show: linkText(kit, { pass: passCount, faults: [fault] }),
        }
      })
    if (new Set(options.map(({ reason }) => reason)).size < offered) return null
    return {
      kind: 'part',
      prompt: `The first turn is made at the right. Passes 1 to ${passCount} read card rows ${seen}. What is wrong with the machine?`,
      state: linkText(kit, {}),
      pictures: [],
      options,
    }
  })

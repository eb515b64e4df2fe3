import { fragmentOf } from '../../browser/address.ts'
import { onlyHere, shareable } from '../../browser/share.ts'
import { nameCharacters } from '../../browser/save-file.ts'
import { writeCarriagePosition } from '../../link/carriage-position.ts'
import { writeView } from '../../link/scene-view.ts'
import { faultPhrase } from '../../words/faults.ts'
import { counted } from '../../words/lists.ts'
import { describeWith } from '../../words/subject.ts'
import { drawMachine, type MachineShown } from './machine-drawing.ts'
import type { Seen } from './picture.ts'

/** The link to a figure in its state, with where the machine in three dimensions is seen from. */
const addressOf = ({ state, library, scene }: MachineShown): string => {
  const url = new URL(location.href)
  url.search = ''
  url.hash = fragmentOf(state, library) + (scene?.view ? `&view=${writeView(scene.view)}` : '')
  return shareable(url.href)
}

/**
 * What the file of a figure in a state is called, before it is made a file's name: the figure, the pass, the place and the
 * faults, or how many they are where there is no room for them.
 */
export const titleOfFile = (
  figure: string,
  { pass, at, faults }: Pick<MachineShown['state'], 'pass' | 'at' | 'faults'>,
): string => {
  const title = `${figure.replace(/^The /, '')} pass ${pass} ${writeCarriagePosition(Math.round(at))}`
  const named = [title, ...faults.map(faultPhrase)].join(' ')
  return named.length <= nameCharacters ? named : `${title} ${counted(faults.length, 'fault')}`
}

/** A figure of the machine drawn anew in its state, with its words, ready to be saved. */
export const seeMachine = async (shown: MachineShown): Promise<Seen> => {
  const { figure, run, frame, svg, width, height } = await drawMachine(shown)
  const step = shown.scene?.step
  const broken = run.scenario.faults.map(faultPhrase).join(', ')
  return {
    svg,
    width,
    height,
    title: `Figure ${figure.number}. ${figure.title}`,
    description: [figure.describe(run, frame, step), ...(broken === '' ? [] : [`Broken: ${broken}.`])].join(
      ' ',
    ),
    sentence: describeWith(run, frame, step?.subject ?? null),
    address: addressOf(shown),
    name: titleOfFile(figure.title, shown.state),
  }
}

/** What there is to say of an address under a picture that others cannot open; null of any other. */
export const addressRemark = ({ address }: Seen): string | null => onlyHere(address)

import { fragmentOf } from '../../browser/address.ts'
import { onlyHere, shareable } from '../../browser/share.ts'
import { writeView } from '../../link/scene-view.ts'
import { faultPhrase } from '../../words/faults.ts'
import { readSceneStep } from '../../words/figures/scene-step.ts'
import { describeWith } from '../../words/subject.ts'
import { titleOfFile } from './file-title.ts'
import { drawMachine, type MachineShown } from './machine-drawing.ts'
import type { Seen } from './picture.ts'

/** The link to a figure in its state, with where the machine in three dimensions is seen from. */
const addressOf = ({ state, library, scene }: MachineShown): string => {
  const url = new URL(location.href)
  url.search = ''
  url.hash = fragmentOf(state, library) + (scene?.view ? `&view=${writeView(scene.view)}` : '')
  return shareable(url.href)
}

/** A figure of the machine drawn again in its state, with its words, ready to be saved. */
export const seeMachine = async (shown: MachineShown): Promise<Seen> => {
  const drawing = await drawMachine(shown)
  const { figure, run, frame, svg, width, height } = drawing
  const step = shown.scene ? readSceneStep(shown.scene.step) : undefined
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
    machine: { shown, drawing },
  }
}

/** A picture that a page shows, copied with its words, ready to be saved. */
export const seeCopy = (
  svg: SVGSVGElement,
  words: Pick<Seen, 'title' | 'description' | 'sentence' | 'name'>,
): Seen => {
  const { width, height } = svg.viewBox.baseVal
  return {
    svg: svg.cloneNode(true) as SVGSVGElement,
    width,
    height,
    address: shareable(location.href),
    machine: null,
    ...words,
  }
}

/** What there is to say of an address under a picture that others cannot open; null of any other. */
export const addressRemark = ({ address }: Seen): string | null => onlyHere(address)

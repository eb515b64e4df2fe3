import type { FaultKindName } from '../../mechanism/fault-kinds.ts'
import { faultWords } from '../../words/faults.ts'
import { type SceneViewName, sceneViewNames } from '../../words/figures/scene.ts'
import { capital } from '../../words/parts.ts'
import { faultFile } from '../fault-pictures.ts'
import { faultState } from '../faults.ts'
import { machineInState } from '../machine-state.ts'
import { sceneFile } from '../scene.ts'
import { type Preview, withoutFineLines } from './picture.ts'

/** The machine with a fault, and the pass that shows it first. */
const knitted = (kind: FaultKindName): Pick<Preview, 'run' | 'pass'> => {
  const { run, frame } = machineInState(faultState(kind))
  return { run, pass: frame.pass.pass }
}

/** A sound machine, once its rows have been knitted. */
const sound = (): Pick<Preview, 'run' | 'pass'> => {
  const { run, frame } = machineInState('pass=24')
  return { run, pass: frame.pass.pass }
}

const isView = (name: string): name is SceneViewName => sceneViewNames.some((view) => view === name)

/** How much closer than on a page a broken part is looked at: the picture is shown no larger than a thumb. */
const closer = 1.3

/** The machine in a view of it, or with a part broken. */
const partOf = (name: SceneViewName | FaultKindName): Pick<Preview, 'part' | 'closer'> =>
  isView(name)
    ? { part: sceneFile(name, withoutFineLines), closer: 1 }
    : { part: faultFile(name, withoutFineLines), closer }

/** What a kind of fault is shown by where its page is shared. */
export const faultPreview = (kind: FaultKindName): Preview => {
  const { title, shows } = faultWords[kind]
  return { title, shows: capital(shows), ...partOf(kind), ...knitted(kind) }
}

/** What a chapter is shown by: its question, its view of the machine, and the cloth of a sound one; or a fault's. */
export const chapterPreview = ({
  title,
  question,
  shared,
}: {
  readonly title: string
  readonly question: string
  readonly shared: SceneViewName | FaultKindName
}): Preview => ({
  title,
  shows: question,
  ...partOf(shared),
  ...(isView(shared) ? sound() : knitted(shared)),
})

/** For all other pages: the whole machine, and cloth in which every eighth needle is missed. */
export const sitePreview = (): Preview => ({
  title: 'How a punched card selects needles',
  shows: 'One strip seized, and every eighth needle is missed',
  ...partOf('whole'),
  closer: 1.6,
  ...knitted('strip.seized'),
})

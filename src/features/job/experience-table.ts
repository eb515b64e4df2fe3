import { countExperience, countsExperience } from '../../browser/own-experience.ts'
import { element, required, setText } from '../../browser/dom.ts'
import { type Experience, type ExperiencedKind, experienceTable, findsOf } from '../../find/experience.ts'
import { kindWords } from '../../words/intake.ts'
import { counted } from '../../words/lists.ts'
import { capital } from '../../words/parts.ts'

const share = (value: number): string => `${(100 * value).toFixed(1)}\u00a0%`

const rowOf = ({ kind, finds, common, share: both }: ExperiencedKind): HTMLElement =>
  element('tr', {}, [
    element('th', { scope: 'row' }, [capital(kindWords(kind))]),
    element('td', {}, [finds === 0 ? '–' : String(finds)]),
    element('td', {}, [share(common)]),
    element('td', {}, [share(both)]),
  ])

/** The table of her own finds beside common practice, with the switch that lets them count. Returns what shows it. */
export const createExperienceTable = (root: HTMLElement): ((experience: Experience) => void) => {
  const panel = required(root, '.job-experience', HTMLElement)
  const box = required(panel, 'input', HTMLInputElement)
  const said = required(panel, '.experience-said', HTMLElement)
  let shown: Experience = {}
  const saySwitch = (): void => {
    const finds = findsOf(shown)
    const none = 'There is no find yet, so it changes nothing so far.'
    setText(said, box.checked ? (finds === 0 ? none : 'They count.') : 'They do not count now.')
  }
  box.addEventListener('change', () => {
    if (countExperience(box.checked)) saySwitch()
    else setText(said, 'This browser does not keep that: it lasts until the page is closed.')
  })
  return (experience) => {
    shown = experience
    box.checked = countsExperience()
    setText(required(panel, '.experience-count', HTMLElement), `(${counted(findsOf(experience), 'find')})`)
    required(panel, 'tbody', HTMLElement).replaceChildren(...experienceTable(experience).map(rowOf))
    saySwitch()
  }
}

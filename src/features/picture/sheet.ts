import bed from '../../drawings/bed/bed.css?inline'
import markedMachine from '../../drawings/marked-machine/marked-machine.css?inline'
import mend from '../../drawings/mend/mend.css?inline'
import figures from '../../styles/figures.css?inline'
import tokens from '../../styles/tokens.css?inline'
import { inScheme, type Scheme } from './scheme.ts'

/** The drawings' styles, in the order in which pages have them. */
const text = [tokens, figures, bed, markedMachine, mend].join('\n')

const made = new Map<Scheme, CSSStyleSheet>()

/** The drawings' styles in one of the schemes, for a shadow root that has nothing of the page's. */
export const sheetIn = (scheme: Scheme): CSSStyleSheet => {
  const known = made.get(scheme)
  if (known) return known
  const sheet = new CSSStyleSheet()
  sheet.replaceSync(inScheme(text, scheme).replaceAll(':root', ':host'))
  made.set(scheme, sheet)
  return sheet
}

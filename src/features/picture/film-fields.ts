import { element } from '../../browser/dom.ts'
import { needleIndex, needleName } from '../../mechanism/bed.ts'
import type { Needle } from '../../mechanism/indices.ts'
import { parsePart } from '../../mechanism/part.ts'
import type { MachineDrawing } from './machine-drawing.ts'
import { choice } from './fields.ts'
import { stretchOf, usualNeedle, type Stretch } from './film/stretch.ts'

/** Where a person chooses what a film shows. */
export interface FilmFields {
  readonly root: HTMLElement
  /** Begins again with a machine, at the needle of which its step is, if that is about one. */
  readonly begin: (machine: MachineDrawing, subject: string | undefined) => void
  /** What is chosen; a sentence where it cannot be filmed. */
  readonly now: (machine: MachineDrawing) => Stretch | string
}

/** Makes the fields of a film. */
export const createFilmFields = (): FilmFields => {
  const kind = choice(
    'save-stretch',
    'What it shows',
    { needle: 'One needle’s journey', pass: 'One pass', compare: 'Sound, then broken' },
    'needle',
  )
  const needle = element('input', { type: 'text', size: '5', maxlength: '5', autocomplete: 'off' })
  const named = element('label', {}, ['Needle ', needle])
  kind.root.append(named)
  return {
    root: kind.root,
    begin: ({ run, frame }, subject = '') => {
      const part = parsePart(subject)
      needle.value = needleName(part?.kind === 'needle' ? part.needle : usualNeedle(run, frame))
    },
    now: ({ run, frame }) => {
      const chosen = kind.now()
      named.hidden = chosen === 'pass'
      const { first, last } = run.scenario.bed
      const index = needleIndex(needle.value.trim().toUpperCase())
      const isThere = (found: Needle | null): found is Needle =>
        found !== null && found >= first && found <= last
      if (chosen === 'compare' && run.scenario.faults.length === 0)
        return 'Nothing is broken here. Break a part first, and the film shows both machines.'
      if (chosen !== 'pass' && !isThere(index))
        return `Name a needle in use, from ${needleName(first)} to ${needleName(last)}.`
      return stretchOf(chosen, run, frame.pass.pass, isThere(index) ? index : first)
    },
  }
}

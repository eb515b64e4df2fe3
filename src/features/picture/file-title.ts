import { nameCharacters } from '../../browser/save-file.ts'
import { writeCarriagePosition } from '../../link/carriage-position.ts'
import type { State } from '../../link/state.ts'
import { faultPhrase } from '../../words/faults.ts'
import { counted } from '../../words/lists.ts'

/**
 * What the file of a figure in a state is called, before it is made a file's name: the figure, the pass, the place and the
 * faults, or how many they are where there is no room for them.
 */
export const titleOfFile = (
  figure: string,
  { pass, at, faults }: Pick<State, 'pass' | 'at' | 'faults'>,
): string => {
  const title = `${figure.replace(/^The /, '')} pass ${pass} ${writeCarriagePosition(Math.round(at))}`
  const named = [title, ...faults.map(faultPhrase)].join(' ')
  return named.length <= nameCharacters ? named : `${title} ${counted(faults.length, 'fault')}`
}

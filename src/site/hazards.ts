/** The three works on a machine, in the order in which a fault's page has them. */
export type Work = 'outside' | 'inside' | 'mend'

/** With which work each caution's hazard begins: each is before the first step that has it. */
const begins: ReadonlyMap<string, Work> = new Map<string, Work>([
  ['fingers', 'outside'],
  ['hooks', 'outside'],
  ['dust', 'outside'],
  ['force', 'outside'],
  ['unplug', 'inside'],
  ['mains', 'inside'],
  ['springs', 'inside'],
  ['old-plastic', 'inside'],
  ['reader', 'inside'],
  ['lifting', 'inside'],
  ['notes', 'mend'],
  ['solvents', 'mend'],
  ['plastics', 'mend'],
  ['oil', 'mend'],
])

/** With which work the hazard of a caution begins. Throws where nothing is said of it: it must not be left out. */
export const hazardBegins = (caution: string): Work => {
  const work = begins.get(caution)
  if (!work) throw new Error(`nothing says where the hazard of the caution ${caution} begins`)
  return work
}

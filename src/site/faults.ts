import { base } from '../link/site-path.ts'
import { type CollectionEntry, getCollection } from 'astro:content'
import { exampleOf, standardLooks } from '../find/battery.ts'
import { firstShown } from '../find/likeness.ts'
import { write } from '../link/write.ts'
import { mainCard } from '../link/state.ts'
import { defaultState } from '../link/read.ts'
import { at } from '../mechanism/lookup.ts'
import { faultKinds, type FaultKindName } from '../mechanism/fault-kinds.ts'
import { patternCard, siteLibrary } from './cards.ts'

export type FaultEntry = CollectionEntry<'faults'> & { readonly kind: FaultKindName }

/** The texts of every kind of fault, in the catalogue's order. Throws where a kind has none, or a text no kind. */
export const allFaults = async (): Promise<FaultEntry[]> => {
  const entries = await getCollection('faults')
  const kinds = Object.keys(faultKinds) as FaultKindName[]
  const strange = entries.find(({ data }) => !kinds.some((kind) => kind === data.kind))
  if (strange)
    throw new Error(`content/faults/${strange.id}.md: there is no kind of fault “${strange.data.kind}”`)
  return kinds.map((kind) => {
    const entry = entries.find(({ data }) => data.kind === kind)
    if (!entry) throw new Error(`content/faults has no text for ${kind}`)
    return { ...entry, kind }
  })
}

/** A kind's part of its address: strip.seized is at strip-seized. */
export const faultSlug = (kind: FaultKindName): string => kind.replaceAll('.', '-')

/** The address of a kind's page. */
export const faultAddress = (kind: FaultKindName): string => `${base}/faults/${faultSlug(kind)}/`

/** The state that shows a kind of fault first, with the carriage at needle `at`, or well along the bed, as a link's text. */
export const faultState = (kind: FaultKindName, where?: (way: 1 | -1) => number): string => {
  const look = firstShown(kind, patternCard) ?? at(standardLooks, 0)
  const { pass } = look
  const card = look.card === 'holes' ? 'all-holes' : look.card === 'blank' ? 'blank' : mainCard
  const state = {
    ...defaultState(siteLibrary),
    card: { kind: 'site' as const, id: card },
    pass,
    at: where?.(pass % 2 === 1 ? 1 : -1) ?? (pass % 2 === 1 ? 139 : 60),
    faults: [exampleOf(kind)],
    speed: look.speed,
  }
  return write(state, siteLibrary)
}

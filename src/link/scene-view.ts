/** Where a drawing is seen from: degrees to the right of its front, degrees above it, and the size in per cent. */
export interface LinkedView {
  readonly turned: number
  readonly raised: number
  readonly zoom: number
}

/** What a link's `view` says: a view by its name, a place of its own, or nothing that could be read, and why. */
export type ViewReading<Name> =
  | { readonly kind: 'named'; readonly name: Name }
  | { readonly kind: 'turned'; readonly view: LinkedView; readonly remark: string | null }
  | { readonly kind: 'refused'; readonly reason: string }

/** The ranges of a view's numbers, both ends included. */
export const viewLimits = { turned: [-179, 180], raised: [-90, 90], zoom: [50, 400] } as const

const clamp = (value: number, [least, most]: readonly [number, number]): number =>
  Math.min(most, Math.max(least, value))

/**
 * Reads a link's `view`: one of these names, or degrees to the right of the front, degrees from above and per cent, in
 * whole numbers, as in `30.-20.100`. Never throws; numbers out of range are clamped, and it is said.
 */
export const readView = <Name extends string>(text: string, names: readonly Name[]): ViewReading<Name> => {
  const name = names.find((each) => each === text)
  if (name !== undefined) return { kind: 'named', name }
  const match = /^(-?\d{1,4})\.(-?\d{1,4})\.(\d{1,4})$/.exec(text)
  if (!match)
    return {
      kind: 'refused',
      reason: `The link’s view is none of ${names.join(', ')}, and no three whole numbers such as 30.-20.100.`,
    }
  const [turned, raised, zoom] = match.slice(1).map(Number) as [number, number, number]
  const view = {
    turned: clamp(turned, viewLimits.turned),
    raised: clamp(raised, viewLimits.raised),
    zoom: clamp(zoom, viewLimits.zoom),
  }
  const isChanged = view.turned !== turned || view.raised !== raised || view.zoom !== zoom
  return {
    kind: 'turned',
    view,
    remark: isChanged ? `The link’s view is out of range; ${writeView(view)} is used.` : null,
  }
}

/** A state's text with a link's `view` in its place, before the note; the text itself where there is none. */
export const withView = (state: string, view: string | null): string => {
  if (view === null) return state
  const pairs = state.split('&').filter((pair) => pair !== '' && pair !== 'v=1' && !pair.startsWith('view='))
  const note = pairs.findIndex((pair) => pair.startsWith('note='))
  return pairs.toSpliced(note < 0 ? pairs.length : note, 0, `view=${view}`).join('&')
}

/** A link's text without its `view`, and what that says; null where there is none. */
export const withoutView = (text: string): { readonly state: string; readonly view: string | null } => {
  const pairs = text.split('&')
  const view = pairs.findLast((pair) => pair.startsWith('view='))
  return {
    state: pairs.filter((pair) => !pair.startsWith('view=')).join('&'),
    view: view?.slice('view='.length) ?? null,
  }
}

/** Writes a view as `readView` reads it. */
export const writeView = ({ turned, raised, zoom }: LinkedView): string =>
  `${Math.round(turned)}.${Math.round(raised)}.${Math.round(zoom)}`

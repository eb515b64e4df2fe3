/** A file of the site as its worker knows it. */
export interface SiteFile {
  /** Relative to the site's own address; a page's ends with its folder. */
  readonly url: string
  /** What a browser checks what it was sent against, so that no version is mixed with another. */
  readonly integrity: string
  /** Size as it is kept, unpacked. */
  readonly bytes: number
  /** Whether one visit keeps it, whatever page was opened. */
  readonly shell: boolean
}

/**
 * What a page may ask of the worker. All but `use` and `here` answer through the port that comes with them. `keep` keeps
 * some more of the site: a page asks again until there is no more to keep.
 */
export type Wish =
  | { readonly kind: 'use' }
  | { readonly kind: 'here'; readonly addresses: readonly string[] }
  | { readonly kind: 'tell' }
  | { readonly kind: 'keep' }
  | { readonly kind: 'remove' }

/** How much of the site is kept on this device. */
export interface Kept {
  readonly files: number
  readonly bytes: number
  readonly allFiles: number
  readonly allBytes: number
  /** Of the files kept, how many are there only because somebody opened or wanted them. */
  readonly chosenFiles: number
}

/** Why the whole site could not be kept. */
export type Trouble = 'full' | 'unreached'

/** What the worker answers: how much is kept so far, and at the end of what it was asked whether there was trouble. */
export interface Answer {
  readonly kept: Kept
  readonly isDone: boolean
  readonly trouble: Trouble | null
}

/** One thing that a search may find. */
export interface SearchDocument {
  readonly id: string
  readonly title: string
  readonly where: string
  readonly text: string
  /** What people type who look for it by other words than its own; it is not shown. */
  readonly also: string
  readonly address: string
}

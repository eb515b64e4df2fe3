/** One thing that a search may find. */
export interface SearchDocument {
  readonly id: string
  readonly title: string
  readonly where: string
  readonly text: string
  readonly address: string
}

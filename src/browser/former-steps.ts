/** The names that a chapter's steps had before, each with the id of the step that took its place. */
export const formerSteps = (steps: Iterable<HTMLElement>): Map<string, string> =>
  new Map(
    [...steps].flatMap((step) =>
      [...step.querySelectorAll('h2 .was')].map(({ id }) => [id, step.id] as const),
    ),
  )

import { quote } from './troubles.ts'

/** Which of a chapter's steps an address names, counted from 0, and a sentence where it names none of them. */
export interface NamedStep {
  readonly step: number
  /** Null where there is nothing to say. */
  readonly trouble: string | null
}

/**
 * Reads the name of a step: the first step where there is no name, or one that the chapter lacks. `former` has the names
 * that steps had before, each with the id of the step that took its place.
 */
export const readStepName = (
  name: string | null,
  ids: readonly string[],
  former: ReadonlyMap<string, string>,
): NamedStep => {
  const step = ids.indexOf(former.get(name ?? '') ?? name ?? '')
  if (step >= 0) return { step, trouble: null }
  const isNone = name === null || name === ''
  const trouble = isNone ? null : `This chapter has no step ${quote(name)}; its first step is shown.`
  return { step: 0, trouble }
}

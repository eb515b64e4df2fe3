import type { ClassState } from '@/features/class/shared/state.ts'

/** A class at the first step of a chapter, or elsewhere. */
export const classAt = (place: Partial<ClassState> = {}): ClassState => ({
  chapter: 'the-hold',
  step: 0,
  part: 0,
  parts: 1,
  first: 'R1',
  link: '',
  revealed: false,
  blank: false,
  pointer: undefined,
  quiz: undefined,
  qr: false,
  ...place,
})

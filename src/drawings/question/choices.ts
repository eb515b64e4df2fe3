import { entry } from '../../mechanism/lookup.ts'
import type { Option, Order } from '../../lesson/question.ts'

/** One of several answers in words, with what it costs. */
export const optionWords = ({ label, note }: Option): string => (note === '' ? label : `${label} (${note})`)

/** The steps of a chain in words, as they are offered. */
export const offeredWords = ({ steps, offered }: Order): string[] =>
  offered.map((id) => entry(new Map(steps.map((step) => [step.id, step.label])), id))

import { change, load, type Section } from './storage.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import { isBedLength } from '../mechanism/own.ts'
import { type Measured, measurementNames, measurements } from '../mechanism/measurement.ts'
import { type Needle, isNeedle } from '../mechanism/indices.ts'
import { usualPlace } from '../mechanism/bed.ts'

/** What is in the fields: what was measured of this machine and of a good one, how exact, and the carriage's speed. */
export interface Values {
  readonly measured: Measured
  readonly good: Measured
  /** Where nothing was written, the tool's own exactness. */
  readonly exact: Measured
  readonly speed: number
  /** The needle of column 1. */
  readonly columnOne: Needle
}

export const noValues: Values = { measured: {}, good: {}, exact: {}, speed: dimensions.speed, ...usualPlace }

/** The columns of fields. */
export const columns = ['measured', 'good', 'exact'] as const
export type Column = (typeof columns)[number]

/** Measured values of unknown origin: those that can be. */
const readColumn = (value: unknown): Measured => {
  if (typeof value !== 'object' || value === null) return {}
  const fields = value as Readonly<Record<string, unknown>>
  return Object.fromEntries(
    measurementNames.flatMap((name) => {
      const { least, most } = measurements[name]
      const field = fields[name]
      const canBe = typeof field === 'number' && field >= Math.min(0, least) && field <= most
      return canBe && (name !== 'needles' || isBedLength(field)) ? [[name, field]] : []
    }),
  )
}

/** What this browser keeps of them. */
const stored: Section<Values> = {
  read: ({ measure }) => {
    const fields = (typeof measure === 'object' && measure !== null ? measure : {}) as Readonly<
      Record<string, unknown>
    >
    const { speed, columnOne } = fields
    return {
      measured: readColumn(fields['measured']),
      good: readColumn(fields['good']),
      exact: readColumn(fields['exact']),
      speed: typeof speed === 'number' && speed >= 50 && speed <= 2000 ? speed : noValues.speed,
      columnOne: typeof columnOne === 'number' && isNeedle(columnOne) ? columnOne : noValues.columnOne,
    }
  },
  write: (measure) => ({ measure }),
}

export const loadValues = (): Values => load(stored)

/** Keeps values; false where the browser keeps nothing. */
export const keepValues = (values: Values): boolean => change(stored, () => values)

/** How exact each measured value is: as it was written, or as its tool usually is. */
export const exactOf = ({ measured, exact }: Values): Measured =>
  Object.fromEntries(
    measurementNames.flatMap((name) =>
      measured[name] === undefined ? [] : [[name, exact[name] ?? measurements[name].exact]],
    ),
  )

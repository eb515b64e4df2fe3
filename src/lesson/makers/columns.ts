import { dimensions } from '../../mechanism/dimensions.ts'

const { strips } = dimensions

/** The columns that work a strip. */
export const columnsOf = (strip: number): number[] => [strip, strip + strips, strip + 2 * strips]

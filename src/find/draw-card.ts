import { type Card, columnBit } from '../mechanism/card.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import { toColumn } from '../mechanism/indices.ts'

const { columns, strips } = dimensions

/** A stream of numbers in [0, 1) from a whole seed (the linear congruence of Numerical Recipes). */
const stream = (seed: number): (() => number) => {
  let state = seed >>> 0
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0
    return state / 0x100000000
  }
}

const ones = (code: number): number => (code === 0 ? 0 : (code & 1) + ones(code >> 1))
const isWithin = (one: number, other: number): boolean => (one & other) === one

/**
 * Gives every column a code of as many holes as blanks, or nearly, none of which lies within another of its strip;
 * among those, the codes used least so far, by lot where they are even.
 */
export const drawCard = (rows: number, seed: number): Card => {
  const next = stream(seed)
  const pool = Array.from({ length: 1 << rows }, (_, code) => code).filter(
    (code) =>
      rows - ones(code) >= 2 && (ones(code) === Math.floor(rows / 2) || ones(code) === Math.ceil(rows / 2)),
  )
  const uses = new Map(pool.map((code) => [code, 0]))
  const drawn: number[] = []
  for (let column = 0; column < columns; column++) {
    const sharers = drawn.filter((_, n) => n % strips === column % strips)
    const free = pool.filter((code) => !sharers.some((one) => isWithin(one, code) || isWithin(code, one)))
    const fewest = Math.min(...free.map((code) => uses.get(code)!))
    const even = free.filter((code) => uses.get(code) === fewest)
    const code = even[Math.floor(next() * even.length)]!
    uses.set(code, fewest + 1)
    drawn.push(code)
  }
  return Array.from({ length: rows }, (_, row) =>
    drawn.reduce((bits, code, n) => ((code >> row) & 1 ? bits | columnBit(toColumn(n + 1)) : bits), 0),
  )
}

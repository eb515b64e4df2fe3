/**
 * What the site keeps in a reader's own browser: one JSON object, as text under one key of `localStorage`.
 *
 *     { "version": 3,
 *       "steps": …, "answers": …,     the reader's progress: src/lesson/progress.ts
 *       "letterKeys": false,          letters and signs are off as keys of a class: features/class/shared/letter-keys.ts
 *       "measure": …,               what was measured of a machine: measured-values.ts
 *       "prices": …,                  what work and parts cost: features/job/prices.ts
 *       "ownExperience": true }       finished jobs weigh what is likely: own-experience.ts
 *
 * Each feature reads and writes its own fields through a section; fields that no section knows stay as they are. A text
 * that is no such object is set aside under a key of its own before anything is written, so that nothing is lost.
 * A browser that keeps nothing is no error: the page then keeps what is written until it is left.
 *
 * To change the shape, raise `version` and add a migration from the version before: texts of every version stay readable.
 */
export const storageKey = 'every-eighth-needle'

const version = 3

/** The key of a text that could not be read. */
const asideKey = `${storageKey}-unread`

/** Written to see whether there is room, and removed again. */
const probeKey = `${storageKey}-try`
/** How much room the probe needs, in characters. */
const probeLength = 1000

/** Where version 2 kept that letters and signs are off as keys of a class. */
const oldLettersKey = `${storageKey}-letters-off`

type Fields = Readonly<Record<string, unknown>>

/** A feature's part of what is kept. `read` never throws: it leaves out what is not valid. */
export interface Section<Value> {
  readonly read: (fields: Fields) => Value
  readonly write: (value: Value) => Fields
}

/** What is wrong with what this browser keeps: nothing is kept at all, or what was kept can't be read. */
export type StorageTrouble = 'not-kept' | 'unread'

const isFields = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

const parsed = (text: string): unknown => {
  try {
    return JSON.parse(text)
  } catch {
    return null
  }
}

/** The version of a store; null for anything else. */
const versionOf = (store: unknown): number | null => {
  const found = isFields(store) ? store['version'] : null
  return typeof found === 'number' && Number.isInteger(found) && found >= 0 ? found : null
}

/** What changes from a version to the next. Versions without an entry differ only by fields that may be missing. */
const migrations: Readonly<Record<number, (fields: Fields) => Fields>> = {
  2: (fields) => (localStorage.getItem(oldLettersKey) === null ? fields : { ...fields, letterKeys: false }),
}

/** Brings fields of an earlier version to this one. A later version's fields are used as far as they are known. */
const migrated = (fields: Fields, from: number): Fields => {
  let current = fields
  for (let old = from; old < version; old += 1) current = migrations[old]?.(current) ?? current
  return current
}

/** What could not be kept: it lasts as long as the page, and is later than what is kept. */
let unkept: Fields | null = null

/** The fields kept. Throws where the browser denies its storage. */
const kept = (): Fields => {
  const text = localStorage.getItem(storageKey)
  const store = text === null ? null : parsed(text)
  const from = versionOf(store)
  return from === null || !isFields(store) ? migrated({}, version - 1) : migrated(store, from)
}

const current = (): Fields => {
  if (unkept) return unkept
  try {
    return kept()
  } catch {
    return {}
  }
}

/** Sets aside a text that is no store. Throws where the browser does not keep it. */
const setAside = (): void => {
  const text = localStorage.getItem(storageKey)
  if (text !== null && versionOf(parsed(text)) === null) localStorage.setItem(asideKey, text)
}

/** Keeps these fields, or removes the key where there are none. Throws where the browser does not keep them. */
const keep = (fields: Fields): void => {
  if (Object.keys(fields).length === 0) localStorage.removeItem(storageKey)
  else localStorage.setItem(storageKey, JSON.stringify({ ...fields, version }))
  localStorage.removeItem(oldLettersKey)
}

/** What is kept of a section. */
export const load = <Value>(section: Section<Value>): Value => section.read(current())

/**
 * Changes a section of what is kept now, whichever window changed it last. A change that returns the same value writes
 * nothing. Returns false where the browser did not keep it.
 */
export const change = <Value>(section: Section<Value>, by: (value: Value) => Value): boolean => {
  const fields = current()
  const before = section.read(fields)
  const after = by(before)
  if (after === before && unkept === null) return true
  const next = { ...fields, ...section.write(after) }
  try {
    setAside()
    keep(next)
    unkept = null
    return true
  } catch {
    unkept = next
    return false
  }
}

/** What is wrong with what this browser keeps; undefined where nothing is. */
export const storageTrouble = (): StorageTrouble | undefined => {
  try {
    localStorage.setItem(probeKey, 'x'.repeat(probeLength))
    localStorage.removeItem(probeKey)
    setAside()
    return localStorage.getItem(asideKey) === null ? undefined : 'unread'
  } catch {
    return 'not-kept'
  }
}

/** Forgets a section, and with it any text that could not be read. `none` is the section's value with nothing in it. */
export const forget = <Value>(section: Section<Value>, none: Value): void => {
  const own = ['version', ...Object.keys(section.write(none))]
  const rest = Object.fromEntries(Object.entries(current()).filter(([name]) => !own.includes(name)))
  unkept = null
  try {
    localStorage.removeItem(asideKey)
    keep(rest)
  } catch {
    // Nothing is kept, so there is nothing to forget.
  }
}

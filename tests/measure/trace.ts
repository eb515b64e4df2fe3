/** What the browser is asked to write down. */
export const traceCategories = ['devtools.timeline', 'blink.user_timing', 'v8.execute'] as const

/** An event of a trace, as Chromium writes it; times in µs. */
interface TraceEvent {
  readonly name: string
  readonly cat: string
  readonly ph: string
  readonly pid: number
  readonly tid: number
  readonly ts: number
  readonly dur?: number
  /** Time of the thread itself, which does not run while the thread waits. */
  readonly tdur?: number
}

const scripts = new Set(['RunMicrotasks', 'FunctionCall', 'EvaluateScript', 'v8.callFunction'])

/** Those of the events that lie in no other of them; they come in their order. */
const outermost = (events: readonly TraceEvent[]): TraceEvent[] => {
  let end = -Infinity
  return events.filter(({ ts, dur = 0 }) => {
    if (ts < end) return false
    end = ts + dur
    return true
  })
}

/**
 * How long the page's scripts took for each input, the input's own and those that draw, in ms of the page's own thread.
 * Marks “input 0”, “input 1” and so on part the work for one input from the next.
 */
export const scriptingTimes = (trace: string): number[] => {
  const { traceEvents } = JSON.parse(trace) as { traceEvents: TraceEvent[] }
  const marks = traceEvents
    .filter(({ name, cat }) => /^input \d+$/.test(name) && cat.includes('user_timing'))
    .sort((one, other) => one.ts - other.ts)
  const [first] = marks
  if (!first) throw new Error('The trace has no marks.')
  const own = traceEvents
    .filter(
      ({ name, ph, pid, tid }) => ph === 'X' && pid === first.pid && tid === first.tid && scripts.has(name),
    )
    .sort((one, other) => one.ts - other.ts || (other.dur ?? 0) - (one.dur ?? 0))
  const called = outermost(own)
  // An input begins within the script that sets the mark.
  const starts = marks.map(({ ts }) => called.findLast((event) => event.ts <= ts)?.ts ?? ts)
  return starts.slice(0, -1).map((start, n) => {
    const end = starts[n + 1] ?? start
    const times = called.filter(({ ts }) => ts >= start && ts < end).map(({ tdur = 0 }) => tdur / 1000)
    return times.reduce((sum, time) => sum + time, 0)
  })
}

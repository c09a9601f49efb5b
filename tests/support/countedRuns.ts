import { Session, type Profiler } from 'node:inspector'
import { setFlagsFromString } from 'node:v8'

/** How often script ran: the same on every machine, where a clock says as much of the machine. */
export interface Runs {
  /** Of all functions, loops and branches of our own source together. */
  readonly all: number
  /** Of the one that ran most. */
  readonly most: number
}

export interface RunCounter {
  /** Tells how often the pieces of our own source run while `act` does. */
  readonly runsOf: (act: () => void) => Runs
  readonly stop: () => void
}

/**
 * Begins to count runs. Functions that were compiled before are counted as a whole and not by their
 * loops: import what is to be counted afterwards, behind `vi.resetModules()`. V8 is kept from
 * taking them off its own shelf.
 */
export function startCounter(): RunCounter {
  const session = new Session()
  session.connect()
  const ask = (method: string, params?: object): unknown => {
    let answer: unknown
    // Of its own thread a session answers at once.
    session.post(method, params, (error, result) => {
      if (error !== null) throw new Error(error.message)
      answer = result ?? {}
    })
    if (answer === undefined) throw new Error(`${method} was not answered.`)
    return answer
  }
  const take = () =>
    (ask('Profiler.takePreciseCoverage') as Profiler.TakePreciseCoverageReturnType).result
  setFlagsFromString('--no-compilation-cache')
  ask('Profiler.enable')
  ask('Profiler.startPreciseCoverage', { callCount: true, detailed: true })
  return {
    runsOf(act) {
      // What was run up to here is not what is asked for.
      take()
      act()
      return runsIn(take())
    },
    stop() {
      ask('Profiler.stopPreciseCoverage')
      session.disconnect()
      setFlagsFromString('--compilation-cache')
    },
  }
}

function runsIn(scripts: readonly Profiler.ScriptCoverage[]): Runs {
  const counts = scripts
    .filter(({ url }) => url.includes('/src/'))
    .flatMap(({ functions }) => functions.flatMap(({ ranges }) => ranges.map(({ count }) => count)))
  return {
    all: counts.reduce((sum, count) => sum + count, 0),
    most: counts.reduce((most, count) => Math.max(most, count), 0),
  }
}

import * as v from 'valibot'

const OldFrame = v.looseObject({ aircraft: v.fallback(v.looseObject({}), {}) })

/** Version 5 to 6: pieces had places, but did not meet in joints. */
export function withJoints(old: unknown): unknown {
  const frame = v.parse(OldFrame, old)
  return { ...frame, version: 6, aircraft: { joints: [], ...frame.aircraft } }
}

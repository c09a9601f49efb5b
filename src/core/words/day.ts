/**
 * The day as ISO 8601 writes it, where the builder is: in UTC a reading of the evening would bear
 * tomorrow's date, or yesterday's.
 */
export function dayOf(now: Date): string {
  return new Date(now.getTime() - now.getTimezoneOffset() * 60_000).toISOString().slice(0, 10)
}

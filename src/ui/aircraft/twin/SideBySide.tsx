import type { ReactNode } from 'react'

/** A frame in one of the columns. */
export interface NamedSide<T> {
  readonly name: string
  readonly side: T
}

interface SideBySideProps<T> {
  /** For screen readers. */
  readonly caption: string
  readonly columns: readonly NamedSide<T>[]
  /** Words of a row, and its figure of each side. */
  readonly rows: readonly (readonly [string, (side: T) => ReactNode])[]
}

/** Frames beside one another, a figure a row. */
export function SideBySide<T>({ caption, columns, rows }: SideBySideProps<T>) {
  return (
    <table className="sides">
      <caption className="unseen">{caption}</caption>
      <thead>
        <tr>
          <td />
          {columns.map(({ name }) => (
            <th key={name} scope="col" className="figures">
              {name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map(([words, figure]) => (
          <tr key={words}>
            <th scope="row">{words}</th>
            {columns.map(({ name, side }) => (
              <td key={name} className="figures">
                {figure(side)}
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  )
}

/** A figure with its span below, where that says more. */
export function withSpan(figure: string, span: string | null): ReactNode {
  return (
    <>
      {figure}
      {span === null || span === figure ? null : <span className="range">{span}</span>}
    </>
  )
}

/** Words left, a figure right, a hairline below: what is known of a part. */
export function TermList({ of }: { readonly of: readonly (readonly [string, string])[] }) {
  return (
    <dl className="terms">
      {of.map(([words, figure]) => (
        <div key={words}>
          <dt>{words}</dt>
          <dd>{figure}</dd>
        </div>
      ))}
    </dl>
  )
}

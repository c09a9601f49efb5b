import { LICENCES } from 'virtual:licences'

/** The packages of others in this page, each with the licence it is given under. */
export default function LicenceList() {
  const { packages, texts } = LICENCES
  return (
    <>
      <p className="hint">
        This page is under the MIT licence. It holds the work of others, given under these licences:
      </p>
      <ul className="licences">
        {packages.map(({ name, version, licence, text }) => (
          <li key={`${name} ${version}`}>
            <details>
              <summary>
                {name} {version} <small>{licence}</small>
              </summary>
              <pre>{text === null ? 'It comes without a text of its own.' : texts[text]}</pre>
            </details>
          </li>
        ))}
      </ul>
    </>
  )
}

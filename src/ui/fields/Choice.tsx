import {
  Button,
  Label,
  ListBox,
  ListBoxItem,
  Popover,
  Select,
  SelectValue,
  Text,
} from 'react-aria-components'

export interface Option<K extends string> {
  readonly id: K
  readonly name: string
  /** Small print behind the name. */
  readonly detail?: string
}

interface ChoiceProps<K extends string> {
  readonly label: string
  readonly options: readonly Option<K>[]
  /** Null when nothing fits; `placeholder` is shown then. */
  readonly value: K | null
  readonly onChange: (id: K) => void
  readonly placeholder?: string
  readonly hint?: string
  readonly bare?: boolean
}

/** Picks one of a few; the chosen name stays on the page. */
export function Choice<K extends string>(props: ChoiceProps<K>) {
  const { label, options, value, onChange, placeholder, hint, bare = false } = props
  return (
    <Select
      className="field choice"
      value={value}
      onChange={(key) => {
        const found = options.find((option) => option.id === key)
        if (found !== undefined && found.id !== value) onChange(found.id)
      }}
      placeholder={placeholder ?? 'choose'}
      {...(bare ? { 'aria-label': label } : {})}
    >
      {bare ? null : <Label>{label}</Label>}
      <Button className="choice-button">
        <SelectValue>
          {({ isPlaceholder, defaultChildren }) =>
            isPlaceholder
              ? defaultChildren
              : (options.find((option) => option.id === value)?.name ?? '')
          }
        </SelectValue>
        <span aria-hidden="true" className="caret" />
      </Button>
      {hint === undefined ? null : (
        <Text slot="description" className="hint">
          {hint}
        </Text>
      )}
      <Popover className="pop">
        <ListBox className="pop-list" items={options}>
          {(option) => (
            <ListBoxItem id={option.id} textValue={option.name} className="pop-item">
              <span>{option.name}</span>
              {option.detail === undefined ? null : <small>{option.detail}</small>}
            </ListBoxItem>
          )}
        </ListBox>
      </Popover>
    </Select>
  )
}

import { useEffect, useId, useState } from 'react';

/** A field of one line or several that makes one edit when it is left or Enter is pressed; Escape takes back what was typed. */
export function Field({ label, value, lines = 1, onEdit, ...more }: Props) {
  const id = useId();
  const [typed, setTyped] = useState(value);
  useEffect(() => setTyped(value), [value]);
  const shared = {
    id,
    value: typed,
    ...more,
    onChange: (event: { target: { value: string } }) => setTyped(event.target.value),
    onBlur: () => typed !== value && onEdit(typed),
    onKeyDown: (event: React.KeyboardEvent) => {
      if (event.key === 'Escape') setTyped(value);
      if (event.key === 'Enter' && lines === 1 && typed !== value) onEdit(typed);
    },
  };
  return (
    <label className="field" htmlFor={id}>
      <span>{label}</span>
      {lines === 1 ? <input type="text" {...shared} /> : <textarea rows={lines} {...shared} />}
    </label>
  );
}

interface Props {
  readonly label: string;
  readonly value: string;
  readonly lines?: number;
  readonly inputMode?: 'decimal' | 'numeric';
  readonly placeholder?: string;
  readonly type?: 'date';
  onEdit(typed: string): void;
}

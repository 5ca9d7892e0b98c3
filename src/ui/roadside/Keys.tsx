import { createContext, type ReactNode, useContext } from 'react';
import { createPortal } from 'react-dom';

/** Where a step's keys stand: in the foot, above the caution, which grows with its words. Null before the foot is there. */
export const KeysPlace = createContext<HTMLElement | null>(null);

/** The two keys of a step: "cannot reach it" keeps what was computed, the other one keeps what was found. */
export function Keys({ main, small, disabled, onKeep, onCannot }: Props) {
  const place = useContext(KeysPlace);
  if (!place) return null;
  return createPortal(
    <div className="check-keys">
      <button type="button" className="cannot" onClick={onCannot}>
        cannot reach it
      </button>
      <button type="button" className="keep" disabled={disabled} onClick={onKeep}>
        {main}
        {small && <small>{small}</small>}
      </button>
    </div>,
    place,
  );
}

interface Props {
  readonly main: ReactNode;
  readonly small?: string | undefined;
  readonly disabled?: boolean;
  onKeep(): void;
  onCannot(): void;
}

/** A few words to choose one of, large enough for a thumb. */
export function Choices({ legend, choices, chosen, onChoose }: ChoicesProps) {
  return (
    <fieldset className="check-choices">
      <legend>{legend}</legend>
      {choices.map((words) => (
        <button key={words} type="button" aria-pressed={words === chosen} onClick={() => onChoose(words)}>
          {words}
        </button>
      ))}
    </fieldset>
  );
}

interface ChoicesProps {
  readonly legend: string;
  readonly choices: readonly string[];
  readonly chosen: string | null;
  onChoose(words: string): void;
}

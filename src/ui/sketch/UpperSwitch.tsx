import { useSketch } from '../state/index.ts';
import type { Upper } from './use-upper.ts';

/** Map or plan view: one tap away from one another. */
export const UpperSwitch = ({ upper }: { readonly upper: Upper }) => (
  <fieldset className="words-switch upper-switch">
    <legend className="unseen">Above the profile</legend>
    {(['map', 'plan'] as const).map((name) => (
      <button
        key={name}
        type="button"
        aria-pressed={(upper === 'map') === (name === 'map')}
        onClick={() => useSketch.setState({ upper: name })}
      >
        {name}
      </button>
    ))}
  </fieldset>
);

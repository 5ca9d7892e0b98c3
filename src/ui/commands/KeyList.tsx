import { type Command, keyWords } from './command.ts';

/** Every command with its key, closed until somebody asks. */
export const KeyList = ({ commands }: { readonly commands: readonly Command[] }) => (
  <details className="block key-list">
    <summary>Keys</summary>
    <dl>
      {commands
        .filter(({ key }) => key !== null)
        .map(({ id, key, label }) => (
          <div key={id}>
            <dt className="num">{keyWords(key!)}</dt>
            <dd>{label}</dd>
          </div>
        ))}
    </dl>
  </details>
);

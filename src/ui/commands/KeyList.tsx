import { type Command, keyWords } from './command.ts';

/** Keys that belong to what has the focus on the map, beside Tab that goes from one to the next. */
const onMap = [
  ['Tab', 'Map: to the point, the corners in hand, each apparatus and anchor'],
  ['Arrows', 'Map: move it; a point or corner 1 m, an apparatus 0.5 m'],
  ['Shift arrows', 'Map: a point or corner 10 m'],
  ['[ ]', 'Map: turn the apparatus 5°'],
  ['Enter', 'Map: tap at the cross; place a point or corner; pin or unpin an anchor'],
  ['Del', 'Map: take a corner away'],
] as const;

/** Every command with its key, closed until somebody asks. */
export const KeyList = ({ commands }: { readonly commands: readonly Command[] }) => (
  <details className="block key-list" id="keys">
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
      {onMap.map(([key, words]) => (
        <div key={key}>
          <dt className="num">{key}</dt>
          <dd>{words}</dd>
        </div>
      ))}
    </dl>
  </details>
);

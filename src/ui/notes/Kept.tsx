import { useActions } from '../desk-context.ts';
import { useBook } from '../state/index.ts';

/** Whether what was edited is kept, and what about its keeping a person should know, with the way to the book's leaf. */
export function Kept() {
  const { desk } = useActions();
  const { saving, problem, undo, fleeting, unsaved, remind, recovered, secondCopy } = useBook();
  const toLeaf = (words: string, mark = '') => (
    <p className={`kept ${mark}`}>
      <a href="#/book?keeping">{words}</a>
    </p>
  );
  return (
    <>
      {unsaved > 0 ? (
        <p className="kept accent" role="alert">
          {unsaved} not saved{problem ? `: ${problem} ` : '. '}
          <button type="button" onClick={() => void desk.saveAgain()}>
            try again
          </button>
        </p>
      ) : problem ? (
        <p className="kept accent" role="alert">
          {problem}
        </p>
      ) : saving > 0 ? (
        <p className="kept">saving</p>
      ) : fleeting ? (
        <p className="kept accent">this browser keeps nothing: edits last until the page is closed</p>
      ) : undo === null ? null : (
        <p className="kept">saved</p>
      )}
      {recovered > 0 && toLeaf(`${recovered} ${recovered === 1 ? 'edit' : 'edits'} came back from the second copy`)}
      {secondCopy === 'behind' && toLeaf('second copy behind', 'accent')}
      {remind && !fleeting && toLeaf('no copy elsewhere')}
    </>
  );
}

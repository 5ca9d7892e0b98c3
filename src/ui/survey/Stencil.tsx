import { useState } from 'react';
import { type Cut, cuts, siteCut } from '../commands/stencil-cuts.ts';
import { useActions } from '../desk-context.ts';
import { useBook, useTool } from '../state/index.ts';
import { MarkSymbol } from './MarkSymbol.tsx';

/** The stencil at the foot of the map: the site and eighteen marks, one key each; on a phone three large cuts at the thumb. */
export function Stencil() {
  const { desk } = useActions();
  const tool = useTool((state) => state.tool);
  const undo = useBook((state) => state.undo);
  const redo = useBook((state) => state.redo);
  const [open, setOpen] = useState(false);
  const cut = (one: Cut) => (
    <button
      key={one.tool}
      type="button"
      className={one === siteCut ? 'cut cut-site' : 'cut'}
      aria-pressed={tool === one.tool}
      aria-keyshortcuts={one.key}
      onClick={() => {
        desk.tap.take(one.tool);
        setOpen(false);
      }}
    >
      <span className="cut-key num" aria-hidden="true">
        {one.key}
      </span>
      <MarkSymbol tool={one.tool} />
      <span>{one.words}</span>
    </button>
  );
  return (
    <div className="stencil-box">
      <div
        className={`stencil${open ? ' is-open' : ''}`}
        role="toolbar"
        aria-label="Stencil: what a tap puts on the map"
      >
        {cut(siteCut)}
        <div className="cuts">{cuts.map(cut)}</div>
        <div className="stencil-words">
          <button
            type="button"
            aria-pressed={tool === 'measure'}
            aria-keyshortcuts="m"
            onClick={() => desk.tap.take('measure')}
          >
            measure
          </button>
          <button
            type="button"
            aria-keyshortcuts="Control+Z"
            disabled={undo === null}
            title={undo ?? undefined}
            onClick={() => void desk.undo()}
          >
            undo
          </button>
          <button
            type="button"
            aria-keyshortcuts="Control+Shift+Z"
            disabled={redo === null}
            title={redo ?? undefined}
            onClick={() => void desk.redo()}
          >
            redo
          </button>
          {open && (
            <button type="button" className="stencil-close" onClick={() => setOpen(false)}>
              close
            </button>
          )}
        </div>
      </div>
      <div className="thumb">
        <button type="button" className="thumb-place" onClick={() => desk.tap.atCross()}>
          <MarkSymbol tool={tool === 'look' || tool === 'measure' || tool === 'move' ? 'site' : tool} />
          {tool === 'measure' ? 'measure' : tool === 'move' ? 'put here' : 'place'}
        </button>
        <button type="button" aria-expanded={open} onClick={() => setOpen(!open)}>
          <MarkSymbol tool="tree" />
          mark
        </button>
        <button type="button" disabled={undo === null} onClick={() => void desk.undo()}>
          undo
        </button>
      </div>
    </div>
  );
}

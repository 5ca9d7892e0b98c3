import type { Study, StudyLayout } from '../../study/index.ts';
import type { PinRole } from '../actions/index.ts';
import { useActions } from '../desk-context.ts';
import { anchorName } from './layout-words.ts';

const names: Readonly<Record<PinRole, string>> = {
  anchor: 'Anchor',
  turn: 'Change of direction',
  belay: 'Belay anchor',
};

/** Who is anchor, turn and belay anchor; each can be pinned, and changed for another spot or mark: the rest follows. */
export function PinRows({ study, layout }: { readonly study: Study; readonly layout: StudyLayout }) {
  const { desk } = useActions();
  const used: Readonly<Record<PinRole, string | null>> = {
    anchor: layout.anchor,
    turn: layout.turn,
    belay: layout.lines.belay.anchor,
  };
  const trees = study.marks.filter(({ kind }) => kind === 'tree' || kind === 'rock');
  return (
    <div className="pins">
      {(Object.keys(names) as PinRole[]).map((role) => {
        const id = used[role];
        if (id === null) return null;
        const spot = study.spots.find((one) => one.id === id);
        const pinned = spot?.pinned ?? false;
        return (
          <div key={role} className="pin-row">
            <label>
              <span>{names[role]}</span>
              <select value={id} onChange={(event) => desk.spots.pin(role, event.target.value)}>
                <option value={id}>{anchorName(study, id)}</option>
                {study.spots
                  .filter((one) => one.id !== id && one.workable)
                  .slice(0, 24)
                  .map((one) => (
                    <option key={one.id} value={one.id}>
                      {`${one.apparatus}, ${Math.round(Math.abs(one.stationM - study.site.road.stationM))} m ${one.stationM < study.site.road.stationM ? 'back' : 'on'}`}
                    </option>
                  ))}
                {trees.map((mark) => (
                  <option key={mark.id} value={mark.id}>
                    {mark.name ?? mark.kind}, judge on site
                  </option>
                ))}
              </select>
            </label>
            <button type="button" aria-pressed={pinned} onClick={() => desk.spots.pin(role, pinned ? null : id)}>
              {pinned ? 'pinned' : 'pin'}
            </button>
            {spot?.problems.map(({ code, text }) => (
              <span key={code} className="note">
                {text}
              </span>
            ))}
          </div>
        );
      })}
    </div>
  );
}

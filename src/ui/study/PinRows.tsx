import type { Study, StudyLayout } from '../../study/index.ts';
import { formatLength, type UnitSystem } from '../../units/index.ts';
import type { PinRole } from '../actions/index.ts';
import { useActions } from '../desk-context.ts';
import { useStudy } from '../state/index.ts';
import { anchorName } from './layout-words.ts';
import { apparatusIn, apparatusOf, parkedBy } from './spot-id-at.ts';

const names: Readonly<Record<PinRole, string>> = {
  anchor: 'Anchor',
  turn: 'Change of direction',
  belay: 'Belay anchor',
};
/** Spots offered in the list, nearest along the road first. */
const OFFERED = 24;

/** Who is anchor, turn and belay anchor; each can be pinned, and changed for another spot or mark: the rest follows. */
export function PinRows({ study, layout, units }: Props) {
  const pins = useStudy((state) => state.pins);
  const used: Readonly<Record<PinRole, string | null>> = {
    anchor: pins.anchor ?? layout?.anchor ?? null,
    turn: pins.turn ?? layout?.turn ?? null,
    belay: pins.belay ?? layout?.lines.belay.anchor ?? null,
  };
  return (
    <div className="pins">
      {(Object.keys(names) as PinRole[]).map((role) => {
        const id = used[role];
        return id && <PinRow key={role} {...{ study, units, role, id }} pinned={pins[role] !== undefined} />;
      })}
    </div>
  );
}

interface Props {
  readonly study: Study;
  readonly layout: StudyLayout | null;
  readonly units: UnitSystem;
}

interface RowProps extends Omit<Props, 'layout'> {
  readonly role: PinRole;
  readonly id: string;
  readonly pinned: boolean;
}

function PinRow({ study, units, role, id, pinned }: RowProps) {
  const { desk } = useActions();
  const spot = study.spots.find((one) => one.id === id);
  const here = study.site.road.stationM;
  const away = ({ stationM }: { readonly stationM: number }): string =>
    `${formatLength(Math.abs(stationM - here), units)} ${stationM < here ? 'back' : 'on'}`;
  const others = study.spots
    .filter((one) => one.id !== id && one.workable)
    .sort((a, b) => Math.abs(a.stationM - here) - Math.abs(b.stationM - here))
    .slice(0, OFFERED);
  const trees = study.marks.filter((mark) => mark.id !== id && (mark.kind === 'tree' || mark.kind === 'rock'));
  return (
    <div className="pin-row">
      <label>
        <span>{names[role]}</span>
        <select value={id} onChange={(event) => desk.spots.pin(role, event.target.value)}>
          <option value={id}>{spot ? `${spot.apparatus}, ${away(spot)}` : anchorName(study, id)}</option>
          {others.map((one) => (
            <option key={one.id} value={one.id}>
              {`${one.apparatus}, ${away(one)}`}
            </option>
          ))}
          {trees.map((mark) => (
            <option key={mark.id} value={mark.id}>
              {mark.name ?? mark.kind}, judge on site
            </option>
          ))}
        </select>
      </label>
      {spot && (
        <label>
          <span>parked there</span>
          <select
            value={apparatusOf(id)}
            onChange={(event) => desk.spots.pin(role, parkedBy(event.target.value, id))}
            aria-label={`${names[role]}: apparatus parked there`}
          >
            {apparatusIn(study).map((one) => (
              <option key={one.id} value={one.id}>
                {one.name}
              </option>
            ))}
          </select>
        </label>
      )}
      <button
        type="button"
        aria-pressed={pinned}
        aria-label={`${names[role]} ${pinned ? 'pinned' : 'pin'}`}
        onClick={() => desk.spots.pin(role, pinned ? null : id)}
      >
        {pinned ? 'pinned' : 'pin'}
      </button>
      {spot?.problems.map(({ code, text }) => (
        <span key={code} className="note">
          {text}
        </span>
      ))}
    </div>
  );
}

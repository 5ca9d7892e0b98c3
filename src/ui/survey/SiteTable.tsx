import { useEffect, useMemo, useRef } from 'react';
import { formatAngleRange, formatDegrees, formatLength, type UnitSystem } from '../../units/index.ts';
import { useActions } from '../desk-context.ts';
import { ClassRing } from './ClassRing.tsx';
import { isLong, listLayout, thumbHeight, tightHeight } from './list-layout.ts';
import { RoadSpines } from './RoadSpines.tsx';
import type { SiteRow } from './site-rows.ts';
import { useTight } from './use-tight.ts';
import { useWindow } from './use-window.ts';

/** The list, as much of it as is in view, `byRoad` with each road as a line beside its sites; arrow keys go from site to site. */
export function SiteTable({ rows, selected, units, byRoad }: Props) {
  const { desk } = useActions();
  const box = useRef<HTMLDivElement>(null);
  const tight = useTight();
  const height = tight ? tightHeight : thumbHeight;
  const layout = useMemo(() => listLayout(rows, byRoad, height), [rows, byRoad, height]);
  const [first, last] = useWindow(box, layout.tops);
  const inView = rows.slice(first, last);
  useEffect(() => {
    desk.reads.want(inView.map(({ site }) => site.id));
  });
  return (
    <div
      ref={box}
      className={`site-table${byRoad ? ' by-road' : ''}${tight ? ' tight' : ''}`}
      role="toolbar"
      aria-orientation="vertical"
      aria-label="Sites, arrow keys go from one to the next"
      onKeyDown={(event) => {
        const by = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
        if (by === 0) return;
        event.preventDefault();
        const keys = [...event.currentTarget.querySelectorAll<HTMLElement>('button')];
        const next = keys[keys.indexOf(event.target as HTMLElement) + by];
        next?.focus();
        next?.scrollIntoView({ block: 'nearest' });
      }}
    >
      {byRoad && <RoadSpines {...{ rows, layout, first, last, selected }} />}
      <ul style={{ height: layout.tops.at(-1) }} aria-label={`${rows.length} sites`}>
        {inView.map((row, i) => (
          <li
            key={row.site.id}
            style={{ top: layout.tops[first + i] }}
            aria-setsize={rows.length}
            aria-posinset={first + i + 1}
          >
            <button
              type="button"
              className={tight && isLong(row) ? 'site-row long' : 'site-row'}
              aria-current={row.site.id === selected ? 'true' : undefined}
              onClick={() => desk.show({ kind: 'site', id: row.site.id })}
            >
              <ClassRing look={row.read && 'className' in row.read ? row.read.className : null} />
              <span className={isChecked(row) ? 'row-name' : 'row-name unchecked'} title={row.site.name}>
                {row.site.name}
              </span>
              <span className={isChecked(row) ? 'row-check' : 'row-check accent'}>{checkWords(row)}</span>
              {tight ? (
                <>
                  <Road row={row} byRoad={byRoad} />
                  <span className="row-figures num" title={angleWords(row)}>
                    {[angleWords(row), !isLong(row) && haulWords(row, units, '')].filter(Boolean).join(' · ')}
                  </span>
                  {isLong(row) && <span className="row-figures row-haul num">{haulWords(row, units, ' of rope')}</span>}
                </>
              ) : (
                <>
                  <span className="row-figures num">{angleWords(row)}</span>
                  <span className="row-last">
                    <span className="row-figures num">{haulWords(row, units, ' of rope')}</span>
                    <Road row={row} byRoad={byRoad} />
                  </span>
                </>
              )}
            </button>
          </li>
        ))}
      </ul>
    </div>
  );
}

interface Props {
  readonly rows: readonly SiteRow[];
  readonly selected: string | null;
  readonly units: UnitSystem;
  readonly byRoad: boolean;
}

/** Of which road, or where along it. */
const Road = ({ row, byRoad }: { readonly row: SiteRow; readonly byRoad: boolean }) => (
  <>
    <span className={byRoad ? 'unseen' : 'row-road'}>{row.site.roadName ?? 'no road name'}</span>
    {byRoad && <span className="row-mile num">{mileWords(row)}</span>}
  </>
);

const isChecked = ({ checkedOn, changedOn }: SiteRow): boolean => checkedOn !== null && changedOn === null;

/** The mile by the road's own markers, where it has them. */
const mileWords = ({ along }: SiteRow): string => (along && along.mile !== null ? `mi ${along.mile.toFixed(2)}` : '');

function checkWords({ checkedOn, changedOn }: SiteRow): string {
  if (changedOn) return `changed ${changedOn}`;
  return checkedOn ? `checked ${checkedOn.slice(0, 4)}` : 'not checked';
}

/** Class and angle; what stands there instead where nothing came of it. */
function angleWords({ read }: SiteRow): string {
  if (!read) return 'not read yet';
  if ('none' in read) return 'no drop edge';
  const word = read.className === 'undecided' ? `undecided, as ${read.planAs}` : read.className;
  return `${word} ${formatDegrees(read.governingDeg)}, ${formatAngleRange(...read.rangeDeg)}`;
}

/** Rope, the word `after` it, and resets. */
function haulWords({ read }: SiteRow, units: UnitSystem, after: string): string {
  if (!read || 'none' in read) return '';
  return [`${formatLength(read.ropeLineM, units, 'up')}${after}`, resets(read)].filter(Boolean).join(' · ');
}

function resets({
  planAs,
  screeningOnly,
  resets: { turned, straight },
}: Extract<SiteRow['read'], { planAs: unknown }>): string {
  if (screeningOnly) return 'screening only';
  if (planAs === 'high') return 'technical team';
  const both = [turned, straight].filter((n) => n !== null);
  return both.length === 0 ? '' : `${both.join(' or ')} ${both.length === 1 && both[0] === 1 ? 'reset' : 'resets'}`;
}

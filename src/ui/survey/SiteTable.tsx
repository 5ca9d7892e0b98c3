import { useEffect, useRef } from 'react';
import { formatAngleRange, formatDegrees, formatLength, type UnitSystem } from '../../units/index.ts';
import { useActions } from '../desk-context.ts';
import { ClassRing } from './ClassRing.tsx';
import type { SiteRow } from './site-rows.ts';
import { useWindow } from './use-window.ts';

const ROW_PX = 44;

/** The list, as much of it as is in view; arrow keys go from site to site. */
export function SiteTable({ rows, selected, units }: Props) {
  const { desk } = useActions();
  const box = useRef<HTMLDivElement>(null);
  const [first, last] = useWindow(box, rows.length, ROW_PX);
  const inView = rows.slice(first, last);
  useEffect(() => {
    desk.reads.want(inView.map(({ site }) => site.id));
  });
  return (
    <div
      ref={box}
      className="site-table"
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
      <ul style={{ height: rows.length * ROW_PX }} aria-label={`${rows.length} sites`}>
        {inView.map((row, i) => (
          <li
            key={row.site.id}
            style={{ top: (first + i) * ROW_PX }}
            aria-setsize={rows.length}
            aria-posinset={first + i + 1}
          >
            <button
              type="button"
              className="site-row"
              aria-current={row.site.id === selected ? 'true' : undefined}
              onClick={() => desk.show({ kind: 'site', id: row.site.id })}
            >
              <ClassRing look={row.read && 'className' in row.read ? row.read.className : null} />
              <span className={isChecked(row) ? 'row-name' : 'row-name unchecked'}>{row.site.name}</span>
              <span className="row-road">{row.site.roadName ?? 'no road name'}</span>
              <span className="row-figures num">{figures(row, units)}</span>
              <span className={isChecked(row) ? 'row-check' : 'row-check accent'}>{checkWords(row)}</span>
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
}

const isChecked = ({ checkedOn, changedOn }: SiteRow): boolean => checkedOn !== null && changedOn === null;

function checkWords({ checkedOn, changedOn }: SiteRow): string {
  if (changedOn) return `changed ${changedOn}`;
  return checkedOn ? `checked ${checkedOn.slice(0, 4)}` : 'not checked';
}

/** Class, angle, rope and resets in one short line. */
function figures({ read }: SiteRow, units: UnitSystem): string {
  if (!read) return 'not read yet';
  if ('none' in read) return 'no drop edge';
  const word = read.className === 'undecided' ? `undecided, as ${read.planAs}` : read.className;
  const angle = `${word} ${formatDegrees(read.governingDeg)}, ${formatAngleRange(...read.rangeDeg)}`;
  return [angle, formatLength(read.ropeLineM, units, 'up'), resets(read)].filter(Boolean).join(' · ');
}

function resets({
  planAs,
  screeningOnly,
  resets: { turned, straight },
}: Extract<SiteRow['read'], { planAs: unknown }>): string {
  if (screeningOnly) return 'screening only';
  if (planAs === 'high') return 'technical';
  const both = [turned, straight].filter((n) => n !== null);
  return both.length === 0 ? '' : `${both.join(' or ')} ${both.length === 1 && both[0] === 1 ? 'reset' : 'resets'}`;
}

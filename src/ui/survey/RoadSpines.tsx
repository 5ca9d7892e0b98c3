import { useMemo } from 'react';
import { HEAD_PX, type ListLayout, type RoadGroup } from './list-layout.ts';
import { roadSpine } from './road-spine.ts';
import type { SiteRow } from './site-rows.ts';

/** Pixels from the list's left side: the line, the bend of a leader, where its row begins. */
const LINE_X = 26;
const BEND_X = 34;
const KNEE_X = 44;
const SPINE_PX = 50;

/**
 * Beside the rows in view: each road's name, and its line with a dot for each site, a leader to its row. It is drawing: what it says
 * stands in each row's words too.
 */
export function RoadSpines({ rows, layout, first, last, selected }: Props) {
  const groups = layout.groups.filter((group) => group.end > first && group.first < last);
  return (
    <div className="road-spines" aria-hidden="true">
      {groups.map((group) => (
        <div key={group.first} className="road-spine" style={{ top: group.topPx }}>
          <p className="road-head">{group.road ?? 'no road name'}</p>
          <Line {...{ rows, layout, group, first, last, selected }} />
        </div>
      ))}
    </div>
  );
}

interface Props {
  readonly rows: readonly SiteRow[];
  readonly layout: ListLayout;
  /** Rows in view. */
  readonly first: number;
  readonly last: number;
  readonly selected: string | null;
}

function Line({ rows, layout, group, first, last, selected }: Props & { readonly group: RoadGroup }) {
  const own = useMemo(() => rows.slice(group.first, group.end), [rows, group.first, group.end]);
  const lineTop = group.topPx + HEAD_PX;
  const lengthPx = group.endPx - lineTop;
  const { dots, ticks } = useMemo(() => roadSpine(own, lengthPx), [own, lengthPx]);
  if (!dots.some((px) => px !== null)) return null;
  // Of a road with thousands of sites only the part beside the rows in view is drawn.
  const from = Math.max(0, first - group.first);
  const to = Math.min(own.length, last - group.first);
  const topOf = (i: number): number =>
    (group.first + i < group.end ? layout.tops[group.first + i]! : group.endPx) - lineTop;
  const topPx = topOf(from);
  const heightPx = topOf(to) - topPx;
  return (
    <svg
      aria-hidden="true"
      className="spine"
      style={{ top: HEAD_PX + topPx }}
      width={SPINE_PX}
      height={heightPx}
      viewBox={`0 ${topPx} ${SPINE_PX} ${heightPx}`}
    >
      <path className="spine-road" d={`M${LINE_X} 2V${lengthPx - 2}`} />
      {ticks.map(({ px, mile }) => (
        <g key={px}>
          <path className="spine-tick" d={`M${LINE_X - 5} ${px.toFixed(1)}h10`} />
          {mile !== null && (
            <text className="num" x={LINE_X - 9} y={px + 4} textAnchor="end">
              {mile}
            </text>
          )}
        </g>
      ))}
      {own.slice(from, to).map(({ site }, i) => {
        const px = dots[from + i] ?? null;
        if (px === null) return null;
        const row = (topOf(from + i) + topOf(from + i + 1)) / 2;
        const on = site.id === selected ? ' on' : '';
        return (
          <g key={site.id}>
            <path
              className={`spine-leader${on}`}
              d={`M${LINE_X} ${px.toFixed(1)}H${BEND_X}L${KNEE_X} ${row}H${SPINE_PX}`}
            />
            <circle className={`spine-dot${on}`} cx={LINE_X} cy={px} r={2.6} />
          </g>
        );
      })}
    </svg>
  );
}

/** @jsxImportSource preact */
import type { CallPlan, PlanRow } from '../plan/index.ts';

/** The plan's lines: a word, what it says, and what the eye must find at the right. */
export function PlanRows({ plan }: { plan: CallPlan }) {
  return (
    <dl class="rows">
      {plan.rows.map((row) => (
        <div class="r" key={row.label + row.text}>
          <dt>{row.label}</dt>
          <dd>
            <div class="line">
              <span>{row.text}</span>
              {row.strong && <b>{row.strong}</b>}
            </div>
            {row.pulls !== null && <Pulls row={row} />}
            {row.more && <small>{row.more}</small>}
          </dd>
        </div>
      ))}
    </dl>
  );
}

/** The raise cut into its pulls, a tick at each reset. */
function Pulls({ row }: { row: PlanRow }) {
  const pulls = row.pulls ?? 0;
  if (pulls < 1 || pulls > 30) return null;
  const step = 270 / pulls;
  const ticks = Array.from({ length: pulls - 1 }, (_, i) => (i + 1) * step);
  return (
    <svg class="pulls" viewBox="0 0 270 12" width="270" height="12" aria-hidden="true">
      <path class="rope" d="M0 6H270" />
      {ticks.map((x) => (
        <path key={x} class="gap" d={`M${x} 0V12`} />
      ))}
      {ticks.map((x) => (
        <path key={x} class="tick" d={`M${x} 0V12`} />
      ))}
    </svg>
  );
}

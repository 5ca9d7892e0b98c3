/** @jsxImportSource preact */
import type { StudyCall } from '../../../study/index.ts';

/** Whom to call, in order, with why; a number to tap. */
export function Calls({ calls }: { calls: readonly StudyCall[] }) {
  return (
    <ul class="calls">
      {calls.map(({ who, why, phone, radio }) => (
        <li key={who + why}>
          <span>
            {who}
            <small>{why}</small>
          </span>
          <span class="num">
            {radio && <span>{radio}</span>}
            {phone && <a href={`tel:${phone.replace(/[^\d+]/g, '')}`}>{phone}</a>}
          </span>
        </li>
      ))}
    </ul>
  );
}

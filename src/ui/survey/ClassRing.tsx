import type { AngleClass } from '../../book/index.ts';
import { ringPaths, ringRadius } from '../../plan/index.ts';

/** A site's ring, cut by the ground at its class's own slope; empty where nothing has been worked out. Its word stands beside it. */
export function ClassRing({ look }: { readonly look: AngleClass | 'undecided' | null }) {
  const { ground, fill, hatch } = ringPaths(look);
  return (
    <svg className={`class-ring ${look ?? 'unread'}`} viewBox="0 0 24 24" aria-hidden="true">
      <circle className="ring-ground" cx="12" cy="12" r={ringRadius} />
      {fill && <path className="ring-fill" d={fill} />}
      {hatch && <path className="ring-hatch" d={hatch} />}
      {ground && <path className="ring-line" d={ground} />}
      <circle className="ring" cx="12" cy="12" r={ringRadius} />
    </svg>
  );
}

import { formatLength, type UnitSystem } from '../../../units/index.ts';

const WIDTH = 600;
const ROW = 22;

/** Ropes drawn as lines, all to one scale; `mostM` is the longest of the book, metres. */
export function RopeDrawing({ ropes, mostM, units }: Props) {
  const each = ropes.flatMap(({ lengthM, count, ratedKn }) =>
    Array.from({ length: Math.min(count, 12) }, () => ({ lengthM, ratedKn })),
  );
  if (each.length === 0) return <p className="note">No rope.</p>;
  const scale = (WIDTH - 90) / Math.max(1, mostM);
  return (
    <svg className="rope-drawing" viewBox={`0 0 ${WIDTH} ${each.length * ROW + 6}`} aria-hidden="true">
      {each.map(({ lengthM, ratedKn }, i) => {
        const y = 14 + i * ROW;
        const end = 2 + lengthM * scale;
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: equal ropes have nothing else to tell them apart.
          <g key={i}>
            <path d={`M2 ${y}H${end}`} className={ratedKn === null ? 'rope unrated' : 'rope'} />
            <path d={`M2 ${y - 5}V${y + 5}M${end} ${y - 5}V${y + 5}`} className="tick" />
            <text x={end + 7} y={y + 4}>
              {formatLength(lengthM, units, 'down')}
            </text>
          </g>
        );
      })}
    </svg>
  );
}

interface Props {
  readonly ropes: readonly { readonly lengthM: number; readonly count: number; readonly ratedKn: number | null }[];
  readonly mostM: number;
  readonly units: UnitSystem;
}

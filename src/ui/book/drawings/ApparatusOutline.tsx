import type { ApparatusRecord } from '../../../book/index.ts';

/** Screen units in a metre, the same for every outline. */
const SCALE = 14;
const EDGE = 6;

/** An apparatus from above with its wheels and attachment points, its cab to the right; every one is drawn to one scale. */
export function ApparatusOutline({ apparatus }: { readonly apparatus: Outline }) {
  const { lengthM, widthM, wheelbaseM, attachments } = apparatus;
  const [long, wide] = [lengthM * SCALE, widthM * SCALE];
  const rear = EDGE + (long - wheelbaseM * SCALE) * 0.55;
  const wheels = [rear, rear + wheelbaseM * SCALE];
  const ends = (end: 'front' | 'rear') => attachments.filter((one) => one.end === end);
  return (
    <svg
      className="outline-drawing"
      width={long + 2 * EDGE}
      height={wide + 2 * EDGE}
      viewBox={`0 0 ${long + 2 * EDGE} ${wide + 2 * EDGE}`}
      aria-hidden="true"
    >
      <rect x={EDGE} y={EDGE} width={long} height={wide} className="outline" />
      <path d={`M${EDGE + long * 0.82} ${EDGE}V${EDGE + wide}`} className="outline-cab" />
      {wheels.map((x) => (
        <path key={x} d={`M${x - 5} ${EDGE + 2}h10M${x - 5} ${EDGE + wide - 2}h10`} className="wheel" />
      ))}
      {(['rear', 'front'] as const).flatMap((end) =>
        ends(end).map(({ ratedKn }, i, all) => (
          <circle
            // biome-ignore lint/suspicious/noArrayIndexKey: equal points have nothing else to tell them apart.
            key={`${end}${i}`}
            cx={end === 'rear' ? EDGE : EDGE + long}
            cy={EDGE + (wide * (i + 1)) / (all.length + 1)}
            r="3.4"
            className={ratedKn === null ? 'tie unrated' : 'tie'}
          />
        )),
      )}
    </svg>
  );
}

type Outline = Pick<ApparatusRecord, 'lengthM' | 'widthM' | 'wheelbaseM' | 'attachments'>;

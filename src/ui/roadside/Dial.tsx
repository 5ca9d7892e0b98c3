import { type PointerEvent, useId, useRef } from 'react';

const WIDTH = 390;
const HEIGHT = 74;

/** A scale that moves under a fixed hair: by thumb, by arrow keys, or typed. `pxPer`: screen units in one unit of the scale. */
export function Dial({ label, unit, value, least, most, step, pxPer, range, onTurn }: Props) {
  const id = useId();
  const from = useRef<{ readonly x: number; readonly value: number } | null>(null);
  const middle = WIDTH / 2;
  const clamp = (wanted: number): number =>
    Math.min(most, Math.max(least, Math.round(Math.round(wanted / step) * step * 1000) / 1000));
  const onPointerMove = (event: PointerEvent<HTMLDivElement>): void => {
    if (!from.current) return;
    const scale = WIDTH / event.currentTarget.getBoundingClientRect().width;
    onTurn(clamp(from.current.value - ((event.clientX - from.current.x) * scale) / pxPer));
  };
  const onKeyDown = (event: React.KeyboardEvent): void => {
    const by = { ArrowLeft: -1, ArrowDown: -1, ArrowRight: 1, ArrowUp: 1, PageDown: -10, PageUp: 10 }[event.key];
    if (by === undefined) return;
    event.preventDefault();
    onTurn(clamp(value + by * step));
  };
  const first = Math.max(least, Math.floor(value - middle / pxPer) - 1);
  const last = Math.min(most, Math.ceil(value + middle / pxPer) + 1);
  const ticks = Array.from(
    { length: Math.max(0, Math.floor(last) - Math.ceil(first) + 1) },
    (_, i) => Math.ceil(first) + i,
  );
  const at = (tick: number): number => middle + (tick - value) * pxPer;
  return (
    <div className="dial">
      <div
        className="dial-scale"
        role="slider"
        tabIndex={0}
        aria-label={label}
        aria-valuemin={least}
        aria-valuemax={most}
        aria-valuenow={value}
        aria-valuetext={`${value}${unit}`}
        onKeyDown={onKeyDown}
        onPointerDown={(event) => {
          from.current = { x: event.clientX, value };
          event.currentTarget.setPointerCapture(event.pointerId);
        }}
        onPointerMove={onPointerMove}
        onPointerUp={() => {
          from.current = null;
        }}
        onPointerCancel={() => {
          from.current = null;
        }}
      >
        <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true">
          {range && (
            <rect className="dial-range" x={at(range[0])} y="0" width={(range[1] - range[0]) * pxPer} height="8" />
          )}
          {ticks.map((tick) => (
            <path
              key={tick}
              d={`M${at(tick)} 0v${tick % 5 === 0 ? 26 : 15}`}
              className={tick % 5 === 0 ? 'tick-5' : 'tick-1'}
            />
          ))}
          {/* Under the figures: it must not strike through the one that is read. */}
          <path d={`M${middle} 0V${HEIGHT}`} className="dial-hair" />
          {ticks
            .filter((tick) => tick % 5 === 0)
            .map((tick) => (
              <text key={tick} x={at(tick)} y="46" textAnchor="middle">
                {tick}
                {unit === '°' ? '°' : ''}
              </text>
            ))}
        </svg>
      </div>
      <label htmlFor={id} className="dial-typed">
        <span>or typed{unit === '°' ? ', degrees' : `,${unit}`}</span>
        <input
          id={id}
          inputMode="decimal"
          value={String(value)}
          onChange={(event) => {
            const typed = Number(event.target.value.replace(',', '.'));
            if (Number.isFinite(typed)) onTurn(Math.min(most, Math.max(least, typed)));
          }}
        />
      </label>
    </div>
  );
}

interface Props {
  readonly label: string;
  /** As it stands behind a figure: "°" or " ft". */
  readonly unit: string;
  readonly value: number;
  readonly least: number;
  readonly most: number;
  readonly step: number;
  readonly pxPer: number;
  /** The computed range, shaded. */
  readonly range: readonly [number, number] | null;
  onTurn(value: number): void;
}

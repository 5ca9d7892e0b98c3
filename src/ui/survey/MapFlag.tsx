import { formatLength, type UnitSystem } from '../../units/index.ts';
import type { Measured } from '../../workers/index.ts';
import { useActions } from '../desk-context.ts';
import { useBook, usePlace, useReading, useStudy, useTool } from '../state/index.ts';
import { markShape } from './mark-shape.ts';
import { placeWords } from './place-words.ts';
import { SpotChoice } from './SpotChoice.tsx';

/** What the last tap did, what is being drawn or measured, and the one thing to do next. */
export function MapFlag() {
  const { desk } = useActions();
  const { tool, corners, measured, said } = useTool();
  const units = useReading((state) => state.units);
  const problem = useBook((state) => state.problem);
  const subject = usePlace((state) => state.subject);
  const answer = useStudy((state) => state.answer);
  const drawing = corners.length > 0 && tool !== 'measure';
  const loose = tool === 'look' && subject?.kind === 'point' && answer ? placeWords(answer.study, units) : null;
  const words = problem ?? (measured ? measuredWords(measured, units) : (said ?? armed(tool) ?? loose));
  if (!words) return null;
  return (
    <div className="map-flag" role="status">
      <p>{words}</p>
      {tool === 'spot' && <SpotChoice />}
      {drawing && (
        <div className="flag-keys">
          <button type="button" onClick={desk.marks.finish}>
            done
          </button>
          <button type="button" onClick={desk.marks.dropCorner}>
            last corner back
          </button>
        </div>
      )}
      {words === loose && subject?.kind === 'point' && (
        <div className="flag-keys">
          <button type="button" onClick={() => void desk.sites.place(subject.at)}>
            keep it as a site
          </button>
        </div>
      )}
    </div>
  );
}

/** What the next tap will do. */
function armed(tool: ReturnType<typeof useTool.getState>['tool']): string | null {
  if (tool === 'look') return null;
  if (tool === 'site') return 'Tap beside a road: the site goes to the nearest edge that the ground shows.';
  if (tool === 'measure') return 'Tap one end, then the other.';
  if (tool === 'move') return 'Tap the new place of the mark.';
  if (tool === 'spot' || tool === 'landing zone') return `Tap where the ${tool} is.`;
  const shape = markShape(tool);
  if (shape === 'point') return `Tap where the ${tool} is.`;
  return shape === 'line' ? `${tool}: tap along it, then done.` : `${tool}: tap round it, then done.`;
}

/** Distance, bearing, rise and grade between two taps. */
export function measuredWords({ distanceM, bearingDeg, riseM }: Measured, units: UnitSystem): string {
  const words = `${formatLength(distanceM, units)}, bearing ${Math.round(bearingDeg) % 360}°`;
  if (riseM === null) return `${words}; no ground known at one end`;
  if (distanceM < 0.5) return words;
  const grade = (100 * riseM) / distanceM;
  const angle = (Math.atan2(riseM, distanceM) * 180) / Math.PI;
  return `${words}, ${formatLength(Math.abs(riseM), units)} ${riseM < 0 ? 'down' : 'up'}, grade ${Math.abs(Math.round(grade))} %, ${Math.abs(Math.round(angle))}°`;
}

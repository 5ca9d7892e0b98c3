import type { Pins } from '../../study/index.ts';
import { useStudy, useTool } from '../state/index.ts';
import { roleWords } from '../study/pin-roles.ts';
import { apparatusIn } from '../study/spot-id-at.ts';

/** What the spot tool parks at the next tap, and what it is pinned as. */
export function SpotChoice() {
  const study = useStudy((state) => state.answer?.study);
  const parked = useTool((state) => state.parked);
  const list = study ? apparatusIn(study) : [];
  if (list.length === 0) return null;
  const set = (change: Partial<typeof parked>): void =>
    useTool.setState({ parked: { ...parked, ...change }, said: null });
  return (
    <div className="flag-fields">
      <label className="field">
        <span>Apparatus</span>
        <select value={parked.apparatus ?? list[0]!.id} onChange={(event) => set({ apparatus: event.target.value })}>
          {list.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <label className="field">
        <span>As</span>
        <select value={parked.role} onChange={(event) => set({ role: event.target.value as keyof Pins })}>
          {Object.entries(roleWords).map(([role, words]) => (
            <option key={role} value={role}>
              {words}
            </option>
          ))}
        </select>
      </label>
    </div>
  );
}

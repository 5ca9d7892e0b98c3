import { placeWords } from '../../plan/index.ts';
import type { Study } from '../../study/index.ts';
import type { UnitSystem } from '../../units/index.ts';
import { useActions } from '../desk-context.ts';
import { useBook } from '../state/index.ts';

/** Landing zones, staging and parking that somebody surveyed for the site, each a key that takes it in hand. */
export function PlacesRow({ study, siteId, units }: Props) {
  const { desk } = useActions();
  const all = useBook((state) => state.supportPlaces);
  const places = [...all.values()].filter((place) => place.siteId === siteId);
  if (places.length === 0) return null;
  return (
    <section className="block" aria-label="Places for those who come">
      {places.map((place) => (
        <p key={place.id} className="ways">
          {placeWords(study.site, place, units)}.{' '}
          <button type="button" className="key-quiet" onClick={() => desk.marks.take(place.id)}>
            edit
          </button>
        </p>
      ))}
    </section>
  );
}

interface Props {
  readonly study: Study;
  readonly siteId: string;
  readonly units: UnitSystem;
}

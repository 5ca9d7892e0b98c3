import { type SiteRecord, siteTypes } from '../../book/index.ts';
import { useActions } from '../desk-context.ts';
import { useBook, useTool } from '../state/index.ts';
import { Field } from './Field.tsx';

/** What a surveyor writes about a site: name, kind of place, people to bring up, radio, notes, and what is marked around it. */
export function SitePanel({ site }: { readonly site: SiteRecord }) {
  const { desk } = useActions();
  const edit = (set: Partial<Omit<SiteRecord, 'id'>>, what: string): void =>
    desk.sites.edit(site.id, set, `${what} of ${site.name}`);
  return (
    <section className="block panel" aria-label={`Site ${site.name}`}>
      <div className="site-fields">
        <Field label="Name" value={site.name} onEdit={(name) => name.trim() && edit({ name: name.trim() }, 'Name')} />
        <label className="field">
          <span>Kind of place</span>
          <select
            value={site.type}
            onChange={(event) => edit({ type: event.target.value as SiteRecord['type'] }, 'Kind of place')}
          >
            {siteTypes.map((type) => (
              <option key={type}>{type}</option>
            ))}
          </select>
        </label>
        <Field
          label="Patients"
          value={String(site.patients)}
          inputMode="numeric"
          onEdit={(typed) => {
            const patients = Number(typed);
            if (Number.isInteger(patients) && patients >= 1 && patients <= 60) edit({ patients }, 'Patients');
          }}
        />
        <Field
          label="Radio"
          value={site.radio ?? ''}
          onEdit={(radio) => edit({ radio: radio.trim() || null }, 'Radio')}
        />
        <Field label="Notes" value={site.notes} lines={2} onEdit={(notes) => edit({ notes }, 'Notes')} />
      </div>
      <MarksOf site={site} />
      <div className="form-keys site-endings">
        {site.patientPoint && (
          <button type="button" className="key-quiet" onClick={() => desk.tap.placePatient(null)}>
            no patient point
          </button>
        )}
        <button type="button" className="key-quiet accent" onClick={() => desk.sites.remove(site.id)}>
          delete
        </button>
      </div>
    </section>
  );
}

/** Marks that belong to the site, each a key that takes it in hand. */
function MarksOf({ site }: { readonly site: SiteRecord }) {
  const { desk } = useActions();
  const marks = useBook((state) => state.marks);
  const zones = useBook((state) => state.supportPlaces);
  const inHand = useTool((state) => state.markId);
  const own = [...marks.values()].filter(({ siteId }) => siteId === site.id);
  const places = [...zones.values()].filter(({ siteId }) => siteId === site.id);
  if (own.length + places.length === 0) return null;
  return (
    <p className="marks-of">
      <i>Marked here</i>{' '}
      {[...own, ...places].map((mark) => (
        <button
          key={mark.id}
          type="button"
          aria-pressed={mark.id === inHand}
          onClick={() => desk.marks.take(mark.id === inHand ? null : mark.id)}
        >
          {mark.name ?? mark.kind}
        </button>
      ))}
    </p>
  );
}

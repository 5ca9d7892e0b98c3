import type { ListedSite } from '../../io/index.ts';
import { useActions } from '../desk-context.ts';

/** The district's sites, road by road. */
export function SiteList({ sites }: { readonly sites: readonly ListedSite[] }) {
  const { desk } = useActions();
  const roads = [...new Set(sites.map(({ road }) => road))];
  return (
    <>
      {roads.map((road) => (
        <section className="block" key={road} aria-label={road}>
          <h2>{road}</h2>
          <ul className="site-list">
            {sites
              .filter((site) => site.road === road)
              .map((site) => (
                <li key={site.id}>
                  <button type="button" onClick={() => desk.goToSite(site.id)}>
                    {site.name}
                  </button>
                </li>
              ))}
          </ul>
        </section>
      ))}
    </>
  );
}

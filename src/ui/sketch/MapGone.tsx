/** In the map's place, where there is none: why, and what works all the same. */
export function MapGone({ why, again }: { readonly why: string; readonly again: () => void }) {
  return (
    <div className="map-gone" role="status">
      <p>{why}</p>
      <p>
        The list, every study with its plan view, the roadside check, the book and print work without it; a place is
        found by its coordinates in the list’s search.
      </p>
      <button type="button" className="key" onClick={again}>
        Try the map again
      </button>
    </div>
  );
}

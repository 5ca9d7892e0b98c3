/** The roadside check. */
export function CheckScreen(_: { readonly light: 'day' | 'night' }) {
  return <p>Being read.</p>;
}

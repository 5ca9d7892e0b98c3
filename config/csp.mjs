// The one content security policy. Everything comes from the own host; the decoding worker's own response alone may compile
// WebAssembly, which its codecs (zstd, LERC) carry as a data address.
const policy = (parts) =>
  Object.entries(parts)
    .map(([name, values]) => `${name} ${values}`)
    .join('; ');

/**
 * Origins beside the own that the page may ask, from a list with spaces or commas between: hosts of basemaps and of elevation
 * files. Anything but plain https origins (http on this machine) is an error: a policy that is not understood is none.
 */
export function hostsOf(text) {
  const names = (text ?? '').split(/[\s,]+/).filter((name) => name !== '');
  for (const name of names) {
    const url = URL.canParse(name) ? new URL(name) : null;
    const plain = /^[a-z0-9.-]+$/.test(url?.hostname ?? '');
    const local = url?.protocol === 'http:' && /^(localhost|127\.0\.0\.1)$/.test(url.hostname);
    if (plain && url?.origin === name && (url.protocol === 'https:' || local)) continue;
    throw new Error(`BRINKBOOK_HOSTS: "${name}" is no origin; write it as https://tiles.example.org, without a path.`);
  }
  return names;
}

const page = {
  'default-src': "'none'",
  'script-src': "'self'",
  'style-src': "'self'",
  'img-src': "'self' data: blob:",
  'font-src': "'self'",
  'connect-src': ["'self'", ...hostsOf(process.env.BRINKBOOK_HOSTS)].join(' '),
  'worker-src': "'self'",
  'manifest-src': "'self'",
  'base-uri': "'none'",
  'form-action': "'none'",
  'frame-ancestors': "'none'",
};

export const pagePolicy = policy(page);

/** The page's policy where no header can be sent, in its own text: a page cannot tell there who may frame it. */
export const publishedPolicy = policy(
  Object.fromEntries(
    Object.entries({ ...page, 'connect-src': "'self'" }).filter(([name]) => name !== 'frame-ancestors'),
  ),
);

export const decodePolicy = policy({
  ...page,
  'script-src': "'self' 'wasm-unsafe-eval'",
  'connect-src': "'self' data:",
});

/** The policy for the answer to a request path. */
export const policyFor = (path) => (/\/decode\.worker-[\w-]+\.js$/.test(path) ? decodePolicy : pagePolicy);

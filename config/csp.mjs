// The one content security policy. Everything comes from the own host; the decoding worker's own response alone may compile
// WebAssembly, which its codecs (zstd, LERC) carry as a data address.
const policy = (parts) =>
  Object.entries(parts)
    .map(([name, values]) => `${name} ${values}`)
    .join('; ');

const page = {
  'default-src': "'none'",
  'script-src': "'self'",
  'style-src': "'self'",
  'img-src': "'self' data: blob:",
  'font-src': "'self'",
  'connect-src': "'self'",
  'worker-src': "'self'",
  'manifest-src': "'self'",
  'base-uri': "'none'",
  'form-action': "'none'",
  'frame-ancestors': "'none'",
};

export const pagePolicy = policy(page);

export const decodePolicy = policy({
  ...page,
  'script-src': "'self' 'wasm-unsafe-eval'",
  'connect-src': "'self' data:",
});

/** The policy for the answer to a request path. */
export const policyFor = (path) => (/\/decode\.worker-[\w-]+\.js$/.test(path) ? decodePolicy : pagePolicy);

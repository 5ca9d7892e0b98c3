/**
 * Seeded chance: the 32-bit generator sfc32 (Chris Doty-Humphrey, PractRand, public domain), so that every draw repeats.
 * The caller owns the generator; no computing folder may use any other source of chance.
 */
export interface Random {
  /** Uniform in [0, 1), 32 bits. */
  next(): number;
  /** Standard normal (Box and Muller 1958, both values used). */
  normal(): number;
}

export function seededRandom(seed: number): Random {
  let a = 0x9e3779b9;
  let b = 0x243f6a88;
  let c = seed | 0;
  let counter = 1;
  const next = (): number => {
    const t = (((a + b) | 0) + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (c << 21) | (c >>> 11);
    c = (c + t) | 0;
    return (t >>> 0) / 4294967296;
  };
  for (let i = 0; i < 12; i++) next();
  let spare = Number.NaN;
  const normal = (): number => {
    if (!Number.isNaN(spare)) {
      const value = spare;
      spare = Number.NaN;
      return value;
    }
    const radius = Math.sqrt(-2 * Math.log(1 - next()));
    const angle = 2 * Math.PI * next();
    spare = radius * Math.sin(angle);
    return radius * Math.cos(angle);
  };
  return { next, normal };
}

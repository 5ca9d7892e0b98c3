/**
 * Blurs a row-major field in place by `passes` box means of half width `radius` cells in each direction; three passes are
 * close to a Gaussian of sigma √(passes · ((2 · radius + 1)² − 1) / 12). Beyond the border the border cell repeats.
 */
export function blur(data: Float32Array, width: number, height: number, radius: number, passes = 3): void {
  const line = new Float32Array(Math.max(width, height));
  const sums = new Float64Array(width);
  for (let pass = 0; pass < passes; pass++) {
    alongRows(data, width, height, radius, line);
    alongColumns(data, width, height, radius, sums);
  }
}

function alongRows(data: Float32Array, width: number, height: number, radius: number, line: Float32Array): void {
  const share = 1 / (2 * radius + 1);
  for (let r = 0; r < height; r++) {
    const at = r * width;
    for (let c = 0; c < width; c++) line[c] = data[at + c];
    let sum = line[0] * radius;
    for (let c = 0; c <= radius; c++) sum += line[Math.min(width - 1, c)];
    for (let c = 0; c < width; c++) {
      data[at + c] = sum * share;
      sum += line[Math.min(width - 1, c + radius + 1)] - line[Math.max(0, c - radius)];
    }
  }
}

function alongColumns(data: Float32Array, width: number, height: number, radius: number, sums: Float64Array): void {
  const share = 1 / (2 * radius + 1);
  const kept = new Float32Array(width * (radius + 1));
  sums.fill(0);
  for (let c = 0; c < width; c++) sums[c] = data[c] * radius;
  for (let r = 0; r <= radius; r++) {
    const at = Math.min(height - 1, r) * width;
    for (let c = 0; c < width; c++) sums[c] += data[at + c];
  }
  const first = data.slice(0, width);
  for (let r = 0; r < height; r++) {
    const at = r * width;
    const next = Math.min(height - 1, r + radius + 1) * width;
    const slot = (r % (radius + 1)) * width;
    for (let c = 0; c < width; c++) {
      const gone = r - radius < 0 ? first[c] : kept[((r - radius) % (radius + 1)) * width + c];
      const own = data[at + c];
      data[at + c] = sums[c] * share;
      const leaving = radius === 0 ? own : gone;
      sums[c] += (next === at ? own : data[next + c]) - leaving;
      kept[slot + c] = own;
    }
  }
}

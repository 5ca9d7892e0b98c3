import { cpus } from 'node:os';
import { benchSections } from './bench-sections.ts';
import { benchBook } from './book.ts';
import { benchDecode } from './decode.ts';
import { benchLzw } from './decode-lzw.ts';
import { benchFiles } from './files.ts';
import { benchLayouts } from './layouts.ts';
import { benchSampling } from './sampling.ts';
import { benchSlope } from './slope.ts';
import { benchStudy } from './study.ts';

/** Every benchmark, side by side in one run: npm run bench. */
const print = (line: string): void => console.log(line);
print(`${cpus()[0]?.model ?? 'unknown processor'}, ${cpus().length} threads, Node ${process.version}`);
for (const bench of [
  benchSampling,
  benchSlope,
  benchSections,
  benchStudy,
  benchLayouts,
  benchDecode,
  benchLzw,
  benchBook,
  benchFiles,
]) {
  print('');
  await bench(print);
}

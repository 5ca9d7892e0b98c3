import swc from '@swc/core';
import { layers, libraries, nodeBuiltins } from './layers.mjs';

// The cruiser parses every file as plain TypeScript; markup in a .tsx file has to be asked for.
const parseFile = swc.parseFileSync.bind(swc);
swc.parseFileSync = (path, options) => parseFile(path, { ...options, tsx: path.endsWith('.tsx') });

const any = (names) => names.join('|');

export default {
  forbidden: [
    ...layers.map(({ dir, may }) => ({
      name: `layer-${dir}`,
      severity: 'error',
      from: { path: `^src/${dir}/` },
      to: { path: '^src/', pathNot: `^src/(${any([dir, ...may])})/` },
    })),
    {
      name: 'only-through-index',
      severity: 'error',
      from: { path: '^src/([^/]+)/' },
      to: { path: '^src/[^/]+/.+', pathNot: ['^src/$1/', '^src/.+/index\\.ts$', '\\.css$'] },
    },
    { name: 'no-cycle', severity: 'error', from: {}, to: { circular: true } },
    {
      name: 'node-builtins',
      severity: 'error',
      from: { path: '^src/', pathNot: `^src/(${any(nodeBuiltins)})/` },
      to: { dependencyTypes: ['core'] },
    },
    ...Object.entries(libraries).map(([library, places]) => ({
      name: `library-${library}`,
      severity: 'error',
      from: { path: '^src/', pathNot: `^src/(${any(places)})/` },
      to: { path: library.replace('^', '(^|node_modules/)').replace(/\$$/, '(/|$)') },
    })),
    { name: 'unresolved', severity: 'error', from: {}, to: { couldNotResolve: true, pathNot: '\\?' } },
  ],
  options: {
    tsPreCompilationDeps: true,
    parser: 'swc',
    // Libraries that offer modules alone are found only under these conditions.
    enhancedResolveOptions: { exportsFields: ['exports'], conditionNames: ['import', 'require', 'node', 'default'] },
    doNotFollow: { path: 'node_modules' },
    tsConfig: { fileName: 'tsconfig.json' },
  },
};

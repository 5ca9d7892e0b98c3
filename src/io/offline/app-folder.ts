/**
 * The folder in which the app is served, ending in a slash: its built modules lie in `assets/` beneath it. In a page and in a worker
 * alike; any path of a host will do.
 */
export const appFolder = (module: string = import.meta.url): URL => new URL(module.replace(/[^/]*\/[^/]*$/, ''));

/**
 * A name for what a browser keeps for all of a host (caches, locks, notes), so that two folders of one host never share it. At the
 * root of a host it is the name itself.
 */
export const ownName = (name: string, folder: URL = appFolder()): string =>
  folder.pathname === '/' ? name : `${name} ${folder.pathname}`;

import { followShell, type ShellState } from '../io/offline/index.ts';

/** The page's own work goes first: its files are kept when it has come to rest, milliseconds after its start. */
const AFTER_MS = 8000;

/** Keeps the app on this device, and says at the foot of the page when a newer version waits; nothing reloads by itself. */
export function followAppShell(): void {
  const notice = document.createElement('aside');
  notice.className = 'shell-notice';
  notice.hidden = true;
  notice.setAttribute('aria-live', 'polite');
  document.body.append(notice);
  setTimeout(() => void followShell((state) => show(notice, state)), AFTER_MS);
}

function show(notice: HTMLElement, state: ShellState): void {
  notice.replaceChildren();
  notice.hidden = state.kind !== 'waiting' && state.kind !== 'overtaken';
  if (state.kind === 'waiting') {
    const others =
      state.others > 0 ? ` ${state.others} other window${state.others === 1 ? '' : 's'} will go on with this one.` : '';
    add(notice, `A newer version is ready.${others}`, 'Take it now', state.take);
  } else if (state.kind === 'overtaken') {
    const words = 'Another window runs a newer version. This one goes on with its own; reload when it suits.';
    add(notice, words, 'Reload', () => location.reload());
  }
}

function add(notice: HTMLElement, words: string, label: string, act: () => void): void {
  const button = document.createElement('button');
  button.type = 'button';
  button.textContent = label;
  button.addEventListener('click', act);
  const later = document.createElement('button');
  later.type = 'button';
  later.textContent = 'Later';
  later.addEventListener('click', () => {
    notice.hidden = true;
  });
  notice.append(words, button, later);
}

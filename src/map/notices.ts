import type { RoadsideProgress } from './roadside.ts';

/** Lines at the foot of the map: what it cannot do, and how far it has read the roadsides. */
export interface Notices {
  /** A problem that the map goes on with; null takes the line away. */
  setProblem(sentence: string | null): void;
  setProgress(progress: RoadsideProgress): void;
}

export interface NoticeEvents {
  onStop(): void;
  onGoOn(): void;
}

/** Adds the lines to a map's element; they take no room while there is nothing to say. */
export function addNotices(element: HTMLElement, events: NoticeEvents): Notices {
  const box = document.createElement('div');
  box.className = 'map-notices';
  const problem = document.createElement('p');
  problem.setAttribute('role', 'status');
  problem.hidden = true;
  const words = document.createElement('span');
  const close = key('close', () => setProblem(null));
  problem.append(words, ' ', close);
  const reading = document.createElement('p');
  reading.className = 'map-reading';
  reading.hidden = true;
  const said = document.createElement('span');
  const stop = key('stop', events.onStop);
  const goOn = key('read on', events.onGoOn);
  reading.append(said, ' ', stop, goOn);
  box.append(problem, reading);
  element.append(box);

  function setProblem(sentence: string | null): void {
    problem.hidden = sentence === null;
    words.textContent = sentence ?? '';
  }
  return {
    setProblem,
    setProgress({ done, of, stopped }) {
      reading.hidden = !stopped && done >= of;
      said.textContent = stopped
        ? 'Roadsides are not read further.'
        : `Reading the roadside: ${done} of ${of} stretches.`;
      stop.hidden = stopped;
      goOn.hidden = !stopped;
      element.setAttribute('data-roadside', reading.hidden ? 'read' : stopped ? 'stopped' : 'reading');
    },
  };
}

function key(words: string, onClick: () => void): HTMLButtonElement {
  const button = document.createElement('button');
  button.type = 'button';
  button.textContent = words;
  button.addEventListener('click', onClick);
  return button;
}

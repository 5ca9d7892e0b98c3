import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { startStudyWorker } from '../workers/web/index.ts';
import { App } from './App.tsx';
import { createDesk } from './actions/index.ts';
import { DeskContext } from './desk-context.ts';
import { followAppShell } from './shell-notice.ts';
import './styles/tokens.css';
import './styles/page.css';
import './styles/notes.css';
import './styles/rules.css';
import './styles/forms.css';
import './styles/survey.css';
import './styles/panels.css';
import './styles/stencil.css';
import './styles/stencil-phone.css';
import './styles/study.css';
import './styles/readings.css';
import './styles/sketch.css';
import './styles/profile.css';
import './styles/own.css';
import './styles/book.css';
import './styles/book-leaves.css';
import './styles/roadside.css';
import './styles/narrow.css';
import './styles/shell.css';

const workers = { study: startStudyWorker('study'), map: startStudyWorker('map') };
const desk = createDesk(workers);
window.addEventListener('hashchange', desk.followAddress);
window.addEventListener('popstate', desk.followAddress);
desk.navigate.follow();
void desk.openLast();

createRoot(document.getElementById('desk')!).render(
  <StrictMode>
    <DeskContext value={{ desk, workers }}>
      <App />
    </DeskContext>
  </StrictMode>,
);

followAppShell();
// It waits for idle hands anyway; where it cannot be loaded, the call view keeps the district when it is opened.
import('./call/keep-in-background.ts').then(
  ({ keepInBackground }) => keepInBackground(),
  () => {},
);

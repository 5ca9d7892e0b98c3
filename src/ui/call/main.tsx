/** @jsxImportSource preact */
import { render } from 'preact';
import { createCall } from './call.ts';
import { App } from './parts/App.tsx';
import { CallContext } from './parts/use-call.ts';
import './call.css';
import './search.css';
import './plan.css';

/** A screen that stays open looks for a newer publication this often, milliseconds. */
const LOOK_EVERY_MS = 10 * 60_000;

const call = createCall();
addEventListener('hashchange', call.followAddress);
addEventListener('online', () => {
  call.setOnline(true);
  void call.look();
});
addEventListener('offline', () => call.setOnline(false));
document.addEventListener('visibilitychange', () => void call.look());
setInterval(() => void call.look(), LOOK_EVERY_MS);
void call.start();

render(
  <CallContext.Provider value={call}>
    <App />
  </CallContext.Provider>,
  document.getElementById('call')!,
);

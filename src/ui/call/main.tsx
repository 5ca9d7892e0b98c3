/** @jsxImportSource preact */
import { render } from 'preact';
import { createCall } from './call.ts';
import { App } from './parts/App.tsx';
import { CallContext } from './parts/use-call.ts';
import './call.css';
import './search.css';
import './plan.css';

const call = createCall();
addEventListener('hashchange', call.followAddress);
addEventListener('online', () => call.setOnline(true));
addEventListener('offline', () => call.setOnline(false));
void call.start();

render(
  <CallContext.Provider value={call}>
    <App />
  </CallContext.Provider>,
  document.getElementById('call')!,
);

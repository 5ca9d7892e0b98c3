import type { TabChannel, TabNews } from '../../store/index.ts';

/** News between the tabs of one origin that hold the book of a name. */
export function tabChannel(name: string): TabChannel {
  const channel = new BroadcastChannel(`${name}/news`);
  return {
    tell: (news) => channel.postMessage(news),
    hear: (listener) => {
      const heard = (event: MessageEvent<TabNews>): void => listener(event.data);
      channel.addEventListener('message', heard);
      return () => channel.removeEventListener('message', heard);
    },
    close: () => channel.close(),
  };
}

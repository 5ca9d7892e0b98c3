import type { Desk } from '../actions/index.ts';
import { useBook, usePlace, useReading, useReads, useTool } from '../state/index.ts';
import { markShape } from '../survey/mark-shape.ts';
import { neighboursOf } from '../survey/neighbours.ts';
import type { Command } from './command.ts';
import { cuts, siteCut } from './stencil-cuts.ts';

const always = (): null => null;

/** Every command of the survey and the study. */
export function deskCommands(desk: Desk): readonly Command[] {
  const site = (): string | null => {
    const { subject } = usePlace.getState();
    return subject?.kind === 'site' ? subject.id : null;
  };
  const beside = (which: 'before' | 'after') =>
    neighboursOf(site() ?? '', useBook.getState().sites, useReads.getState().along)[which];
  const going = (which: 'before' | 'after', label: string, key: string): Command => ({
    ...{ id: `site ${which}`, label, key },
    whyNot() {
      const { screen } = usePlace.getState();
      if (site() === null || (screen !== 'survey' && screen !== 'study')) return 'No site is picked.';
      return beside(which) ? null : `No site ${which} this one along its road.`;
    },
    run() {
      const next = beside(which);
      if (next) desk.show({ kind: 'site', id: next.id });
    },
  });
  const needsDrawing = (): string | null => (useTool.getState().corners.length > 0 ? null : 'Nothing is being drawn.');
  const stencil = [siteCut, ...cuts].map(
    ({ tool, key, words }): Command => ({
      id: `take ${tool}`,
      label: `Put a ${words} on the map`,
      key,
      whyNot: () =>
        (tool === 'patient point' || tool === 'spot') && !usePlace.getState().subject
          ? `A ${words} belongs to a site: pick or place one first.`
          : null,
      run: () => desk.tap.take(tool),
    }),
  );
  return [
    {
      id: 'undo',
      label: 'Undo',
      key: 'mod+z',
      whyNot: () => (useBook.getState().undo === null ? 'There is nothing to undo.' : null),
      run: () => void desk.undo(),
    },
    {
      id: 'redo',
      label: 'Redo',
      key: 'mod+shift+z',
      whyNot: () => (useBook.getState().redo === null ? 'There is nothing to redo.' : null),
      run: () => void desk.redo(),
    },
    { id: 'measure', label: 'Measure between two taps', key: 'm', whyNot: always, run: () => desk.tap.take('measure') },
    {
      id: 'put down',
      label: 'Put the tool down',
      key: 'Escape',
      whyNot: () => (useTool.getState().tool === 'look' ? 'No tool is in hand.' : null),
      run: () => desk.tap.take('look'),
    },
    {
      id: 'finish',
      label: 'End the line or area',
      key: 'shift+Enter',
      whyNot: needsDrawing,
      run: () => {
        const { tool } = useTool.getState();
        if (tool !== 'measure' && markShape(tool as Parameters<typeof markShape>[0]) !== 'point') desk.marks.finish();
      },
    },
    {
      id: 'drop corner',
      label: 'Take back the last corner',
      key: 'Backspace',
      whyNot: needsDrawing,
      run: desk.marks.dropCorner,
    },
    {
      id: 'delete mark',
      label: 'Delete the mark in hand',
      key: 'Delete',
      whyNot: () => (useTool.getState().markId === null ? 'No mark is in hand.' : null),
      run: () => {
        const { markId } = useTool.getState();
        if (markId !== null) desk.marks.remove(markId);
      },
    },
    { id: 'survey', label: 'Survey', key: '1', whyNot: always, run: () => desk.goTo('survey') },
    {
      id: 'study',
      label: 'Study',
      key: '2',
      whyNot: () => (usePlace.getState().subject ? null : 'Pick a site first.'),
      run: () => desk.goTo('study'),
    },
    going('before', 'The site before this one along the road', ','),
    going('after', 'The next site along the road', '.'),
    {
      id: 'upper',
      label: 'Map or plan view',
      key: 'j',
      whyNot: () => (usePlace.getState().screen === 'study' ? null : 'The plan view is on the study screen.'),
      run: () => document.querySelector<HTMLElement>('.upper-switch button[aria-pressed="false"]')?.click(),
    },
    {
      id: 'search',
      label: 'Find a site',
      key: '/',
      whyNot: () => (usePlace.getState().screen === 'survey' ? null : 'The list is on the survey screen.'),
      run: () => document.getElementById('site-search')?.focus(),
    },
    {
      id: 'delete site',
      label: 'Delete the site',
      key: 'shift+Delete',
      whyNot: () => (site() === null ? 'No site is picked.' : null),
      run: () => {
        const id = site();
        if (id !== null) desk.sites.remove(id);
      },
    },
    {
      id: 'units',
      label: 'Feet or metres',
      key: 'u',
      whyNot: always,
      run: () => desk.setUnits(useReading.getState().units === 'us' ? 'metric' : 'us'),
    },
    {
      id: 'share',
      label: 'Share the site',
      key: 'h',
      whyNot: () => {
        if (site() === null) return 'Pick a site first: one site is shared at a time.';
        return document.getElementById('share') ? null : 'Sharing is on the study screen.';
      },
      run: () => unfold('share'),
    },
    { id: 'keys', label: 'Show these keys', key: '?', whyNot: always, run: () => unfold('keys') },
    ...stencil,
  ];
}

/** Opens what is closed on the left page and goes there. */
function unfold(id: string): void {
  const block = document.querySelector<HTMLDetailsElement>(`#${id}`);
  if (!block) return;
  block.open = true;
  block.querySelector('summary')?.focus();
  block.scrollIntoView({ block: 'nearest' });
}

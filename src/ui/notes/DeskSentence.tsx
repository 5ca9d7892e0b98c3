import { thousands } from '../../units/index.ts';
import { shownStudy, useBook, useDistrict, useMapGone, usePlace, useReads, useStudy } from '../state/index.ts';
import { inFormWords } from './in-form-words.ts';
import { Sentence } from './Sentence.tsx';

/** The sentence for whatever state the desk is in: loading, failed, empty, working, done. */
export function DeskSentence() {
  const { screen, subject } = usePlace();
  const { district, opening, turning, problem: openProblem } = useDistrict();
  const problem = useStudy((state) => state.problem);
  const working = useStudy((state) => state.working);
  const sentence = useStudy((state) => shownStudy(state)?.sentence);
  if (screen === 'open') {
    return (
      <Sentence words={opening ?? (openProblem && inFormWords(openProblem)) ?? 'Open your own elevation and roads.'} />
    );
  }
  if (turning && opening) return <Sentence words={opening} />;
  if (!district) return <Sentence words={openProblem ?? opening ?? 'Starting.'} />;
  if (problem) return <Sentence words={problem} />;
  if (sentence) return <Sentence words={sentence} />;
  if (working || subject) return <Sentence words="Reading the ground at the point." />;
  return <ListSentence />;
}

/** How the district stands: sites, roads, what was never checked, what is undecided. */
function ListSentence() {
  const sites = useBook((state) => state.sites);
  const signOffs = useBook((state) => state.signOffs);
  const reads = useReads((state) => state.bySite);
  const noMap = useMapGone((state) => state.gone !== null);
  if (sites.size === 0) {
    if (noMap) return <Sentence words="No sites yet. Look a place up by its coordinates, then keep it as a site." />;
    return (
      <Sentence words="No sites yet. Tap the map beside a road: the slope below its edge is worked out there. To keep one, take the site from the stencil and tap." />
    );
  }
  const roads = new Set([...sites.values()].map(({ roadName }) => roadName)).size;
  const checked = new Set([...signOffs.values()].filter(({ method }) => method !== 'desk').map(({ siteId }) => siteId));
  const never = [...sites.keys()].filter((id) => !checked.has(id)).length;
  const undecided = [...reads.values()].filter((read) => 'className' in read && read.className === 'undecided').length;
  return (
    <>
      <h1 className="sentence" data-testid="sentence">
        {count(sites.size, 'site')} on {count(roads, 'road')}.{' '}
        {never > 0 && <em>{never === sites.size ? 'None' : `${never} never`} checked on the ground. </em>}
        {undecided > 0 && `${undecided} undecided.`}
      </h1>
      <p className="what-next">
        {noMap ? 'Pick one, or look a place up by its coordinates.' : 'Pick one, or tap the map beside a road.'}
      </p>
    </>
  );
}

const count = (n: number, what: string): string => `${thousands(n)} ${what}${n === 1 ? '' : 's'}`;

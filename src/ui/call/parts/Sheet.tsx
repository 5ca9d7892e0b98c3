/** @jsxImportSource preact */
import { useEffect, useState } from 'preact/hooks';
import { bookOfSite } from '../../../book/index.ts';
import { appFolder, type CallSite } from '../../../io/offline/index.ts';
import type { Study } from '../../../study/index.ts';
import type { SheetInputs, SheetSide } from '../../../workers/sheet/index.ts';
import { handOver } from '../../give-file.ts';
import { sentenceOf } from '../../sentence-of.ts';
import type { Call } from '../call.ts';
import type { CallState } from '../state.ts';
import { useCall, useCallState } from './use-call.ts';

/** The sides that no screen shows yet are drawn once what is seen has been there for this long, milliseconds. */
const REST_MS = 400;
const allSides: readonly SheetSide[] = ['phone', 'front', 'back', 'html'];

type Sides = Partial<Record<SheetSide, string>>;

interface Place {
  readonly study: Study;
  readonly name: string;
  readonly site: CallSite | null;
}

/** The plan sheet as on paper, front and back; made out of the study while the plan is read, so that it needs no network and no wait. */
export function Sheet({ study, name, site }: Place) {
  const call = useCall();
  const { pack } = useCallState();
  const [open, setOpen] = useState(false);
  const [last, setDrawn] = useState<(Sides & { readonly of: SheetInputs }) | null>(null);
  // A sheet of other conditions than the plan's is not shown.
  const drawn = last?.of.study === study ? last : null;
  const [problem, setProblem] = useState<string | null>(null);
  const [attempt, setAttempt] = useState(0);
  const failed = (error: unknown): void =>
    setProblem(sentenceOf(error, 'The plan above stands. Open the sheet again.'));
  // biome-ignore lint/correctness/useExhaustiveDependencies: another attempt is asked for by hand; `failed` uses what stays.
  useEffect(() => {
    if (!pack) return;
    let current = true;
    setProblem(null);
    const draw = async (): Promise<void> => {
      const of = await inputsOf(call, { study, name, site }, pack);
      const seen = await call.sheets.draw(of, narrow() ? ['phone'] : ['front', 'back']);
      if (current) setDrawn({ ...seen, of });
    };
    draw().catch((error: unknown) => {
      if (current) failed(error);
    });
    return () => {
      current = false;
    };
  }, [study, name, site, pack, call, attempt]);
  // What the screen shows when it is turned or printed, and what is handed on.
  useEffect(() => {
    if (!open || !drawn || drawn.html !== undefined) return;
    const { of } = drawn;
    let current = true;
    const later = setTimeout(async () => {
      const missing = allSides.filter((side) => drawn[side] === undefined);
      const rest = await call.sheets.draw(of, missing).catch(() => null);
      if (current && rest) setDrawn({ ...drawn, ...rest });
    }, REST_MS);
    return () => {
      current = false;
      clearTimeout(later);
    };
  }, [open, drawn, call]);
  const share = async ({ of, html }: NonNullable<typeof drawn>): Promise<void> => {
    const whole = html ?? (await call.sheets.draw(of, ['html'])).html;
    await handOver(`${site?.id ?? 'place'}-plan.html`, whole, 'text/html');
  };
  const press = (): void => {
    if (!open && problem) setAttempt(attempt + 1);
    setOpen(!open);
  };
  return (
    <>
      <button type="button" class="plain" aria-expanded={open} onClick={press}>
        {open ? 'Close the plan sheet' : 'Plan sheet'}
      </button>
      {open && problem && (
        <p class="alarm" role="alert">
          {problem}
        </p>
      )}
      {open && drawn && (
        <>
          <button type="button" class="plain" onClick={() => void share(drawn).catch(failed)}>
            Share or save it as one file
          </button>
          <div class="sheet" data-testid="sheet">
            {/* biome-ignore lint/security/noDangerouslySetInnerHtml: the sheet makes every text of study and book inert. */}
            <div class="narrow" dangerouslySetInnerHTML={{ __html: drawn.phone ?? '' }} />
            {/* biome-ignore lint/security/noDangerouslySetInnerHtml: as above. */}
            <div class="paper" dangerouslySetInnerHTML={{ __html: drawn.front ?? '' }} />
            {/* biome-ignore lint/security/noDangerouslySetInnerHtml: as above. */}
            <div class="paper" dangerouslySetInnerHTML={{ __html: drawn.back ?? '' }} />
          </div>
        </>
      )}
    </>
  );
}

const narrow = (): boolean => matchMedia('(max-width: 640px)').matches;

/** What the sheet is drawn from: of the book only what concerns the site, for all of it is copied to where the sheet is drawn. */
async function inputsOf(
  call: Call,
  { study, name, site }: Place,
  { district, roads, units }: NonNullable<CallState['pack']>,
): Promise<SheetInputs> {
  const book = await call.book();
  const own = book && site ? bookOfSite(book, site.id) : book;
  const beside = book && site ? await import('../plan/from-book.ts') : null;
  const photos = beside && book && site ? (await beside.besideStudy(book, site.id, study, units)).photos : [];
  const today = new Date().toISOString().slice(0, 10);
  return { study, name, site, pack: { district, roads, units }, book: own, photos, today, address: appFolder().href };
}

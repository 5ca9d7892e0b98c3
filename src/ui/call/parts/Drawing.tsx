/** @jsxImportSource preact */
import { useEffect, useState } from 'preact/hooks';
import type { Study } from '../../../study/index.ts';
import { useCallState } from './use-call.ts';

/** The whole study drawn to scale, as on paper; loaded when somebody asks for it. */
export function Drawing({ study }: { study: Study }) {
  const { light, pack } = useCallState();
  const [open, setOpen] = useState(false);
  const [svg, setSvg] = useState('');
  const units = pack?.units ?? 'us';
  useEffect(() => {
    if (!open) return;
    let current = true;
    void import('../plan/study-drawing.ts').then(({ drawStudy }) => {
      if (current) setSvg(drawStudy(study, units, light));
    });
    return () => {
      current = false;
    };
  }, [open, study, units, light]);
  return (
    <>
      <button type="button" class="plain" aria-expanded={open} onClick={() => setOpen(!open)}>
        {open ? 'Close the drawing' : 'The drawing, to scale'}
      </button>
      {/* biome-ignore lint/security/noDangerouslySetInnerHtml: the drawing makes every text of the study inert. */}
      {open && svg !== '' && <div class="drawing" dangerouslySetInnerHTML={{ __html: svg }} />}
    </>
  );
}
